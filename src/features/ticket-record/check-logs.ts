import type { KeyObject } from 'node:crypto';
import canonicalize from 'canonicalize';
import { isReadable } from '../../../state-machines/index.ts';
import { UnreadableDataError } from '../../database/index.ts';
import { hashedForm, hashOf, type LoggedEvent, loggedEventOf, noPreviousHash, withTexts } from './log.ts';
import { replayLog } from './replay-log.ts';
import { isSignedBy } from './signature.ts';
import type { Tenancy } from './tenancy.ts';

/** Something that is not as this server wrote it, for whoever runs it. */
export type LogFault = { readonly ticket: number; readonly is: string };

/** Tickets looked at in one transaction. */
const batchSize = 50;

/**
 * Walks every log of a tenant: each event's hash, its place in the chain, the server's signature; that the log replays,
 * and that the ticket's row holds what it replays to.
 */
export async function* checkLogs(
  inTenant: <T>(work: (tenancy: Tenancy) => Promise<T>) => Promise<T>,
  key: KeyObject,
): AsyncGenerator<{ readonly tickets: number; readonly faults: LogFault[] }> {
  for (let after = 0; ; ) {
    const from = after;
    const { tickets, faults, last } = await inTenant(async (tenancy) => {
      const rows = await tenancy.tx.ticket.findMany({
        where: { orgId: tenancy.actor.orgId, number: { gt: from } },
        select: { id: true, number: true, sequence: true, snapshot: true, machineVersion: true },
        orderBy: { number: 'asc' },
        take: batchSize,
      });
      const found: LogFault[] = [];
      for (const row of rows)
        for (const is of await faultsOf(tenancy, row, key)) found.push({ ticket: row.number, is });
      return { tickets: rows.length, faults: found, last: rows.at(-1)?.number };
    });
    if (last === undefined) return;
    after = last;
    yield { tickets, faults };
  }
}

type Row = {
  readonly id: string;
  readonly sequence: number;
  readonly snapshot: unknown;
  readonly machineVersion: number;
};

async function faultsOf({ tx, actor }: Tenancy, row: Row, key: KeyObject): Promise<string[]> {
  const rows = await tx.ticketEvent.findMany({
    where: { orgId: actor.orgId, ticketId: row.id },
    include: withTexts,
    orderBy: { sequence: 'asc' },
  });
  try {
    const signed = rows.map((event) => ({ ...loggedEventOf(event), signature: event.signature }));
    const faults = faultsOfChain(signed, key);
    if (signed.at(-1)?.sequence !== row.sequence)
      faults.push(`the log ends with event ${signed.at(-1)?.sequence ?? 0}, the ticket says ${row.sequence}`);
    return faults.length > 0 ? faults : faultsOfSnapshot(signed, row);
  } catch (error) {
    if (error instanceof UnreadableDataError) return [error.message];
    throw error;
  }
}

function faultsOfChain(
  events: readonly (LoggedEvent & { readonly signature: string | null })[],
  key: KeyObject,
): string[] {
  const faults: string[] = [];
  let before = noPreviousHash;
  for (const [at, { signature, ...event }] of events.entries()) {
    const name = `event ${event.sequence} (${event.type})`;
    if (event.sequence !== at + 1) faults.push(`${name} stands where event ${at + 1} belongs`);
    if (event.previousHash !== before) faults.push(`${name} does not follow the one before it`);
    if (hashOf(hashedForm(event)) !== event.hash) faults.push(`${name} is not what its hash was taken of`);
    if (signature === null) faults.push(`${name} is not signed`);
    else if (!isSignedBy(key, event.hash, signature))
      faults.push(`${name} was not signed by this server's key`);
    before = event.hash;
  }
  return faults;
}

/** A snapshot of an older version is rebuilt when it is needed, so only one of today's can differ. */
function faultsOfSnapshot(events: readonly LoggedEvent[], row: Row): string[] {
  const replayed = replayLog(events);
  const isOlder = isReadable(row.machineVersion) && row.machineVersion !== replayed.machineVersion;
  return isOlder || canonicalize(replayed) === canonicalize(row.snapshot)
    ? []
    : ['the ticket does not stand where its log leads'];
}
