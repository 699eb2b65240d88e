import { randomUUID } from 'node:crypto';
import { loadavg } from 'node:os';
import { argument } from '../argument.ts';
import type { BenchRow } from '../bench-row.ts';
import { type Asked, type Pace, pace } from './clients.ts';
import { type Firm, makeFirm } from './firm.ts';
import { type Needed, neededStatements, pgbench } from './needed.ts';
import { type Program, startCommit } from './program.ts';

const clients = 64;
const forMs = 10_000;
const warmMs = 3_000;

type Kind = keyof Needed;
/** What is aimed at: of pgbench's pace, and of the pace of the commit beside. */
const goals: Readonly<Record<Kind, string>> = {
  note: 'goal 0.3 and 3.5',
  page: 'goal 0.15 and 3',
  list: 'goal 0.1',
};

/**
 * Commands, pages and lists a second at 64 clients, each on a ticket of its own with a snapshot of 16 kB, beside pgbench with
 * the statements that are needed, prepared, on the same PostgreSQL, and beside another commit (`--against=REF`), in one run.
 */
export async function benchLoad(): Promise<BenchRow[]> {
  const serverUrl = process.env.TEST_DATABASE_URL ?? '';
  if (serverUrl === '') throw new Error('TEST_DATABASE_URL has to name a PostgreSQL');
  const ref = argument('against') ?? null;
  const here = await startCommit(null, serverUrl);
  const before = ref === null ? null : await startCommit(ref, serverUrl);
  try {
    const firm = await makeFirm(here, clients);
    const firmBefore = before === null ? null : await makeFirm(before, clients);
    const needed = await neededStatements(here.databaseUrl, firm);
    const rows: BenchRow[] = [];
    for (const kind of ['note', 'page', 'list'] as const) {
      const bare = await pgbench(here.databaseUrl, needed[kind], { clients, forMs });
      const now = await measured(here, firm, kind);
      const then = before === null || firmBefore === null ? null : await measured(before, firmBefore, kind);
      rows.push(rowOf(kind, { bare, now, then, ref }));
    }
    return rows;
  } finally {
    await here.stop();
    await before?.stop();
  }
}

async function measured({ base }: Program, firm: Firm, kind: Kind): Promise<Pace> {
  const next = (client: number) => asked(kind, firm, firm.tickets[client] ?? '');
  await pace(base, { clients, forMs: warmMs }, next);
  return pace(base, { clients, forMs }, next);
}

function asked(kind: Kind, { token }: Firm, ticketId: string): Asked {
  const headers = { authorization: `Bearer ${token}` };
  if (kind === 'list') return { method: 'GET', path: '/tickets?limit=50', headers };
  if (kind === 'page') return { method: 'GET', path: `/tickets/${ticketId}`, headers };
  return {
    method: 'POST',
    path: `/tickets/${ticketId}/commands`,
    headers: { ...headers, 'content-type': 'application/json', 'idempotency-key': randomUUID() },
    body: JSON.stringify({ type: 'note', text: 'Hums, and is warm to the hand.' }),
  };
}

const told = ({ perS, p50Ms, p99Ms }: Pace): string =>
  `${perS.toFixed(0)}/s, half in ${p50Ms.toFixed(0)} ms, 99 % in ${p99Ms.toFixed(0)} ms`;

function rowOf(
  kind: Kind,
  { bare, now, then, ref }: { bare: Pace; now: Pace; then: Pace | null; ref: string | null },
): BenchRow {
  const beside = then === null ? '' : `; ${ref}: ${told(then)}`;
  const times = then === null ? '' : `, ${(now.perS / then.perS).toFixed(2)} times ${ref}`;
  return {
    name: `${kind}, ${clients} clients; load ${(loadavg()[0] ?? 0).toFixed(1)}`,
    value: told(now),
    baseline: `pgbench: ${told(bare)}${beside}`,
    ratio: `${(now.perS / bare.perS).toFixed(2)} of pgbench${times}; ${goals[kind]}`,
  };
}
