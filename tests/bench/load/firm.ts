import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { homeCinema } from '../../chain/build-chain.ts';
import type { Program } from './program.ts';

/** Tickets of a firm, and a technician whom all of them are with. */
export type Firm = { readonly orgId: string; readonly token: string; readonly tickets: readonly string[] };

/** Assumed: what a ticket's snapshot comes to after a day's work. */
const snapshotBytes = 16_000;

/**
 * Makes a firm by requests, as any commit takes them, with one ticket whose snapshot has 16 kB, and copies that ticket with
 * its log by SQL, so that each client has its own.
 */
export async function makeFirm({ base, admin, databaseUrl }: Program, count: number): Promise<Firm> {
  const { accessToken } = await post(base, '/auth/sign-in', admin);
  const headers = () => ({ authorization: `Bearer ${accessToken}`, 'idempotency-key': randomUUID() });
  const person = { name: 'Technician', email: 'technician@load.example', role: 'technician' };
  const password = 'a long password for measuring';
  await post(base, '/members', { ...person, password }, headers());
  const technician = await post(base, '/auth/sign-in', {
    organisation: 'load',
    email: person.email,
    password,
  });
  const desk = { ...person, name: 'Desk', email: 'desk@load.example', role: 'dispatcher', password };
  await post(base, '/members', desk, headers());
  const { accessToken: atDesk } = await post(base, '/auth/sign-in', { ...desk, organisation: 'load' });
  const byDesk = () => ({ authorization: `Bearer ${atDesk}`, 'idempotency-key': randomUUID() });
  const contact = { phone: '+44 1632 960 143' };
  const site = await post(base, '/sites', { client: 'Overwell', address: '1 Mill Lane', contact }, byDesk());
  const chain = await post(base, `/sites/${site.id}/chains`, homeCinema(), byDesk());
  const intake = { symptom: { kind: 'dropOuts', perHour: 3 } };
  const opened = { siteId: site.id, chainId: chain.id, assigneeId: technician.member.id, intake };
  const ticket = await post(base, '/tickets', opened, byDesk());
  const token = technician.accessToken;
  const step = (command: object) =>
    post(base, `/tickets/${ticket.id}/commands`, command, {
      authorization: `Bearer ${token}`,
      'idempotency-key': randomUUID(),
    });
  await step({ type: 'reviewAudit', chainVersion: 1 });
  await step({ type: 'answerWhatChanged', answers: [{ kind: 'nothing' }] });
  await step({ type: 'recordAsFound', chainVersion: 1 });
  await step({ type: 'startWatch' });
  const db = new pg.Client(databaseUrl);
  await db.connect();
  const size = async (): Promise<number> =>
    (await db.query('select length(snapshot::text) as size from ticket')).rows[0].size;
  while ((await size()) < snapshotBytes)
    await step({ type: 'recordOccurrence', description: 'Black for a moment, then back. '.repeat(8) });
  const tickets = await copies(db, ticket.id, count);
  const { rows } = await db.query('select org_id from organisation');
  await db.end();
  return { orgId: rows[0].org_id, token, tickets };
}

/** All but those that the database makes of others. */
async function writtenColumns(db: pg.Client, table: string): Promise<string> {
  const { rows } = await db.query(
    `select string_agg(quote_ident(attname), ', ') as columns from pg_attribute
     where attrelid = $1::regclass and attnum > 0 and not attisdropped and attgenerated = ''`,
    [table],
  );
  return rows[0].columns;
}

async function copies(db: pg.Client, ticketId: string, count: number): Promise<string[]> {
  const ids = Array.from({ length: count }, () => randomUUID());
  for (const [at, id] of ids.entries())
    for (const [table, changed] of [
      ['ticket', { id, number: at + 2 }],
      ['ticket_event', { ticket_id: id }],
      ['ticket_text', { ticket_id: id }],
    ] as const) {
      const columns = await writtenColumns(db, table);
      await db.query(
        `insert into ${table} (${columns}) select ${columns} from
           (select (jsonb_populate_record(one, $1)).* from ${table} one
            where ${table === 'ticket' ? 'id' : 'ticket_id'} = $2) copied`,
        [JSON.stringify(changed), ticketId],
      );
    }
  await db.query('analyze');
  return ids;
}

async function post(base: string, path: string, body: object, headers = {}) {
  const answer = await fetch(base + path, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...headers },
    body: JSON.stringify(body),
  });
  const text = await answer.text();
  if (!answer.ok) throw new Error(`${path}: ${answer.status} ${text}`);
  return JSON.parse(text);
}
