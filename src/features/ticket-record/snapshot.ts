import { z } from 'zod';
import { triageRecord } from '../../../shared/contract/triage.ts';
import {
  dueOf,
  MACHINE_VERSION,
  newestReadable,
  stateName,
  type TriageSnapshot,
  triageMachine,
} from '../../../state-machines/index.ts';
import { NewerDataError, Prisma } from '../../database/index.ts';
import { loggedEventsOf } from './log.ts';
import { replayLog } from './replay-log.ts';
import type { Tenancy } from './tenancy.ts';

/** A ticket's row as far as its snapshot goes. */
type StoredSnapshot = { readonly id: string; readonly snapshot: unknown; readonly machineVersion: number };

const stored = z.object({
  machineVersion: z.int(),
  value: z.union([z.string(), z.record(z.string(), z.string())]),
  context: triageRecord,
});

/** The columns that follow from a snapshot. */
export const columnsOf = (snapshot: TriageSnapshot) => ({
  ...dueColumns(snapshot),
  snapshot: snapshot as unknown as Prisma.InputJsonObject,
  state: stateName(snapshot),
  machineVersion: MACHINE_VERSION,
  closedAt: snapshot.context.closedAt === null ? null : new Date(snapshot.context.closedAt),
});

function dueColumns({ context }: TriageSnapshot) {
  const found = dueOf(context);
  return found === null
    ? { due: Prisma.DbNull, dueBy: null }
    : { due: found satisfies Prisma.InputJsonObject, dueBy: new Date(found.by) };
}

/**
 * The snapshot that a row holds, where this version of the program wrote it; null where another did whose log can be
 * read, or where it is not as it should be: it is a cache, and the log says it anew.
 *
 * @throws NewerDataError
 */
export function storedSnapshot(row: StoredSnapshot): TriageSnapshot | null {
  const { machineVersion } = (row.snapshot ?? {}) as { machineVersion?: unknown };
  const found = Math.max(row.machineVersion, typeof machineVersion === 'number' ? machineVersion : 0);
  if (found > newestReadable) {
    throw new NewerDataError(`ticket ${row.id}`, { found, known: newestReadable });
  }
  if (row.machineVersion !== MACHINE_VERSION || machineVersion !== MACHINE_VERSION) return null;
  const read = stored.safeParse(row.snapshot);
  return read.success && hasState(read.data) ? read.data : null;
}

function hasState({ value, context }: TriageSnapshot): boolean {
  try {
    triageMachine.resolveState({ value, context });
    return true;
  } catch {
    return false;
  }
}

/** What triage knows of a ticket; `isStored` is false where the row does not hold it and it was read off the log. */
export type ReadSnapshot = { readonly snapshot: TriageSnapshot; readonly isStored: boolean };

/**
 * The one reader of snapshots.
 *
 * @throws NewerDataError; LogDoesNotReplayError where the row's snapshot is of no use and the log does not replay
 */
export async function readSnapshot(tenancy: Tenancy, row: StoredSnapshot): Promise<ReadSnapshot> {
  const snapshot = storedSnapshot(row);
  return snapshot === null
    ? { snapshot: replayLog(await loggedEventsOf(tenancy, row.id)), isStored: false }
    : { snapshot, isStored: true };
}

/**
 * Lets nothing be said of all of an organisation's tickets while one of them can't be read.
 *
 * @throws NewerDataError
 */
export async function refuseNewerTickets({ tx, actor }: Tenancy): Promise<void> {
  const newer = await tx.ticket.findFirst({
    where: { orgId: actor.orgId, machineVersion: { gt: newestReadable } },
    select: { id: true, machineVersion: true },
  });
  if (newer === null) return;
  throw new NewerDataError(`ticket ${newer.id}`, { found: newer.machineVersion, known: newestReadable });
}
