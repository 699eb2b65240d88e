import type { Place } from '../../../shared/contract/chain.ts';
import type { Message } from '../../../shared/contract/message.ts';
import type { OutcomesApart } from '../../../shared/contract/outcome.ts';
import type { AllowedCommand, ProblemKind } from '../../../shared/contract/problem.ts';
import type { MissingItem } from '../../../shared/contract/triage.ts';

/** The kinds of problem (shared/contract/problem.ts) that triage refuses a command with. */
export type RefusalType = Extract<
  ProblemKind,
  | 'role-not-allowed'
  | 'invalid-input'
  | 'already-exists'
  | 'not-allowed-now'
  | 'change-open'
  | 'no-change-open'
  | 'change-not-applicable'
  | 'change-cannot-stay'
  | 'change-cannot-be-undone'
  | 'diagnostic-change-in-place'
  | 'watch-running'
  | 'no-watch-running'
  | 'watch-record-too-short'
  | 'no-occurrence'
  | 'menu-answer-missing'
  | 'device-not-suitable'
  | 'side-contradiction'
  | 'side-unknown'
  | 'retest-missing'
  | 'retest-missing-or-weak'
  | 'confirmation-missing'
  | 'case-incomplete'
  | 'request-open'
  | 'unknown-reference'
  | 'time-out-of-order'
  | 'reopen-too-late'
  | 'outcome-differs'
>;

/** Why a rule says no, with what it is about. */
export type Cause = {
  type: RefusalType;
  said: Message;
  place?: Place;
  missing?: MissingItem[];
  openChangeId?: string;
  requestIds?: string[];
  outcomes?: OutcomesApart;
  /** Minutes of quiet watching still needed. */
  remainingMin?: number;
};

/** A cause, with what the sender may do instead. */
export type Refusal = Cause & { allowedNow: AllowedCommand[] };

export const because = (
  type: RefusalType,
  said: Message,
  facts: Omit<Cause, 'type' | 'said'> = {},
): Cause => ({
  type,
  said,
  ...facts,
});
