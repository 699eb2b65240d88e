import canonicalize from 'canonicalize';
import { MACHINE_VERSION, type TriageSnapshot } from '../../../state-machines/index.ts';
import { type Database, UnreadableDataError } from '../../database/index.ts';
import { everyOrganisation, type OrganisationRef } from '../organisation/index.ts';
import { loggedEventsOf } from './log.ts';
import { replayLog } from './replay-log.ts';
import { columnsOf, storedSnapshot } from './snapshot.ts';
import type { Tenancy } from './tenancy.ts';
import { ticketBatches } from './ticket-batches.ts';

/** What became of a ticket's snapshot; `because` is for whoever runs the server. */
type Rebuilt = { readonly kind: 'kept' | 'rebuilt' } | { readonly kind: 'failed'; readonly because: string };
export type RebuiltTicket = Rebuilt & { readonly number: number };
export type RebuiltBatch = {
  readonly organisation: OrganisationRef;
  /** Tickets of the organisation that were looked at so far, and all that are to be. */
  readonly done: number;
  readonly total: number;
  readonly tickets: readonly RebuiltTicket[];
};

/** `older`: tickets whose snapshot an older version of the program wrote. `all`: every ticket. */
type Which = 'older' | 'all';

/**
 * Rebuilds snapshots from their logs, all organisations, a batch at a time. Each ticket is locked in a transaction of
 * its own, so that work on the others goes on. A log that does not replay is told, and its ticket left as it is.
 */
export async function* rebuildTickets(database: Database, which: Which): AsyncGenerator<RebuiltBatch> {
  for (const organisation of await everyOrganisation(database)) {
    const { orgId } = organisation;
    const inTenant = <T>(work: (tenancy: Tenancy) => Promise<T>): Promise<T> =>
      database.inTenant({ orgId, memberId: null }, (tx) => work({ tx, actor: { orgId } }));
    const total = await inTenant((tenancy) => countTickets(tenancy, which));
    let done = 0;
    for await (const batch of ticketBatches(inTenant, among(which))) {
      const tickets: RebuiltTicket[] = [];
      for (const { id, number } of batch) {
        tickets.push({ ...(await inTenant((tenancy) => rebuildOne(tenancy, id))), number });
      }
      done += batch.length;
      yield { organisation, done, total: Math.max(total, done), tickets };
      if (done >= total) break;
    }
  }
}

const among = (which: Which) => (which === 'older' ? { machineVersion: { lt: MACHINE_VERSION } } : {});

const countTickets = ({ tx, actor }: Tenancy, which: Which): Promise<number> =>
  tx.ticket.count({ where: { ...among(which), orgId: actor.orgId } });

async function rebuildOne(tenancy: Tenancy, id: string): Promise<Rebuilt> {
  const { tx, actor } = tenancy;
  await tx.$queryRaw`select id from ticket where org_id = ${actor.orgId}::uuid and id = ${id}::uuid for update`;
  const where = { orgId_id: { orgId: actor.orgId, id } };
  const row = await tx.ticket.findUniqueOrThrow({
    where,
    select: { id: true, snapshot: true, machineVersion: true },
  });
  const read = await fromRowAndLog(tenancy, row);
  if ('because' in read) return read;
  const isKept = read.isInUse && canonicalize(read.replayed) === canonicalize(row.snapshot);
  if (isKept) return { kind: 'kept' };
  await tx.ticket.update({ where, data: columnsOf(read.replayed) });
  return { kind: 'rebuilt' };
}

type Row = Parameters<typeof storedSnapshot>[0];
type Read =
  | { readonly isInUse: boolean; readonly replayed: TriageSnapshot }
  | { readonly kind: 'failed'; readonly because: string };

async function fromRowAndLog(tenancy: Tenancy, row: Row): Promise<Read> {
  try {
    const isInUse = storedSnapshot(row) !== null;
    return { isInUse, replayed: replayLog(await loggedEventsOf(tenancy, row.id)) };
  } catch (error) {
    if (error instanceof UnreadableDataError) {
      return { kind: 'failed', because: error.message };
    }
    throw error;
  }
}
