import type { auditCableCodes } from '../codes/audit-cables.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';

const withFeet = (lengthM: number, say: Say): string =>
  `${say.metres(lengthM)} (${Math.round(lengthM / 0.3048)} ft)`;
const readMarks =
  'Read the marks at both plugs: the end marked as source goes to the device nearer the source.';

export const auditCablesEn: Sentences<typeof auditCableCodes> = {
  cableCategoryUnknown: ({ cable }, say) => `The category of ${say.place(cable)} isn't known.`,
  lookForCertificationLabel: () =>
    'Look for the certification label on the cable or its packing, scan it, and note the category.',
  cableCategoryTooLow: ({ cable, category, testedFor, needed }, say) =>
    `${say.start(say.place(cable))} is of category ${say.category(category)}, tested for ${say.gbps(testedFor)}, between ports that pass ${say.gbps(needed)}.`,
  replaceByCertifiedCable: ({ rates }, say) =>
    `Replace it with a cable that is certified for ${say.or(rates.map(say.gbps))}.`,
  cableTestedForLess: ({ cable, category, testedFor, needed }, say) =>
    `${say.start(say.place(cable))} is of category ${say.category(category)}, tested for ${say.gbps(testedFor)}, where ${say.gbps(needed)} is asked of it.`,
  replaceByCertifiedOptical: ({ rates }, say) =>
    `Replace it with an active optical cable that is certified for ${say.or(rates.map(say.gbps))} and whose ends were fitted in the factory; see that it also carries return audio where that is used.`,
  cableTooLongFor: ({ cable, construction, length, reach, rate }, say) =>
    `${say.start(say.place(cable))} is ${say.construction(construction)} and ${say.metres(length)} long; for ${say.gbps(rate)} such cable is good for about ${withFeet(reach, say)}.`,
  cableLongForItsLabel: ({ cable, category, length }, say) =>
    `${say.start(say.place(cable))} is noted as certified ${say.category(category)}, but at ${say.metres(length)} hardly any cable of its kind passes that test.`,
  scanLabelAgain: () =>
    'Scan the label again, and see that it is for this cable and this length. If it isn’t, replace the cable with one that is certified in that length.',
  cableOnCouplers: ({ cable, couplers }, say) =>
    `${say.start(say.place(cable))} is joined by ${couplers} ${say.plural(couplers, 'coupler or wall plate', 'couplers or wall plates')}; each costs it some of its rate.`,
  activeCableOnCouplers: ({ cable, construction }, say) =>
    `${say.start(say.place(cable))} is ${say.construction(construction)} in several pieces on a coupler: its electronics expect a source at one end and a display at the other.`,
  layInOnePiece: () => 'Lay one cable of the whole length in its place.',
  extenderRatedForLess: ({ cable, rated, needed }, say) =>
    `${say.start(say.place(cable))} is rated for ${say.gbps(rated)}, where ${say.gbps(needed)} is asked of it.`,
  fitFasterExtender: ({ rates }, say) =>
    `Fit a pair of extenders that is rated for ${say.or(rates.map(say.gbps))} at this length, or lay an active optical cable with factory-fitted ends.`,
  extenderTooLong: ({ cable, length, reach }, say) =>
    `${say.start(say.place(cable))} runs over ${say.metres(length)}; it reaches ${say.metres(reach)}.`,
  extenderRateUnknown: ({ cable }, say) =>
    `What rate ${say.place(cable)} passes isn’t noted, and the slower ones don’t pass what is asked of it.`,
  lookUpExtenderRate: () => 'Look up the rate and the length that its maker gives, and note them.',
  extenderSupplyUnknown: ({ cable }, say) => `Nobody has noted where ${say.place(cable)} is fed.`,
  checkExtenderSupply: () =>
    'Look which end its supply is at, that it is plugged in and stays on while the devices are on standby, and note it.',
  alsoOnLinks: ({ finding, links }, say) =>
    `${say.message(finding)} The same goes for ${say.and(links.map((link) => say.place(link)))}.`,
  onAnotherBranch: ({ finding, display }, say) =>
    `${say.message(finding)} It isn’t on the way to ${say.place(display)}.`,
  cableCertificationUnseen: ({ cable, category }, say) =>
    `${say.start(say.place(cable))} is said to be ${say.category(category)}, but nobody has seen its certification label.`,
  findCertificationLabel: () =>
    'Find the label and scan it. Without one, replace the cable with a certified one.',
  cableTooShort: ({ cable, length, shortest }, say) =>
    `${say.start(say.place(cable))} is only ${say.metres(length)} long; below about ${withFeet(shortest, say)} cables give trouble more often.`,
  replaceByLongerCable: ({ shortest }, say) =>
    `Replace it with a certified cable of at least about ${withFeet(shortest, say)}.`,
  cableTooLong: ({ cable, construction, length, longest }, say) =>
    `${say.start(say.place(cable))} is ${say.construction(construction)} and ${say.metres(length)} long; copper is good for about ${withFeet(longest, say)}.`,
  moveSourceNearer: () =>
    'Move the source nearer, or go through a switch or receiver and lay an active optical cable with factory-fitted ends from there.',
  replaceByFactoryFittedOptical: () =>
    'Replace it with an active optical cable whose ends were fitted in the factory.',
  cableEndsFittedOnSite: ({ cable }, say) => `The ends of ${say.place(cable)} were fitted on site.`,
  cableEndsUnknown: ({ cable }, say) =>
    `It isn't known whether the ends of ${say.place(cable)} were fitted in the factory.`,
  lookAtBothEnds: () => 'Look at both ends and note it.',
  opticalFromSourceFed: ({ cable }, say) =>
    `${say.start(say.place(cable))} is active optical, straight from a playback source; it is fed as noted, and still the first to suspect.`,
  opticalFromSourceUnderfed: ({ cable, supply, draw }, say) =>
    `${say.start(say.place(cable))} is active optical, straight from a playback source: its 5 V line supplies ${say.number(supply)} mA where ${say.number(draw)} mA are drawn.`,
  opticalFromSource: ({ cable }, say) =>
    `${say.start(say.place(cable))} is active optical, straight from a playback source: a source's 5 V line often can't feed one.`,
  checkSupplyAtSource: () =>
    'Check the supply at the source end, and keep a passive cable at hand for a test.',
  feedOpticalAnotherWay: () =>
    'Go from the source into a switch, receiver or processor with a passive cable, or feed the optical cable by its own supply at the source end.',
  twistedPairBestAvoided: ({ cable }, say) =>
    `${say.start(say.place(cable))} is best avoided: it adds its own electronics, supplies and handshakes to the way.`,
  replaceTwistedPair: () =>
    'Replace it with an active optical cable with factory-fitted ends, or lay one across for a test.',
  cableReversed: ({ cable }, say) => `${say.start(say.place(cable))} lies the wrong way round.`,
  turnCableRound: () => `Turn it round. ${readMarks}`,
  swapExtenderEnds: () =>
    'Swap the two boxes, with their supplies: the transmitter goes to the device nearer the source, the receiver nearer the display.',
  activeCableDirectionUnknown: ({ cable }, say) =>
    `Nobody has noted which way round ${say.place(cable)} lies, and it is active: the wrong way it passes nothing, or only sometimes.`,
  readMarksAtPlugs: () => readMarks,
  cableDirectionUnknown: ({ cable }, say) => `It isn't known whether ${say.place(cable)} is directional.`,
  lookForArrow: () => `Look for an arrow or a marked end. ${readMarks}`,
  activeCableNotDirectional: ({ cable }, say) =>
    `${say.start(say.place(cable))} is noted as not directional, but active cables are.`,
  readMarksAndCorrect: () => `${readMarks} Then correct the record.`,
  cableEndWithoutPower: ({ cable, at }, say) =>
    `${say.start(say.place(cable))} needs power at ${say.device(at)} and has none.`,
  plugInSupply: ({ at }, say) =>
    `Plug in the supply that its maker asks for at ${say.device(at)}, not a socket that goes off with the device.`,
  cableEndPowerUnknown: ({ cable, at }, say) =>
    `${say.start(say.place(cable))} needs power at ${say.device(at)}; nobody has noted whether it has it.`,
  checkSupply: ({ at }, say) =>
    `Check the supply at ${say.device(at)}, also while the devices are on standby.`,
  plugNotSeated: ({ cable, at }, say) =>
    `${say.start(say.place(cable))} isn't fully seated at ${say.and(at.map(say.device))}.`,
  plugSeatUnchecked: ({ cable, at }, say) =>
    `Nobody has checked the seat of ${say.place(cable)} at ${say.and(at.map(say.device))}.`,
  pushPlugsHome: () =>
    'Push both plugs home, look for a bent shell or a pull on the cable, and relieve the pull.',
};
