import type { KeyObject } from 'node:crypto';
import {
  anchorFiles,
  digestOfAnchor,
  type Head,
  noAnchorBefore,
  readAnchor,
  readAnchorFile,
} from './anchor-file.ts';
import type { Tenancy } from './tenancy.ts';

/** Assumed: heads that are looked up by one statement. */
const batchSize = 1000;

type Anchored = { readonly folder: string; readonly key: KeyObject };

/**
 * Holds a tenant's logs against its anchors, each of which has to be signed and to follow the one before it.
 * @returns what is not as an anchor says, as a line for whoever runs the server
 */
export async function checkAnchors(
  inTenant: <T>(work: (tenancy: Tenancy) => Promise<T>) => Promise<T>,
  orgId: string,
  { folder, key }: Anchored,
): Promise<{ readonly anchors: number; readonly faults: string[] }> {
  const faults: string[] = [];
  const files = await anchorFiles(folder, orgId);
  let before: string | null = null;
  for (const file of files) {
    const text = await readAnchorFile(file);
    const anchor = readAnchor(text, key);
    if (anchor === null || anchor.orgId !== orgId)
      faults.push(`anchor of ${file.day}: was not signed by this server's key`);
    else if (anchor.before !== (before ?? noAnchorBefore))
      faults.push(`anchor of ${file.day}: does not follow the one before it`);
    before = digestOfAnchor(text);
    const heads = anchor?.heads ?? [];
    for (let from = 0; from < heads.length; from += batchSize)
      for (const fault of await inTenant((tenancy) => unlike(tenancy, heads.slice(from, from + batchSize))))
        faults.push(`${fault} the anchor of ${file.day} names`);
  }
  return { anchors: files.length, faults };
}

type Compared = Head & { readonly found: string | null; readonly number: number | null };

async function unlike({ tx, actor }: Tenancy, heads: readonly Head[]): Promise<string[]> {
  const [ids, sequences] = [heads.map(({ ticketId }) => ticketId), heads.map(({ sequence }) => sequence)];
  const rows = await tx.$queryRaw<Omit<Compared, 'hash'>[]>`
    select named.id::text as "ticketId", named.sequence, event.hash as found, ticket.number
    from unnest(${ids}::uuid[], ${sequences}::int[]) as named (id, sequence)
    left join ticket_event event on event.org_id = ${actor.orgId}::uuid
      and event.ticket_id = named.id and event.sequence = named.sequence
    left join ticket on ticket.org_id = ${actor.orgId}::uuid and ticket.id = named.id`;
  const hashes = new Map(heads.map(({ ticketId, hash }) => [ticketId, hash]));
  return rows
    .filter(({ ticketId, found }) => found !== hashes.get(ticketId))
    .map(({ ticketId, sequence, found, number }) => {
      const where = number === null ? `ticket ${ticketId}` : `ticket no. ${number}`;
      return `${where}: event ${sequence} is ${found === null ? 'missing, which' : 'not the one that'}`;
    });
}
