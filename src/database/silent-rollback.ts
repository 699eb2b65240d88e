import type pg from 'pg';

/** A transaction was to be committed, but a statement in it had failed, so the database undid it all. */
export class RolledBackError extends Error {
  override readonly name = 'RolledBackError';
}

/**
 * PostgreSQL answers COMMIT after a failed statement with ROLLBACK and no error, so that work which swallows a
 * database error would be acknowledged and lost. Makes such a COMMIT fail with RolledBackError.
 */
export function refuseSilentRollback(client: pg.ClientBase): void {
  const send = client.query.bind(client) as (...args: unknown[]) => unknown;
  const query = (...args: unknown[]): unknown => {
    const answer = send(...args);
    return isCommit(args[0]) && answer instanceof Promise ? answer.then(committed) : answer;
  };
  client.query = query as typeof client.query;
}

const isCommit = (query: unknown): boolean => {
  const text = typeof query === 'object' && query !== null && 'text' in query ? query.text : query;
  return typeof text === 'string' && text.trim().toLowerCase() === 'commit';
};

function committed(result: pg.QueryResult): pg.QueryResult {
  if (result.command === 'ROLLBACK') {
    throw new RolledBackError(
      'The transaction was rolled back, since an error of the database in it was caught and not undone with a savepoint.',
    );
  }
  return result;
}
