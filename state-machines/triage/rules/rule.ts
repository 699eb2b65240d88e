import { placeName } from '../../../shared/chain/place.ts';
import type { ChangeRecord, TriageRecord } from '../../../shared/contract/triage.ts';
import { changeLabel } from '../changes/catalogue.ts';
import type { EventOf, TriageEvent, TriageEventType } from '../events.ts';
import { openChange, runningWatch } from '../record.ts';
import { because, type Cause } from './refusal.ts';
import { commandRoles } from './roles.ts';

/** Phones' clocks differ from the server's; common practice, no source. */
export const clockToleranceMin = 2;

type Parts<Type extends TriageEventType> = {
  /** What sending it does, in plain words. */
  label: string;
  /** What has to be so whatever the event says. */
  ready?: (record: TriageRecord) => Cause | null;
  /** What has to be so of this event. */
  refuse?: (record: TriageRecord, event: EventOf<Type>) => Cause | null;
  /** The record with the event taken in. */
  apply: (record: TriageRecord, event: EventOf<Type>) => TriageRecord;
};

/** What one type of event means in one kind of state: the guard, its reasons and its effect. */
export type Rule = {
  on: TriageEventType;
  label: string;
  ready: (record: TriageRecord) => Cause | null;
  refuse: (record: TriageRecord, event: TriageEvent) => Cause | null;
  apply: (record: TriageRecord, event: TriageEvent) => TriageRecord;
};

/** Makes the rule for one type of event. Sending another type to it is a mistake in the machine, and throws. */
export function rule<Type extends TriageEventType>(on: Type, parts: Parts<Type>): Rule {
  const narrowed = (event: TriageEvent): EventOf<Type> => {
    if (event.type !== on) throw new TypeError(`The rule for ${on} was given ${event.type}`);
    return event as EventOf<Type>;
  };
  return {
    on,
    label: parts.label,
    ready: (record) => parts.ready?.(record) ?? null,
    refuse: (record, event) => parts.refuse?.(record, narrowed(event)) ?? null,
    apply: (record, event) => parts.apply(record, narrowed(event)),
  };
}

/** Why a rule refuses an event, or null. The machine's guards and the reasons people read both come from here. */
export const causeOf = (of: Rule, record: TriageRecord, event: TriageEvent): Cause | null =>
  roleRefusal(event) ?? timeRefusal(record, event) ?? of.ready(record) ?? of.refuse(record, event);

/** Refuses who may not send such a command at all. */
export function roleRefusal(event: TriageEvent): Cause | null {
  if (event.type === 'evidenceAdded' || event.type === 'evidenceWithdrawn') return null;
  const roles = commandRoles[event.type];
  return roles.includes(event.role)
    ? null
    : because('role-not-allowed', `This is for: ${roles.join(', ')}. You are signed in as ${event.role}.`);
}

function timeRefusal(record: TriageRecord, event: TriageEvent): Cause | null {
  if (event.happenedAt === undefined) return null;
  const toleranceMs = clockToleranceMin * 60_000;
  const happened = Date.parse(event.happenedAt);
  if (happened > Date.parse(event.at) + toleranceMs) {
    return because('time-out-of-order', `${event.happenedAt} is still to come: check the phone’s clock.`);
  }
  return happened < Date.parse(record.openedAt) - toleranceMs
    ? because(
        'time-out-of-order',
        `${event.happenedAt} is before the ticket was opened: check the phone’s clock.`,
      )
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
  runningWatch(record) === null ? null : because('watch-running', 'A watch is running: end it first.');

/** A change by its label and place, for sentences. */
function nameOf({ asFound }: TriageRecord, { kind, target }: ChangeRecord): string {
  const label = `‘${changeLabel(kind)}’`;
  return asFound === null ? label : `${label} at ${placeName(asFound.chain, target)}`;
}

export const noChangeOpen = (record: TriageRecord): Cause | null => {
  const open = openChange(record);
  if (open === null) return null;
  const detail = `One change at a time: ${nameOf(record, open)} is ${open.status} and not finished yet.`;
  return because('change-open', detail, { place: open.target, openChangeId: open.id });
};

/** Nothing that has to be put back is in place, and no change waits for its end. */
export const chainAsItWas = (record: TriageRecord): Cause | null => {
  const open = openChange(record);
  if (open === null || open.status === 'declared' || !open.diagnostic) return noChangeOpen(record);
  const detail = `A diagnostic change is still in place: ${nameOf(record, open)}. Put it back first.`;
  return because('diagnostic-change-in-place', detail, { place: open.target, openChangeId: open.id });
};

export const notClosed = (record: TriageRecord): Cause | null =>
  record.closedAt === null ? null : because('not-allowed-now', 'The ticket is closed: reopen it first.');
