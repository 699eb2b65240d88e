import { message } from '../../shared/message/index.ts';
import { Prisma } from '../database/index.ts';
import { type Refused, refused } from './problem.ts';

/** Unique and foreign keys that speak before a use case could: Prisma's P2002 and P2003. */
export function refusalOfConstraint(error: unknown): Refused | null {
  if (!(error instanceof Prisma.PrismaClientKnownRequestError)) return null;
  if (error.code === 'P2002') return refused('already-exists', message('likeOneAlready'));
  if (error.code === 'P2003') return refused('not-found', message('referenceMissing'));
  return null;
}
