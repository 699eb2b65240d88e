import type { CodeTable } from '../values.ts';

const likeliest = { place: 'place', probability: 'percent' } as const;
const twoLikeliest = {
  place: 'place',
  probability: 'percent',
  other: 'place',
  otherProbability: 'percent',
} as const;
const twoChances = { place: 'place', probability: 'percent', otherProbability: 'percent' } as const;

/** What the plan advises, and why. */
export const planCodes = {
  /** Sentences one after the other. */
  sentences: { sentences: 'message[]' },

  watchWithMenuUp: { place: 'place' },
  goOnWatching: {},
  clientRefuses: {},
  secondPersonNeeded: {},
  notAtHand: { kit: 'message[]' },

  menuStays: {},
  menuVanishes: {},
  faultStaysAway: {},
  faultComes: {},

  /** `test` is an order without a full stop. */
  testTakes: { test: 'message', minutes: 'minutes' },
  menuMovesOneSuspect: twoChances,
  menuPartsSuspects: twoLikeliest,
  faultMovesOneSuspect: twoChances,
  faultPartsSuspects: twoLikeliest,
  quietMinutesClear: { minutes: 'minutes' },
  quietTriesClear: { tries: 'count' },
  goodLooksClear: { looks: 'count' },

  inPlaceAlready: {},
  /** `gain`: what a test gains, as a clause. */
  gains: { gain: 'message' },
  nothingTouchedAndGains: { gain: 'message' },
  nothingUnpluggedAndGains: { gain: 'message' },
  oneAnswerSettles: likeliest,
  movesOneSuspect: { place: 'place', up: 'percent', down: 'percent' },
  partsSuspects: { place: 'place', other: 'place' },
  minutesToCulprit: { minutes: 'minutes' },

  /** `failure`: how it fails; `repair`: an order as a clause. */
  culpritIs: { place: 'place', probability: 'percent', failure: 'message', repair: 'message' },
  repairForRate: {},
  repairPlugs: {},
  repairCoupler: {},
  repairDirection: {},
  repairLinkPower: {},
  repairPortMode: {},
  repairEdid: {},
  repairContentProtection: {},
  repairFirmware: {},
  repairPowerOrHeat: {},
  repairProcessing: {},
  repairSetting: {},
  repairLatched: {},
  repairControlBus: {},
  repairWakeOrder: {},
  repairControlSystem: {},
  repairDisturbance: {},
  repairEarthLoop: {},
  repairFiveVolt: {},
  repairCertainContent: {},
  handToSecondLine: {},

  nothingLeftToTry: likeliest,
  handingOnIsQuicker: likeliest,
  likeliestOutsideModel: { probability: 'percent' },
  visitNeeded: {},
  planCutShort: { left: 'count', of: 'count' },
  watchForMoreFirst: { seen: 'count', retestMin: 'minutes', enough: 'count', thenRetestMin: 'minutes' },
} as const satisfies CodeTable;
