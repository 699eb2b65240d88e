import { setTimeout } from 'node:timers/promises';
import { sqlState } from './statements.ts';

/** Others wrote the same rows at the same time, again and again; nothing of the transaction is left. */
export class ContendedError extends Error {
  override readonly name = 'ContendedError';
}

/** Assumed: a deadlock that comes three times in a row is no accident. */
const triesAllowed = 4;
/** Assumed: the longest wait before the first try again, in ms; doubled by each further one, and drawn by lot. */
const firstWaitMs = 20;

/**
 * Runs a transaction again that the database ended in favour of others. Nothing of it was kept, so that whatever its
 * work did outside the database has to bear being done twice.
 * @throws ContendedError when it was ended every time
 */
export async function retriedWhenContended<T>(transaction: () => Promise<T>): Promise<T> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await transaction();
    } catch (error) {
      if (!isContention(error)) throw error;
      if (attempt === triesAllowed)
        throw new ContendedError('The transaction was ended in favour of others every time.', {
          cause: error,
        });
      await setTimeout(Math.random() * firstWaitMs * 2 ** (attempt - 1));
    }
  }
}

/** PostgreSQL's serialization_failure and deadlock_detected. */
const isContention = (error: unknown): boolean => ['40001', '40P01'].includes(sqlState(error) ?? '');
