import { type AnyActorScope, createActor, initialTransition, type StateValue } from 'xstate';
import { organisationDefaults } from '../../shared/contract/defaults.ts';
import type { TriageRecord } from '../../shared/contract/triage.ts';
import type { TriageEvent } from './events.ts';
import { MACHINE_VERSION, triageMachine } from './machine.ts';
import { once } from './once.ts';
import type { Opening } from './opening.ts';

/** A ticket's triage at rest: plain JSON, to be stored, sent and taken up again. */
export type TriageSnapshot = {
  machineVersion: number;
  value: StateValue;
  context: TriageRecord;
};

/** A snapshot as the machine takes it. */
export const wake = ({ value, context }: Pick<TriageSnapshot, 'value' | 'context'>) =>
  triageMachine.resolveState({ value, context });
export type Awake = ReturnType<typeof wake>;
export const rest = ({ value, context }: Awake): TriageSnapshot => ({
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

const opened = (input: Opening): Awake => initialTransition(triageMachine, input)[0];

/** The triage of a ticket that is opened now. */
export const openTriage = (input: Opening): TriageSnapshot => rest(opened(input));

/** The ticket of an actor that takes no event. */
const nobodys: Opening = {
  ticketId: '',
  settings: { revision: 1, risk: organisationDefaults.risk, reopenDays: organisationDefaults.reopenDays },
  symptom: { kind: 'noPicture', perHour: null, lastsS: null, pattern: { kind: 'notKnown' }, onlyWith: null },
  whatChanged: [],
  at: '',
  by: '',
};

/** An actor that never starts, made once: XState's `transition` makes one for each event, which costs more than the event. */
const scope = once((): AnyActorScope => {
  const self = createActor(triageMachine, { input: nobodys });
  const nothing = () => {};
  const doing = {
    defer: nothing,
    emit: nothing,
    logger: nothing,
    stopChild: nothing,
    actionExecutor: nothing,
  };
  return { ...doing, self, system: self.system, id: self.id, sessionId: self.sessionId };
});

/**
 * The machine's transition over one event. XState leaves a snapshot as it is, without an error, where no transition is
 * enabled; here that throws.
 */
export function step(awake: Awake, event: TriageEvent): Awake {
  if (!awake.can(event)) {
    throw new EventNotTaken(`‘${event.type}’ is not taken in ‘${stateName(awake)}’ with this record`);
  }
  return triageMachine.transition(awake, event, scope());
}

/** An event that the machine does not take: it was not decided on this snapshot. */
export class EventNotTaken extends Error {
  override name = 'EventNotTaken';
}

/**
 * Takes one decided event in: no outcome is computed, nothing looked up, no clock read.
 *
 * @throws EventNotTaken when the state has no place for it, or an invariant does not hold
 */
export const evolve = (snapshot: TriageSnapshot, event: TriageEvent): TriageSnapshot =>
  rest(step(wake(snapshot), event));

/**
 * The snapshot that a log leads to: a fold of `evolve`.
 *
 * @param eventsOf the events that an entry of the log stands for, given where the entries before it lead
 * @throws EventNotTaken with the entry's number, when an event of it is not taken
 */
export function foldLog<Entry>(
  input: Opening,
  log: readonly Entry[],
  eventsOf: (entry: Entry, before: Pick<TriageSnapshot, 'value' | 'context'>) => readonly TriageEvent[],
): TriageSnapshot {
  let awake = opened(input);
  for (const [at, entry] of log.entries()) {
    try {
      for (const event of eventsOf(entry, awake)) awake = step(awake, event);
    } catch (error) {
      if (!(error instanceof EventNotTaken)) throw error;
      throw new EventNotTaken(`Event ${at + 1} of the log: ${error.message}`);
    }
  }
  return rest(awake);
}

/**
 * The snapshot that today's events lead to.
 *
 * @throws EventNotTaken with the event's number, when an event is not taken
 */
export const replay = (input: Opening, events: readonly TriageEvent[]): TriageSnapshot =>
  foldLog(input, events, (event) => [event]);
