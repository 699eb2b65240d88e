import { message } from '../../shared/message/index.ts';
import { BusyError, HungUpError, TooMuchMemoryError } from '../heavy-work/index.ts';
import { type Refused, refused } from './problem.ts';

/** What whoever asked for heavy work is told where it can't be done; null when the error is another. */
export function refusalOfHeavyWork(error: unknown): Refused | null {
  if (error instanceof BusyError)
    return refused('server-busy', message('tryAgainSoon'), { retryAfterS: error.retryAfterS });
  // Nobody reads it.
  if (error instanceof HungUpError) return refused('request-timeout', message('tryAgainSoon'));
  return error instanceof TooMuchMemoryError ? refused('too-large', message('workTooLarge')) : null;
}
