import {
  logAsToday,
  replayStored,
  type Stored,
  type TriageEvent,
  type TriageSnapshot,
} from '../../../state-machines/index.ts';
import { UnreadableDataError } from '../../database/index.ts';
import { isFact } from './facts.ts';
import type { LoggedEvent } from './log.ts';

/** A log that this program's machine does not take: it was not written by it, or was tampered with. */
export class LogDoesNotReplayError extends UnreadableDataError {
  override readonly name = 'LogDoesNotReplayError';
  readonly kind = 'log-does-not-replay';

  constructor(cause: unknown) {
    super(`The log does not replay. ${cause instanceof Error ? cause.message : ''}`.trim(), { cause });
  }
}

/**
 * What triage knows of a ticket by its log alone.
 *
 * @param events the whole log, oldest first
 * @throws LogDoesNotReplayError
 */
export const replayLog = (events: readonly LoggedEvent[]): TriageSnapshot =>
  reading(events, (opening, forTriage) => replayStored(opening, forTriage.map(storedEventOf)));

/**
 * A log with what its events say in today's form, for reading. What was hashed stays what it was: hashes are checked
 * on the log as it is stored.
 *
 * @param events the whole log, oldest first
 * @throws LogDoesNotReplayError where an event of an older version can't be read for that
 */
export const logAsReadToday = (events: readonly LoggedEvent[]): LoggedEvent[] =>
  reading(events, (opening, forTriage) => {
    const read = logAsToday(opening, forTriage.map(storedEventOf));
    const payloads = new Map(forTriage.map(({ sequence }, at) => [sequence, payloadOf(read[at])]));
    return events.map((event) => ({ ...event, payload: payloads.get(event.sequence) ?? event.payload }));
  });

/** Of an event that did two things, the first is what was asked for. */
function payloadOf([first]: readonly TriageEvent[] = []): Record<string, unknown> | undefined {
  if (first === undefined) return undefined;
  const { type, at, by, ...payload } = first;
  return payload;
}

function reading<Read>(
  events: readonly LoggedEvent[],
  read: (opening: Stored, forTriage: readonly LoggedEvent[]) => Read,
): Read {
  try {
    const [first, ...rest] = events;
    if (first === undefined) throw new Error('It is empty.');
    return read(
      openingOf(first),
      rest.filter(({ type }) => !isFact(type)),
    );
  } catch (error) {
    throw new LogDoesNotReplayError(error);
  }
}

const openingOf = ({ ticketId, payload, at, actorId, machineVersion }: LoggedEvent): Stored => {
  const { settings, intake } = payload as { settings: unknown; intake: Record<string, unknown> };
  // `moment` is of version 1.
  const { symptom, whatChanged, moment } = intake;
  const content = { ticketId, settings, symptom, whatChanged, at, by: actorId };
  return { version: machineVersion, content: moment === undefined ? content : { ...content, moment } };
};

const storedEventOf = ({ payload, type, at, actorId, machineVersion }: LoggedEvent): Stored => ({
  version: machineVersion,
  content: { ...payload, type, at, by: actorId },
});
