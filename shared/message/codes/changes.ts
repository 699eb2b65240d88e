import type { CodeTable } from '../values.ts';

const change = { change: 'changeKind', place: 'place' } as const;

/** What there is to say of a kind of change; each language holds it kind by kind. */
export const changeCodes = {
  /** Its label alone. */
  changeName: { change: 'changeKind' },
  /** A change by its name, and where. */
  changeAt: change,
  /** An order, without a full stop. */
  changeOrder: change,
  playBroughtSource: { place: 'place' },
  changeInstructions: { change: 'changeKind' },
  changeAfterwards: { change: 'changeKind' },
  changeDeclared: change,
  changeJudged: { ...change, verdict: 'verdict' },
  /** It may stay whatever the retest says, or can't be put back. */
  changeStays: { ...change, verdict: 'verdict' },
  changeStillFails: change,
  changeQuietLongEnough: change,
  changeWatchMinutes: { ...change, minutes: 'minutes' },
  changeWatchTries: { ...change, tries: 'count' },
  changeLook: { ...change, looks: 'count' },
  changeWatch: { ...change, how: 'message' },
  changeMayBringItOn: { ...change, minutes: 'minutes' },
  changeBroughtNothingOn: change,
  changeFaultIsBack: change,
  watchForNothing: {},
  changeWaitForReturn: change,
  changeWaitForReturnEvery: { ...change, everyMin: 'minutes' },
  changeDidNotReturn: change,
  /** What took the fault away was kept, so that it can't be seen to return. */
  cureKeptNameIt: change,
  cureKeptShowsNothing: change,
} as const satisfies CodeTable;

/** What a change takes beside what is at hand anyway. */
export const needCodes = {
  needSureCable: {},
  needTapeOrCover: {},
  needCouplerOrLongerCable: {},
  needSyncSwitch: {},
  needShortCable: {},
  needItsPowerSupply: {},
  needShortPassiveCable: {},
  needLongInputCable: {},
  needMainsNearDisplay: {},
  needLikeDisplay: {},
  needEarlierSettings: {},
  needFirmwareFile: {},
  needTimeForUpdate: {},
  needCableInOnePiece: {},
  needOtherSupply: {},
  needOutletStrip: {},
  needCableAsLong: { lengthM: 'metres' },
  needContentProtection: { version: 'term' },
} as const satisfies CodeTable;
