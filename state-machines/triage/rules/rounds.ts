import type { TriageRecord } from '../../../shared/contract/triage.ts';

/**
 * A new round: what was found before proves nothing about the chain as it is now; to the ranking, what still holds of it
 * counts for less.
 *
 * @param shownBy watches in which the fault came to the chain as it is now: they count as the round's reproduction
 */
export const newRound = (record: TriageRecord, shownBy: string[]): TriageRecord => ({
  ...record,
  round: record.round + 1,
  reproductionAccepted: false,
  cameBackWatchIds: shownBy,
  leavingCheck: null,
  followUp: null,
});
