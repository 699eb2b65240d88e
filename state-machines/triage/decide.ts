import { getNextTransitions } from 'xstate';
import type { TicketCommandType } from '../../shared/contract/commands.ts';
import type { MemberRole } from '../../shared/contract/primitives.ts';
import type { AllowedCommand } from '../../shared/contract/problem.ts';
import type { TriageRecord } from '../../shared/contract/triage.ts';
import { message } from '../../shared/message/message.ts';
import type { MessageTerms } from '../../shared/message/terms.ts';
import { applicableChangesOf } from './changes/applicable.ts';
import type { ApplicableChange } from './changes/described.ts';
import type { CompleteCommand, CompleteCommandType, TriageEvent } from './events.ts';
import { type Awake, rest, stateName, step, type TriageSnapshot, wake } from './evolve.ts';
import { examplesOf } from './examples.ts';
import { changeInPlace, currentWait, openChange } from './record.ts';
import { after, before } from './rules/consequences.ts';
import { isRuleName, rules } from './rules/index.ts';
import { because, type Cause, type Refusal } from './rules/refusal.ts';
import { commandRoles } from './rules/roles.ts';
import { causeOf, chainAsItWas, noChangeOpen, noWatchRuns, type Rule, roleRefusal } from './rules/rule.ts';
import { lastMomentMs } from './rules/timing.ts';
import { watchRuns } from './rules/watches.ts';
import { apartFromShown } from './shown.ts';

export type Decision =
  | {
      accepted: true;
      /** What was decided, in order; each is a row of the log. */
      events: TriageEvent[];
      /** Where they lead: `evolve` over each. */
      snapshot: TriageSnapshot;
    }
  | { accepted: false; refusal: Refusal };

/** The rules that a type of command meets in a state, in the order in which the machine tries them. */
function rulesFor(awake: Awake, type: CompleteCommandType): Rule[] {
  return getNextTransitions(awake)
    .filter(({ eventType }) => eventType === type)
    .flatMap(({ actions: [action] }) => (isRuleName(action) ? [rules[action]] : []));
}

/**
 * Decides on one command. Pure: the same snapshot and command give the same answer, and the snapshot given is not
 * changed. What is decided is computed here, once, and is in the events from then on.
 *
 * @returns the events and the next snapshot, or why not: a kind of problem, a sentence, and what would be allowed now
 */
export function decide(snapshot: TriageSnapshot, command: CompleteCommand): Decision {
  const decided = decideOr(snapshot, command);
  if (decided.accepted) return decided;
  return {
    accepted: false,
    refusal: { ...decided.cause, allowedNow: allowedCommands(snapshot, command.role, command.at) },
  };
}

type Accepted = Extract<Decision, { accepted: true }>;
type DecidedOr = Accepted | { accepted: false; cause: Cause };

function decideOr(snapshot: TriageSnapshot, command: CompleteCommand): DecidedOr {
  const events: TriageEvent[] = [];
  let awake = wake(snapshot);
  const take = (event: TriageEvent) => {
    awake = step(awake, event);
    events.push(event);
  };
  const first = before(awake.context, command);
  if (first !== null) take(first);
  const rule = ruleFor(awake, command);
  if ('cause' in rule) return { accepted: false, cause: rule.cause };
  const event = rule.decide(awake.context, command);
  const outcomes = apartFromShown(command, event);
  if (outcomes !== null) {
    const cause = because('outcome-differs', message('outcomeDiffers'), { outcomes });
    return { accepted: false, cause };
  }
  take(event);
  const following = () => after(awake.context, command, snapshot.context);
  for (let next = following(); next !== null; next = following()) take(next);
  return { accepted: true, events, snapshot: rest(awake) };
}

/** Why one of these commands would be refused if they were sent now, one after the other; null where none would be. */
export function whyNotInOrder(snapshot: TriageSnapshot, commands: readonly CompleteCommand[]): Cause | null {
  const [command, ...rest] = commands;
  if (command === undefined) return null;
  if (rest.length === 0) return whyNot(snapshot, command);
  const decided = decideOr(snapshot, command);
  return decided.accepted ? whyNotInOrder(decided.snapshot, rest) : decided.cause;
}

/** The same answer as that of `decide`, without what it would lead to. */
function whyNot(snapshot: TriageSnapshot, command: CompleteCommand): Cause | null {
  const awake = wake(snapshot);
  const first = before(awake.context, command);
  const rule = ruleFor(first === null ? awake : step(awake, first), command);
  return 'cause' in rule ? rule.cause : null;
}

/** The rule that decides on a command, or why none does. */
function ruleFor(awake: Awake, command: CompleteCommand): Rule | { cause: Cause } {
  const forbidden = roleRefusal(command);
  if (forbidden !== null) return { cause: forbidden };
  const causes = rulesFor(awake, command.type).map((rule) => ({
    rule,
    cause: causeOf(rule, awake.context, command),
  }));
  const accepting = causes.find(({ cause }) => cause === null);
  if (accepting !== undefined) return accepting.rule;
  // The last rule is the general one; those before it are for special cases.
  return { cause: causes.at(-1)?.cause ?? notNow(awake, command) };
}

/** A diagnostic change in place is named before anything else by the commands it blocks. */
const blockedByChange = (record: TriageRecord): Cause | null =>
  changeInPlace(record) === null ? null : chainAsItWas(record);
const noChange = (record: TriageRecord): Cause | null =>
  openChange(record) === null ? because('no-change-open', message('noChangeOpen')) : null;

/** What says more about a command that has no place in a state than that it has none. */
const moreToSay: Partial<Record<CompleteCommandType, (record: TriageRecord) => Cause | null>> = {
  nameCulprit: blockedByChange,
  chooseRemedy: blockedByChange,
  close: blockedByChange,
  declareChange: noChangeOpen,
  enterLateChange: noChangeOpen,
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

/** A state as the contract's list names it: where second line has the case is one. */
const termOfState = (state: string) =>
  (state.startsWith('escalated.') ? 'escalated' : state) as keyof MessageTerms['state'];

/** While a ticket waits, the way back to work is told before anything else. */
const waits = (record: TriageRecord): Cause | null => {
  const wait = currentWait(record);
  return wait === null
    ? null
    : because('not-allowed-now', message('ticketWaits', { what: wait.what, until: wait.until }));
};

const notNow = (awake: Awake, { type }: CompleteCommand): Cause => {
  return (
    waits(awake.context) ??
    moreToSay[type]?.(awake.context) ??
    because(
      'not-allowed-now',
      Object.hasOwn(commandRoles, type)
        ? message('notInThisState', {
            command: type as TicketCommandType,
            state: termOfState(stateName(awake)),
          })
        : message('evidenceNotNow'),
    )
  );
};

/**
 * The commands that can be accepted now: of each there is one at least that the rules would not refuse.
 *
 * @param at now, UTC, ISO 8601; without it, reopening is listed however long ago the ticket was closed
 */
export function allowedCommands(snapshot: TriageSnapshot, role: MemberRole, at?: string): AllowedCommand[] {
  const awake = wake(snapshot);
  const types = Object.keys(commandRoles) as TicketCommandType[];
  return types.flatMap((type) => {
    if (!commandRoles[type].includes(role)) return [];
    return canBeAccepted(awake, type, { at, role })
      ? [{ type, label: message('commandLabel', { command: type }) }]
      : [];
  });
}

/** Whether the rules would accept any command of a type. */
function canBeAccepted(awake: Awake, type: TicketCommandType, { at, role }: Asking): boolean {
  const { context } = awake;
  const ready = rulesFor(awake, type).filter((rule) => rule.ready(context) === null);
  if (ready.length === 0) return false;
  const examples = examplesOf(type, context, { at: at ?? laterThan(context), role });
  return ready.some((rule) => examples.some((command) => rule.refuse(context, command) === null));
}
type Asking = { at: string | undefined; role: MemberRole };

/** A moment after everything in a record, but on the day it was closed: for whom no clock is at hand. */
const laterThan = (record: TriageRecord): string =>
  new Date(Math.max(lastMomentMs(record), Date.parse(record.closedAt ?? record.openedAt))).toISOString();

/**
 * The changes that make sense now, computed from the side and from what the chain has.
 *
 * @param table the organisation's figures, for the minutes; the built-in ones when left out
 */
export const applicableChanges = (
  snapshot: TriageSnapshot,
  figures?: Parameters<typeof applicableChangesOf>[1],
): ApplicableChange[] => applicableChangesOf(snapshot.context, figures);
