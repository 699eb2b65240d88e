import { getNextTransitions, initialTransition, type StateValue, transition } from 'xstate';
import type { TicketCommandType } from '../../shared/contract/commands.ts';
import type { MemberRole } from '../../shared/contract/primitives.ts';
import type { AllowedCommand } from '../../shared/contract/problem.ts';
import type { TriageRecord } from '../../shared/contract/triage.ts';
import type { FaultTable } from '../../shared/isolation/fault-table.ts';
import { type ApplicableChange, applicableChangesOf } from './changes/applicable.ts';
import type { TriageEvent, TriageEventType } from './events.ts';
import { MACHINE_VERSION, triageMachine } from './machine.ts';
import type { Opening } from './opening.ts';
import { changeInPlace, openChange } from './record.ts';
import { isRuleName, rules } from './rules/index.ts';
import { because, type Cause, type Refusal } from './rules/refusal.ts';
import { whyTooLate } from './rules/remedy.ts';
import { commandRoles } from './rules/roles.ts';
import { causeOf, chainAsItWas, noChangeOpen, noWatchRuns, type Rule, roleRefusal } from './rules/rule.ts';
import { watchRuns } from './rules/watches.ts';

/** A ticket's triage at rest: plain JSON, to be stored, sent and taken up again. */
export type TriageSnapshot = {
  machineVersion: number;
  value: StateValue;
  context: TriageRecord;
};
export type Decision = { accepted: true; snapshot: TriageSnapshot } | { accepted: false; refusal: Refusal };

const wake = ({ value, context }: TriageSnapshot) => triageMachine.resolveState({ value, context });
type Awake = ReturnType<typeof wake>;
const rest = ({ value, context }: Awake): TriageSnapshot => ({
  machineVersion: MACHINE_VERSION,
  value,
  context,
});

/** The state by name, parts joined by dots: `substitute.retest`. */
export function stateName({ value }: Pick<TriageSnapshot, 'value'>): string {
  if (typeof value === 'string') return value;
  return Object.entries(value)
    .map(([name, inner]) => (inner === undefined ? name : `${name}.${stateName({ value: inner })}`))
    .join();
}

/** The triage of a ticket that is opened now. */
export function openTriage(input: Opening): TriageSnapshot {
  const [snapshot] = initialTransition(triageMachine, input);
  return rest(snapshot);
}

/** The rules that a type of event meets in a state, in the order in which the machine tries them. */
function rulesFor(awake: Awake, type: TriageEventType): Rule[] {
  return getNextTransitions(awake)
    .filter(({ eventType }) => eventType === type)
    .flatMap(({ guard }) => (isRuleName(guard) ? [rules[guard]] : []));
}

/**
 * Decides on one event. Pure: the same snapshot and event give the same answer, and the snapshot given is not changed.
 *
 * @returns the next snapshot, or why not: a kind of problem, a sentence, and what would be allowed now
 */
export function decide(snapshot: TriageSnapshot, event: TriageEvent): Decision {
  const awake = wake(snapshot);
  const cause = causeNow(awake, event);
  if (cause === null) {
    const [next] = transition(triageMachine, awake, event);
    return { accepted: true, snapshot: rest(next) };
  }
  const allowedNow = allowedCommands(snapshot, event.role, event.at);
  return { accepted: false, refusal: { ...cause, allowedNow } };
}

function causeNow(awake: Awake, event: TriageEvent): Cause | null {
  const forbidden = roleRefusal(event);
  if (forbidden !== null) return forbidden;
  const causes = rulesFor(awake, event.type).map((rule) => causeOf(rule, awake.context, event));
  if (causes.includes(null)) return null;
  // The last rule is the general one; those before it are for special cases.
  return causes.at(-1) ?? notNow(awake, event);
}

/** A diagnostic change in place is named before anything else by the commands it blocks. */
const blockedByChange = (record: TriageRecord): Cause | null =>
  changeInPlace(record) === null ? null : chainAsItWas(record);
const noChange = (record: TriageRecord): Cause | null =>
  openChange(record) === null ? because('no-change-open', 'No change is open.') : null;

/** What says more about a command that has no place in a state than that it has none. */
const moreToSay: Partial<Record<TriageEventType, (record: TriageRecord) => Cause | null>> = {
  nameCulprit: blockedByChange,
  chooseRemedy: blockedByChange,
  close: blockedByChange,
  declareChange: noChangeOpen,
  applyChange: noChange,
  withdrawChange: noChange,
  judgeRetest: noChange,
  restoreChange: noChange,
  keepChange: noChange,
  startWatch: noWatchRuns,
  escalate: noWatchRuns,
  recordOccurrence: watchRuns,
  recordTry: watchRuns,
  endWatch: watchRuns,
};

const notNow = (awake: Awake, { type }: TriageEvent): Cause => {
  const step = isRuleName(type) ? rules[type].label : type;
  return (
    moreToSay[type]?.(awake.context) ??
    because('not-allowed-now', `‘${step}’ has no place while the ticket is in ‘${stateName(awake)}’.`)
  );
};

/**
 * The commands that can be accepted now, as far as that doesn't hang on what is sent with them.
 *
 * @param at now, UTC, ISO 8601; without it, reopening is listed however long ago the ticket was closed
 */
export function allowedCommands(snapshot: TriageSnapshot, role: MemberRole, at?: string): AllowedCommand[] {
  const awake = wake(snapshot);
  const types = Object.keys(commandRoles) as TicketCommandType[];
  return types.flatMap((type) => {
    if (!commandRoles[type].includes(role)) return [];
    if (type === 'reopen' && at !== undefined && whyTooLate(awake.context, at) !== null) return [];
    const ready = rulesFor(awake, type).findLast((rule) => rule.ready(awake.context) === null);
    return ready === undefined ? [] : [{ type, label: ready.label }];
  });
}

/**
 * The snapshot that a log leads to.
 *
 * @throws Error when an event of the log is not accepted: the log was not written by this machine
 */
export function replay(input: Opening, events: readonly TriageEvent[]): TriageSnapshot {
  return events.reduce((snapshot, event, at) => {
    const decision = decide(snapshot, event);
    if (decision.accepted) return decision.snapshot;
    throw new Error(`Event ${at + 1} of the log (${event.type}) is refused: ${decision.refusal.detail}`);
  }, openTriage(input));
}

/**
 * The changes that make sense now, computed from the side and from what the chain has.
 *
 * @param table the organisation's figures, for the minutes; the built-in ones when left out
 */
export const applicableChanges = (snapshot: TriageSnapshot, table?: FaultTable): ApplicableChange[] =>
  applicableChangesOf(snapshot.context, table);
