import type { lookCodes } from '../codes/looks.ts';
import type { Sentences } from '../sentences.ts';
import { enTerms } from './terms.ts';

const moment = (isBad: boolean): string => (isBad ? 'while the fault is there' : 'at a good moment');

export const looksEn: Sentences<typeof lookCodes> = {
  signalAbsent: () => 'no signal',
  signalOf: ({ parts }, say) => parts.map(say.message).join(', '),
  signalNotTold: () => 'not told',
  seenResolution: ({ widthPx, heightPx }) => `${widthPx}×${heightPx}`,
  seenRate: ({ refreshHz }, say) => `${say.number(refreshHz, 3)} Hz`,
  seenDepth: ({ bits }) => `${bits} bit`,
  seenEncoding: ({ encoding }) => encodings[encoding],
  seenHdr: ({ hdr }) => enTerms.hdrKind[hdr],
  seenProtection: ({ version }) =>
    version === 'none' ? 'no content protection' : `content protection ${version}`,
  seenLinkRate: ({ rate }, say) => `link at ${say.gbps(rate)}`,
  intendedIs: ({ conversion }) => enTerms.conversion[conversion],
  portIsSetTo: ({ mode }, say) => `set to ${say.mode(mode)}`,
  portIsAutomatic: () => 'set to automatic',
  portHasNothingToSet: () => 'nothing to set there',

  'log/signalRead': ({ device, isBad, receives, sends, intended }, say) =>
    `Read at ${say.place(device)} ${moment(isBad)}: it receives: ${say.message(receives)}; it sends: ${say.message(sends)}.${
      intended.length === 0 ? '' : ` Meant so: ${say.and(intended.map(say.message))}.`
    }`,
  'log/signalAsBefore': ({ device, isBad }, say) =>
    `Read at ${say.place(device)} ${moment(isBad)}: the same as before.`,
  'log/menuTried': ({ device, survives, keepsFormat }, say) =>
    `Menu of ${say.place(device)} tried: it stays without an input: ${answers[survives]}; it keeps the picture’s format: ${answers[keepsFormat]}.`,
  'log/portModeSeen': ({ port, found }, say) => `Looked at ${say.place(port)}: ${say.message(found)}.`,
  'log/settingSeen': ({ device, setting, value, shouldBe }, say) =>
    `Looked at ${say.place(device)}: ${say.quoted(setting)} is ${shown(value, say)}${
      shouldBe === null ? '' : `, and should be ${shown(shouldBe, say)}`
    }.`,
  'log/witnessShows': ({ witness }, say) =>
    `${say.start(say.place(witness))} shows the fault at the same moment.`,
  'log/witnessDoesNotShow': ({ witness }, say) =>
    `${say.start(say.place(witness))} does not show the fault at the same moment.`,
  'log/witnessCannotSay': ({ witness }, say) =>
    `Nobody can say whether ${say.place(witness)} shows the fault at the same moment.`,
  'log/lookWithdrawn': ({ reason }, say) =>
    `Something that was looked at does not count any more: ${say.text(reason)}`,
  'log/goneWithoutSide': ({ reason }, say) => `Work goes on without a side: ${say.text(reason)}`,

  lookIdTaken: () => 'Something was looked at under that id.',
  lookUnknown: () => 'Nothing was looked at under that id.',
  lookWithdrawnAlready: () => 'That does not count any more already.',
  noLookToWithdraw: () => 'Nothing was looked at that counts.',
  nothingReadBefore: () => 'Nothing was read at this device before: read what it says now.',
  noWitness: () =>
    'A witness is another display, or another source, that shares a part of the way with the one that shows the fault.',
  noWitnessAt: ({ device }, say) => `No witness has told anything about ${say.place(device)}.`,
  witnessesContradict: ({ device }, say) =>
    `What witnesses show around ${say.place(device)} contradicts itself.`,
  traceSaysNothing: ({ device }, say) =>
    `What was read says nothing of the side at ${say.place(device)}: read what it receives and sends while the fault is there.`,
  menuFallsWithInput: ({ device }, say) =>
    `The menu of ${say.place(device)} falls with its input, so that it vanished tells no side.`,
  menuQualitiesNotKnown: ({ device }, say) =>
    `It is not known whether the menu of ${say.place(device)} stays without an input and keeps the picture’s format, so that it vanished tells no side. Unplug its input once and look, then say so.`,
  sideIsKnownAlready: () => 'A side is known: go on with it, or take it back.',
  lookAtPortModeFirst: () => 'What it is set to is not known: look in the device’s menu first.',

  receivesRightAt: ({ place }, say) => `${say.start(say.place(place))} receives what it should`,
  receivesWrongAt: ({ place }, say) => `${say.start(say.place(place))} receives what it should not`,
  sendsRightAt: ({ place }, say) => `${say.start(say.place(place))} sends what it should`,
  sendsWrongAt: ({ place }, say) => `${say.start(say.place(place))} sends what it should not`,
  witnessShowsIt: ({ place }, say) => `${say.start(say.place(place))} shows it at the same moment`,
  witnessShowsItNot: ({ place }, say) => `${say.start(say.place(place))} does not show it at the same moment`,
  portSetLowAt: ({ place }, say) => `${say.start(say.place(place))} is set lower than it can do`,
  portSetRightAt: ({ place }, say) => `${say.start(say.place(place))} is set to the highest it can do`,
  settingWrongAt: ({ place }, say) => `A setting of ${say.place(place)} is not what it should be`,

  readSignalAt: ({ place, fields, isBad }, say) =>
    `Read on the page of ${say.place(place)}, ${moment(isBad)}, what it receives and what it sends: ${say.and(fields.map((field) => enTerms.signalField[field]))}. One photo of the page is enough.`,
  readSignalWhy: () =>
    'It halves what is left of the chain: the fault lies after the last device where all is right, and before the first where it is not.',
  tryMenuAt: ({ place }, say) =>
    `Put up the menu of ${say.place(place)}, unplug its input once and look: does the menu stay? And does the picture’s format change when the menu comes up?`,
  tryMenuWhy: () =>
    'Many menus fall with their input. Until this is known, a menu that vanishes tells nothing.',
  askWitness: ({ place, beside }, say) =>
    `Ask, and change nothing: when the fault comes at ${say.place(beside)}, does ${say.place(place)} show it at the same moment?`,
  askWitnessWhy: () => 'What shows it too shares the part that is at fault; what does not, clears that part.',
  lookAtPortMode: ({ place }, say) =>
    `Look in the menu what ${say.place(place)} is set to. It takes about two minutes.`,
  lookAtPortModeWhy: () => 'A setting that nobody has looked at comes before anything is swapped.',
  traceFoundDevice: ({ place }, say) =>
    `${say.start(say.place(place))} receives what it should and sends what it should not: it is at fault, or what follows told it so.`,
  traceFoundLink: ({ place }, say) => `What goes into ${say.place(place)} does not come out of it.`,
  concludeByTraceAt: ({ place }, say) => `Conclude the side at ${say.place(place)} from what was read.`,
  concludeByWitnessAt: ({ place }, say) =>
    `Conclude the side at ${say.place(place)} from what the witness shows.`,
  noSideCanBeProven: () =>
    'No menu, no page and no witness can prove a side here. Work can go on without one; the record will say so.',
  noSideReason: () => 'no menu, page or witness can tell',
};

const encodings = { rgb: 'RGB', ycbcr444: 'YCbCr 4:4:4', ycbcr422: 'YCbCr 4:2:2', ycbcr420: 'YCbCr 4:2:0' };
const answers = { yes: 'yes', no: 'no', unknown: 'not known' };
const shown = (value: string | number | boolean, say: { quoted(given: string): string }): string => {
  if (typeof value === 'boolean') return value ? 'on' : 'off';
  return typeof value === 'number' ? String(value) : say.quoted(value);
};
