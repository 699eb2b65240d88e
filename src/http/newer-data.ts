import { NewerDataError } from '../database/index.ts';
import { type Refused, refused } from './problem.ts';

/** Assumed: about what it takes to replace a server. */
const retryAfterS = 10;

/** What whoever asked is told of data that a newer server wrote; null when the error is another. */
export const refusalOfNewerData = (error: unknown): Refused | null =>
  error instanceof NewerDataError
    ? refused('newer-data', `${error.message} Ask again once all servers are replaced.`, { retryAfterS })
    : null;
