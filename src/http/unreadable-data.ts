import { message } from '../../shared/message/index.ts';
import { NewerDataError, UnreadableDataError } from '../database/index.ts';
import { type Refused, refused } from './problem.ts';

/** Assumed: about what it takes to replace a server. */
const retryAfterS = 10;

/** What whoever asked is told of stored data that can't be read; null when the error is another. */
export function refusalOfUnreadable(error: unknown): Refused | null {
  if (error instanceof NewerDataError)
    return refused('newer-data', message('newerServerWrote', error.versions), { retryAfterS });
  return error instanceof UnreadableDataError ? refused(error.kind, message('ticketUnreadable')) : null;
}
