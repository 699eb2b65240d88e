import type { CodeTable } from '../values.ts';

/** What a ticket asks for next, apart from a test and a change. */
export const stepCodes = {
  /** `todo`: orders as clauses. */
  beforeLooking: { todo: 'message[]' },
  lookThroughAudit: {},
  askWhatChanged: {},
  recordChainAsFound: {},
  worthKnowingFirst: { finding: 'message', whatToDo: 'message' },

  /** `sureness`: chance that it shows within the minutes. */
  watchAtToldRate: { minutes: 'minutes', sureness: 'percent' },
  watchAtAssumedRate: { everyMin: 'minutes', minutes: 'minutes', sureness: 'percent' },
  shouldHaveShown: {},
  seenWatchForMore: {
    seen: 'count',
    enough: 'count',
    moreMin: 'minutes',
    thenRetestMin: 'minutes',
    retestMin: 'minutes',
  },
  faultReproduced: { seen: 'count' },

  menuUpWait: { place: 'place' },
  menuUpSeen: { seen: 'count', place: 'place' },
  concludeSideAt: { place: 'place' },
  noMenuToProveSide: {},
  proveSideFirst: { place: 'place' },
  menuInstructions: {},
  menuAfterwards: {},
  sourceInstructions: {},
  sourceAfterwards: {},

  byAllThatIsKnown: { place: 'place' },
  proveByOneChange: { place: 'place', probability: 'percent' },
  provesSuspect: { place: 'place' },
  remediesInVain: { remedies: 'count' },
  manyInVain: { changes: 'count' },
  culpritNamed: {},
  settleOnRepair: {},
  settleOnWorkaround: {},
  closeAnyway: {},
  nameCulpritAt: { place: 'place' },
  answerSecondLine: { question: 'text' },
  doTheRepair: {},
  leaveAsItIs: {},
  closeNoFaultFound: {},
  cameAfterRemedy: {},
  remedyHeld: {},
  watchRemedyMinutes: { minutes: 'minutes' },
  watchRemedyTries: { tries: 'count' },
  watchRemedy: { how: 'message' },

  secondLineAsks: { questions: 'text[]' },
  /** What they said, as they said it. */
  secondLineDirects: { step: 'text' },
  secondLineHandedBack: { reason: 'text' },
  everyQuestionAnswered: {},
  secondLineHasCase: {},
  ticketClosed: {},
} as const satisfies CodeTable;
