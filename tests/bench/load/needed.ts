import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import type { Pace } from './clients.ts';
import type { Firm } from './firm.ts';

/** What is asked of PostgreSQL, as pgbench takes it. */
export type Needed = { readonly note: string; readonly page: string; readonly list: string };

/**
 * The statements that are needed, over copies of the tables with their indexes and without triggers or row-level security:
 * the same rows, the same bytes written.
 */
export async function neededStatements(databaseUrl: string, { orgId, tickets }: Firm): Promise<Needed> {
  const db = new pg.Client(databaseUrl);
  await db.connect();
  await db.query('create schema needed');
  for (const table of ['ticket', 'ticket_event', 'ticket_text', 'idempotency_record', 'session', 'member']) {
    await db.query(
      `create table needed.${table} (like public.${table} including indexes including defaults)`,
    );
    await db.query(`insert into needed.${table} select * from public.${table}`);
  }
  await db.query('create sequence needed.key');
  // Snapshots come from a table, since pgbench takes the colons of a time for variables.
  await db.query(
    `create table needed.which as select which.id, at, snapshot from unnest($1::uuid[]) with ordinality as which (id, at)
     join public.ticket on ticket.id = which.id`,
    [tickets],
  );
  await db.query('create unique index on needed.which (at) include (id)');
  await db.query('analyze');
  await db.end();
  const one = `\\set at random(1, ${tickets.length})\n`;
  const own = `org_id = '${orgId}' and id = (select id from needed.which where at = :at)`;
  const actor = `select member.role, session.ended_at from needed.session join needed.member on member.org_id = session.org_id
    and member.id = session.member_id where session.org_id = '${orgId}' limit 1;`;
  return {
    page: `${one}begin;\n${actor}\nselect * from needed.ticket where ${own};\ncommit;\n`,
    list: `begin;\n${actor}\nselect id, number, site_id, chain_id, symptom, priority, state, assignee_id, updated_at
      from needed.ticket where org_id = '${orgId}' order by number desc limit 51;\ncommit;\n`,
    note: `${one}begin;\n${actor}
insert into needed.idempotency_record (org_id, member_id, key, request_hash)
  values ('${orgId}', '${orgId}', nextval('needed.key'), repeat('0', 64));
select * from needed.ticket where ${own} for update;
with next as (update needed.ticket set snapshot = (select snapshot from needed.which where at = :at), sequence = sequence + 1, updated_at = now()
  where ${own} returning id, sequence),
 logged as (insert into needed.ticket_event (org_id, ticket_id, sequence, type, payload, actor_id, at, machine_version,
  previous_hash, hash, format, signature) select '${orgId}', id, sequence, 'note',
  '{"text": {"sha256" : "${'0'.repeat(64)}"}}', '${orgId}', now(), 1, repeat('0', 64), repeat('0', 64), 2, repeat('a', 86) from next)
insert into needed.ticket_text (org_id, ticket_id, sequence, pointer, salt, text) select '${orgId}', id, sequence, '/text',
  repeat('0', 64), 'Hums, and is warm to the hand.' from next;
update needed.idempotency_record set status = 200, headers = '{"etag": "\\"012345678901234567890123456\\""}', body = 'null'
  where org_id = '${orgId}' and member_id = '${orgId}' and key = currval('needed.key')::text;
commit;\n`,
  };
}

/** Runs pgbench with prepared statements. */
export async function pgbench(
  databaseUrl: string,
  script: string,
  { clients, forMs }: { readonly clients: number; readonly forMs: number },
): Promise<Pace> {
  const folder = mkdtempSync(join(tmpdir(), 'halfsplit-pgbench-'));
  // A statement a line, as pgbench wants neither comment nor backslash in one.
  writeFileSync(join(folder, 'script.sql'), script);
  const words = ['-n', '-M', 'prepared', '-c', clients, '-j', 1, '-T', Math.round(forMs / 1000)];
  const program = spawn(
    'pgbench',
    [
      ...words.map(String),
      '-f',
      join(folder, 'script.sql'),
      '-l',
      '--log-prefix',
      join(folder, 'log'),
      databaseUrl,
    ],
    { stdio: ['ignore', 'pipe', 'pipe'] },
  );
  let told = '';
  program.stdout.on('data', (part) => {
    told += part;
  });
  program.stderr.on('data', (part) => {
    told += part;
  });
  const [code] = await once(program, 'close');
  if (code !== 0) throw new Error(told);
  const times = timesIn(folder);
  rmSync(folder, { recursive: true, force: true });
  const perS = Number(/tps = ([\d.]+)/.exec(told)?.[1]);
  const at = (share: number) => times[Math.floor(times.length * share)] ?? 0;
  return { perS, p50Ms: at(0.5), p99Ms: at(0.99) };
}

/** Milliseconds of each transaction, in order of length, as pgbench logs them: its third column has microseconds. */
const timesIn = (folder: string): number[] =>
  readdirSync(folder)
    .filter((name) => name.startsWith('log'))
    .flatMap((name) => readFileSync(join(folder, name), 'utf8').trim().split('\n'))
    .map((line) => Number(line.split(' ')[2]) / 1000)
    .toSorted((a, b) => a - b);
