import { namedPlace } from '../../../shared/chain/named-place.ts';
import type { ChangeRecord, TriageRecord } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/message.ts';
import { namedChange } from '../../../shared/message/named-change.ts';
import type { NamedPlace } from '../../../shared/message/values.ts';
import type {
  CompleteCommand,
  CompleteCommandOf,
  CompleteCommandType,
  EventOf,
  News,
  Outcomes,
  TriageEvent,
} from '../events.ts';
import { openChange, runningWatch } from '../record.ts';
import { runningUnattended } from '../unattended.ts';
import { because, type Cause } from './refusal.ts';
import { commandRoles } from './roles.ts';

/** Phones' clocks differ from the server's; common practice, no source. */
export const clockToleranceMin = 2;

type Parts<Type extends CompleteCommandType> = {
  /** What has to be so whatever the command says. */
  ready?: (record: TriageRecord) => Cause | null;
  /** What has to be so of this command. */
  refuse?: (record: TriageRecord, command: CompleteCommandOf<Type>) => Cause | null;
  /** The record with the event taken in: what was decided is in the event, so that nothing is computed or looked up. */
  apply: (record: TriageRecord, event: EventOf<Type>) => TriageRecord;
} & (Type extends keyof Outcomes
  ? {
      /** What is decided, once, on a command that was not refused. */
      outcome: (record: TriageRecord, command: CompleteCommandOf<Type>) => Outcomes[Type];
    }
  : unknown);

/** What one type of command means in one kind of state: what speaks against it, what is decided, and its effect. */
export type Rule = {
  on: CompleteCommandType;
  ready: (record: TriageRecord) => Cause | null;
  refuse: (record: TriageRecord, command: CompleteCommand) => Cause | null;
  /** The event that a command becomes: its content, who and when, and the outcome where there is one. */
  decide: (record: TriageRecord, command: CompleteCommand) => TriageEvent;
  apply: (record: TriageRecord, event: TriageEvent) => TriageRecord;
};

/** Makes the rule for one type of command. Sending another type to it is a mistake in the machine, and throws. */
export function rule<Type extends CompleteCommandType>(on: Type, parts: Parts<Type>): Rule {
  const { outcome } = parts as { outcome?: (record: TriageRecord, command: CompleteCommand) => object };
  return {
    on,
    ready: (record) => parts.ready?.(record) ?? null,
    refuse: (record, command) => parts.refuse?.(record, only(on, command)) ?? null,
    decide: (record, command) => {
      const { known, shown, ...content } = only(on, command) as CompleteCommandOf<Type> & {
        known?: unknown;
        shown?: unknown;
      };
      return { ...content, ...(outcome && { outcome: outcome(record, command) }) } as unknown as TriageEvent;
    },
    apply: (record, event) => parts.apply(record, only(on, event)),
  };
}

function only<Type extends string, Any extends { type: string }>(
  type: Type,
  given: Any,
): Extract<Any, { type: Type }> {
  if (given.type !== type) throw new TypeError(`The rule for ${type} was given ${given.type}`);
  return given as Extract<Any, { type: Type }>;
}

/** Why a rule refuses a command, or null; what people read as the reason. */
export const causeOf = (of: Rule, record: TriageRecord, command: CompleteCommand): Cause | null =>
  roleRefusal(command) ?? timeRefusal(record, command) ?? of.ready(record) ?? of.refuse(record, command);

/** News of another feature is no command: who may bring it is asked there. */
const isTicketCommand = (event: CompleteCommand): event is Exclude<CompleteCommand, News> =>
  Object.hasOwn(commandRoles, event.type);

/** Refuses who may not send such a command at all. */
export function roleRefusal(event: CompleteCommand): Cause | null {
  if (!isTicketCommand(event)) return null;
  const roles = commandRoles[event.type];
  return roles.includes(event.role)
    ? null
    : because('role-not-allowed', message('roleNotAllowed', { allowed: roles, role: event.role }));
}

function timeRefusal(record: TriageRecord, event: CompleteCommand): Cause | null {
  if (event.happenedAt === undefined) return null;
  const toleranceMs = clockToleranceMin * 60_000;
  const happened = Date.parse(event.happenedAt);
  if (happened > Date.parse(event.at) + toleranceMs) {
    return because('time-out-of-order', message('momentInFuture', { moment: event.happenedAt }));
  }
  return happened < Date.parse(record.openedAt) - toleranceMs
    ? because('time-out-of-order', message('momentBeforeTicket', { moment: event.happenedAt }))
    : null;
}

/** The first cause that is given. */
export const firstOf =
  (...checks: ((record: TriageRecord) => Cause | null)[]) =>
  (record: TriageRecord): Cause | null => {
    for (const check of checks) {
      const cause = check(record);
      if (cause !== null) return cause;
    }
    return null;
  };

export const noWatchRuns = (record: TriageRecord): Cause | null =>
  runningWatch(record) === null ? null : because('watch-running', message('watchRunning'));

/** No change was left in for days that are not over. */
export const nothingUnattended = (record: TriageRecord): Cause | null => {
  const running = runningUnattended(record);
  return running === null
    ? null
    : because('watch-running', message('unattendedRuns', { until: running.until }));
};

/** A device by its name in the chain as found; by its id where none was recorded. */
export const deviceNamed = ({ asFound }: TriageRecord, deviceId: string): NamedPlace =>
  asFound === null
    ? { kind: 'device', deviceId, role: null, name: deviceId, isShared: false }
    : namedPlace(asFound.chain, { kind: 'device', deviceId });

/** A change by its kind and place, for sentences. */
const named = ({ asFound }: TriageRecord, change: ChangeRecord) => ({
  change: namedChange(change),
  place: asFound === null ? null : namedPlace(asFound.chain, change.target),
});

/** Said of an open change; one that is finished is not open. */
const openChangeCodes = {
  declared: 'changeIsDeclared',
  applied: 'changeIsApplied',
  judged: 'changeIsJudged',
} as const;

export const noChangeOpen = (record: TriageRecord): Cause | null => {
  const open = openChange(record);
  if (open === null) return null;
  const said = message(openChangeCodes[open.status as keyof typeof openChangeCodes], named(record, open));
  return because('change-open', said, { place: open.target, openChangeId: open.id });
};

/** Nothing that has to be put back is in place, and no change waits for its end. */
export const chainAsItWas = (record: TriageRecord): Cause | null => {
  const open = openChange(record);
  if (open === null || open.status === 'declared' || !open.diagnostic) return noChangeOpen(record);
  const said = message('diagnosticInPlace', named(record, open));
  return because('diagnostic-change-in-place', said, { place: open.target, openChangeId: open.id });
};

export const notClosed = (record: TriageRecord): Cause | null =>
  record.closedAt === null ? null : because('not-allowed-now', message('closedReopenFirst'));
