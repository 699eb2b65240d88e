import type { WorkingState } from '../../shared/contract/triage.ts';
import type { ConsequenceType } from './events.ts';
import type { InvariantName } from './invariants.ts';
import type { RuleName } from './rules/index.ts';

/** The machine's action that keeps where work goes on after an interruption. */
export const comeBackTo = <State extends WorkingState>(state: State) => `comeBackTo ${state}` as const;

/**
 * An event's effect is that of the rule, or consequence, of that name, where the invariants hold; without a target the
 * ticket stays where it is.
 */
export const take = <Name extends RuleName | ConsequenceType>(name: Name, ...holding: InvariantName[]) => ({
  guard: { type: 'hold' as const, params: holding },
  actions: name,
});
/** What interrupts the work: afterwards it goes on where it was. */
export const interruptedIn = (state: WorkingState) => ({
  waitFor: {
    guard: { type: 'hold' as const, params: ['noWatchRuns' as const] },
    actions: ['waitFor' as const, comeBackTo(state)],
    target: '#triage.waiting',
  },
  escalate: {
    guard: { type: 'hold' as const, params: ['noWatchRuns' as const] },
    actions: ['escalate' as const, comeBackTo(state)],
    target: '#triage.escalated',
  },
});

/** What a watch saw, put right later; wherever work on the ticket goes on. */
export const correcting = {
  confirmOccurrence: take('confirmOccurrence'),
  answerLogged: take('answerLogged'),
  withdrawOccurrence: take('withdrawOccurrence'),
  correctOccurrence: take('correctOccurrence'),
  voidWatch: take('voidWatch', 'noWatchRuns'),
};
/** What can be done while a watch runs, or about what a watch has seen. */
export const watching = {
  ...correcting,
  recordOccurrence: take('recordOccurrence', 'watchRuns'),
  recordTry: take('recordTry', 'watchRuns'),
  endWatch: take('endWatch', 'watchRuns'),
};
/** What falls with a correction: a culprit that was named, and “no fault found” once it was settled on. */
export const culpritFalls = {
  culpritRevised: { ...take('culpritRevised', 'culpritIsNamed', 'noWatchRuns'), target: '#triage.resuming' },
};
export const remedyFalls = {
  ...culpritFalls,
  remedyRevised: {
    ...take('remedyRevised', 'remedyIsSettled', 'noCulpritIsNamed'),
    target: '#triage.reproduce',
  },
};
/** Where nothing has shown the culprit, a part may be replaced on suspicion, by the client's choice. */
export const replacing = {
  recordChoice: take('recordChoice', 'noWatchRuns'),
  replaceOnSuspicion: {
    ...take('replaceOnSuspicion', 'noOpenChange', 'noWatchRuns', 'noCulpritIsNamed'),
    target: '#triage.remedy',
  },
};
/** A change that nobody declared, entered once it is over or stays for good. */
export const enteringLate = {
  enterLateChange: take('enterLateChange', 'noOpenChange', 'noWatchRuns'),
};
/** How an open change ends, in a state that a change can be open in. */
export const finishingChange = {
  restoreChange: take('restoreChange', 'changeIsInPlace', 'changeCanBeUndone', 'noWatchRuns'),
  keepChange: take('keepChange', 'changeIsInPlace', 'changeMayStay', 'noWatchRuns'),
  withdrawChange: take('withdrawChange', 'changeIsDeclared'),
};
export const withdrawingRemedy = {
  withdrawRemedy: [
    { ...take('withdrawNoFaultFound', 'noWatchRuns', 'noCulpritIsNamed'), target: '#triage.reproduce' },
    { ...take('withdrawRemedy', 'noWatchRuns', 'culpritIsNamed'), target: '#triage.culpritFound' },
  ],
};
/** What second line decides once somebody there has the case. */
export const deciding = {
  takeCase: take('takeCase'),
  directStep: { ...take('directStep'), target: '#triage.resuming' },
  acceptCase: { ...take('acceptCase'), target: '#triage.culpritFound' },
  handBack: { ...take('handBack'), target: '#triage.resuming' },
};
