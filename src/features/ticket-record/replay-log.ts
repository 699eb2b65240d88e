import {
  type Opening,
  replay,
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
export function replayLog(events: readonly LoggedEvent[]): TriageSnapshot {
  try {
    const [first, ...rest] = events;
    if (first === undefined) throw new Error('It is empty.');
    return replay(openingOf(first), rest.filter(({ type }) => !isFact(type)).map(triageEventOf));
  } catch (error) {
    throw new LogDoesNotReplayError(error);
  }
}

function openingOf({ ticketId, payload, at, actorId }: LoggedEvent): Opening {
  const { settings, intake } = payload as { settings: never; intake: { symptom: never; whatChanged: never } };
  const { symptom, whatChanged } = intake;
  return { ticketId, settings, symptom, whatChanged, at, by: actorId };
}

const triageEventOf = ({ payload, type, at, actorId }: LoggedEvent): TriageEvent =>
  ({ ...payload, type, at, by: actorId }) as unknown as TriageEvent;
