import { message } from '../../shared/message/index.ts';
import { sqlState } from '../database/index.ts';
import { type Refused, refused } from './problem.ts';

/** Unique and foreign keys that speak before a use case could: PostgreSQL's unique_violation and foreign_key_violation. */
export function refusalOfConstraint(error: unknown): Refused | null {
  const state = sqlState(error);
  if (state === '23505') return refused('already-exists', message('likeOneAlready'));
  if (state === '23503') return refused('not-found', message('referenceMissing'));
  return null;
}
