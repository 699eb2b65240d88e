import type { linkBudgetCodes } from '../codes/link-budget.ts';
import { encodingNames } from '../figures.ts';
import type { Sentences } from '../sentences.ts';

export const linkBudgetEn: Sentences<typeof linkBudgetCodes> = {
  noWayToSend: ({ format }, say) => `There is no way to send ${say.format(format)}.`,
  linkBudget: ({ need, limit, headroom }, say) =>
    `${say.message(need)}, ${say.message(limit)}: ${say.message(headroom)}.`,
  linkNeeds: ({ need }, say) => `This link needs ${say.gbps(need)}`,
  linkNeedsFixedRate: ({ need }, say) => `This link needs ${say.gbps(need)} of a fixed rate link`,
  cableIsGoodFor: ({ rate }, say) => `the cable is good for ${say.number(rate)}`,
  extenderIsGoodFor: ({ rate }, say) => `the pair of extenders is good for ${say.number(rate)}`,
  edidAdmits: ({ port, rate }, say) => `the EDID that ${say.socket(port)} sees admits ${say.number(rate)}`,
  portIsSetToPass: ({ port, rate }, say) =>
    `${say.socket(port)} is set to pass no more than ${say.number(rate)}`,
  portPasses: ({ port, rate }, say) => `${say.socket(port)} passes ${say.number(rate)}`,
  byTmdsOnly: ({ limit }, say) => `${say.message(limit)}, by TMDS only`,
  rateShort: ({ share }, say) => `${say.percent(share)} short`,
  rateExceeded: ({ share }, say) => `${say.percent(share)} more is needed`,
  nothingCarried: () => 'nothing that can be counted on',
  nothingToSpare: () => 'nothing to spare',
  rateToSpare: ({ share }, say) => `${say.percent(share)} to spare`,
  linkNotOffered: ({ need, port, reasons }, say) =>
    `${say.message(need)}, but the EDID that ${say.socket(port)} sees ${say.and(reasons.map(say.message))}.`,
  edidLacksSizeIn420: () => 'doesn’t offer this size and rate in 4:2:0',
  edidOffersSizeIn420Only: () => 'offers this size and rate in 4:2:0 only',
  edidLacksSize: () => 'doesn’t offer this size and rate',
  edidLacksEncoding: ({ encoding }) => `doesn’t offer ${encodingNames[encoding]}`,
  edidLacksDepth: ({ bits, encoding }) => `doesn’t offer ${bits} bits in ${encodingNames[encoding]}`,
  onlyCompressed: ({ need, limit, bitsPerPixel }, say) =>
    `${say.message(need)}. ${say.start(say.message(limit))}: it goes only compressed, to ${say.number(bitsPerPixel, 4)} bits a pixel, if the source can.`,
  cableCountedForLess: ({ need, rated, reasons, counted, headroom }, say) =>
    counted === 0
      ? `${say.message(need)}. The cable may be good for ${say.number(rated)}, but ${say.and(reasons.map(say.message))}: don’t count on it (assumed).`
      : `${say.message(need)}. The cable may be good for ${say.number(rated)}, but ${say.and(reasons.map(say.message))}: count on ${say.number(counted)} (assumed), ${say.message(headroom)}.`,
  doubtExtender: () => 'extenders are counted with what most of them pass',
  doubtCategory: () => 'its category isn’t known',
  doubtCertification: () => 'nobody has seen its certification label',
  doubtSiteFittedEnds: () => 'its ends were fitted on site',
  doubtLength: ({ length, counted }, say) =>
    `it is ${say.metres(length)} long, where ${say.metres(counted)} are counted in full`,
  doubtCouplers: () => 'it is made of pieces on couplers',
  cablePassesLess: ({ need, reasons, rate, headroom }, say) =>
    rate === 0
      ? `${say.message(need)}. The cable passes nothing, as ${say.and(reasons.map(say.message))}.`
      : `${say.message(need)}. The cable is good for ${say.number(rate)} at most, as ${say.and(reasons.map(say.message))}: ${say.message(headroom)}.`,
  extenderCountedForLess: ({ need, rated, reasons, counted, headroom }, say) =>
    `${say.message(need)}. The pair of extenders may be good for ${say.number(rated)}, but ${say.and(reasons.map(say.message))}: count on ${say.number(counted)} (assumed), ${say.message(headroom)}.`,
  extenderPassesLess: ({ need, reasons, rate, headroom }, say) =>
    rate === 0
      ? `${say.message(need)}. The pair of extenders passes nothing, as ${say.and(reasons.map(say.message))}.`
      : `${say.message(need)}. The pair of extenders is good for ${say.number(rate)} at most, as ${say.and(reasons.map(say.message))}: ${say.message(headroom)}.`,
  doubtReversed: () => 'it lies the wrong way round',
  doubtWithoutPower: () => 'an end that needs power has none',

  lossOfFormat: ({ format }, say) => say.format(format),
  lossOfHdr: ({ kind }) => kind,
  lossOfWideColour: () => 'BT.2020 colour',
  lossOfVariableRate: () => 'variable refresh rate',
  lossOfLowLatency: () => 'automatic low-latency mode',
  lossOfQuickSwitching: () => 'quick media switching',
  lossOfThreeD: () => '3D',
  lossOfDepth: ({ bits }) => `${bits} bits`,
  lostAtDevice: ({ device, what }, say) => `${say.place(device)} doesn’t do ${say.or(what.map(say.message))}`,
  lostByEdid: ({ device, what }, say) =>
    `the EDID of ${say.place(device)} doesn’t admit ${say.or(what.map(say.message))}`,
  lostByLimitedEdid: ({ device, what }, say) =>
    `${say.place(device)} takes ${say.and(what.map(say.message))} out of the EDID`,
  lostByReplacedEdid: ({ device, what }, say) =>
    `${say.place(device)} shows an EDID of its own, without ${say.and(what.map(say.message))}`,
  lostByCommonEdid: ({ device, what }, say) =>
    `not all displays behind ${say.place(device)} take ${say.and(what.map(say.message))}`,
  lostForWantOfBits: ({ device, what }, say) =>
    `${say.and(what.map(say.message))} out of ${say.place(device)} shows bands with 8 bits`,
  lossOfSound: () => 'so much sound',
  lostForWantOfBlanking: ({ device, what }, say) =>
    `the blanking of the picture out of ${say.place(device)} has no room for ${say.and(what.map(say.message))}`,
  linkLoses: ({ need, losses }, say) =>
    `${say.message(need)}, which it has, but ${say.and(losses.map(say.message))}.`,

  returnAudioCarried: ({ link, kind }, say) =>
    `${say.start(say.place(link))} carries ${kind} back, besides the picture.`,
  returnAudioNotCarried: ({ link, kind }, say) =>
    `${say.start(say.place(link))} doesn’t carry ${kind}: no sound comes back over it.`,
  returnAudioUnknown: ({ link, kind }, say) =>
    `${say.start(say.place(link))} may not carry ${kind}: not every such cable has a way for it.`,
  useCableWithReturnAudio: () =>
    'Use a cable that carries return audio, or take the sound to the receiver another way.',
  tryReturnAudio: () =>
    'Play something from the display’s own source and hear whether sound comes back; note it at the cable.',

  noLinkToJudge: ({ format }, say) => `${say.format(format)}: there is no link to judge.`,
  formatFits: ({ format, tightest, onLink }, say) =>
    `${say.format(format)} fits on every link; the tightest is ${say.place(tightest)}. ${say.message(onLink)}`,
  formatDoubtful: ({ format, link, onLink }, say) =>
    `${say.format(format)} can’t be counted on over ${say.place(link)}. ${say.message(onLink)}`,
  formatOnlyCompressed: ({ format, link, onLink }, say) =>
    `${say.format(format)} goes over ${say.place(link)} only compressed. ${say.message(onLink)}`,
  formatReduced: ({ format, link, onLink }, say) =>
    `${say.format(format)} gets over ${say.place(link)}, but not all of it. ${say.message(onLink)}`,
  formatNotOffered: ({ format, link, onLink }, say) =>
    `${say.format(format)} isn’t offered to the source of ${say.place(link)}. ${say.message(onLink)}`,
  formatTooMuch: ({ format, link, onLink }, say) =>
    `${say.format(format)} doesn’t fit ${say.place(link)}. ${say.message(onLink)}`,

  fitsWithoutDevice: ({ device, format, withIt }, say) =>
    `Without ${say.place(device)}, ${say.format(format)} fits everywhere. With it: ${say.message(withIt)}`,
  getsFurtherWithoutDevice: ({ device, format, withIt }, say) =>
    `Without ${say.place(device)}, ${say.format(format)} gets further. With it: ${say.message(withIt)}`,
  worseWithoutDevice: ({ device, withoutIt }, say) =>
    `Without ${say.place(device)} it is worse: ${say.message(withoutIt)}`,
  fitsWithAndWithoutDevice: ({ device, format }, say) =>
    `${say.format(format)} fits with ${say.place(device)} and without it.`,
  sameWithoutDevice: ({ device, format, withoutIt }, say) =>
    `${say.start(say.place(device))} makes no difference to ${say.format(format)}: ${say.message(withoutIt)}`,

  fitAnotherCable: () => 'Replace the cable by one certified for the rate, or ask for a format that fits.',
  readEdidAtBothEnds: () =>
    'Read the EDID at the source and at the display, and see who changes it on the way.',
  setOutputMode: () =>
    'Set the output to the mode that passes it, use one that does, or ask for a format that fits.',
  setInputMode: () =>
    'Set the input to the mode that passes it, use one that does, or ask for a format that fits.',
  useFasterPort: () =>
    'No mode of the socket passes it: use a socket that does, or ask for a format that fits.',
  checkSourceCompresses: () => 'Look up whether the source sends compressed video, and note it.',
  askForLess: () => 'Ask for fewer bits, a coarser sampling or a lower rate: no link carries this one.',
  askForExistingFormat: () =>
    'Ask for a format that exists: there is none with this sampling and these bits.',
};
