import type { UnreadKind } from '../../shared/contract/ticket.ts';
import { UnreadableDataError } from '../database/index.ts';
import { type Refused, refused } from './problem.ts';

/** Assumed: about what it takes to replace a server. */
const retryAfterS = 10;

const refusals: Record<UnreadKind, (error: UnreadableDataError) => Refused> = {
  'newer-data': ({ message }) =>
    refused('newer-data', `${message} Ask again once all servers are replaced.`, { retryAfterS }),
  'log-does-not-replay': () =>
    refused(
      'log-does-not-replay',
      'What happened on this ticket cannot be read from its log. Whoever runs the server finds out why with npm run tickets:rebuild.',
    ),
};

/** What whoever asked is told of stored data that can't be read; null when the error is another. */
export const refusalOfUnreadable = (error: unknown): Refused | null =>
  error instanceof UnreadableDataError ? refusals[error.kind](error) : null;
