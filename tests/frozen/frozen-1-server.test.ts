import { createHash } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { LogCheck } from '../../shared/contract/log-check.ts';
import { packet as packetForm } from '../../shared/contract/packet.ts';
import { type Ticket, ticket as ticketForm } from '../../shared/contract/ticket.ts';
import type { OutboxEntry } from '../../src/web/store/outbox-entry.ts';
import { MACHINE_VERSION } from '../../state-machines/index.ts';
import { openTestApp, type TestApp, type TestMember } from '../support/test-app.ts';
import { databaseKinds } from '../support/test-database.ts';
import { bodyOf, openTestTicket, send, type TestTicket } from '../support/tickets.ts';
import {
  type FrozenBlob,
  type FrozenLog,
  type FrozenSnapshot,
  frozenRows,
  frozenStateName,
  frozenStore,
  readAllFrozenLogs,
  readFrozenDatabase,
  readFrozenPhone,
} from './frozen-1.ts';
import { type FrozenApp, openFrozenApp } from './frozen-1-app.ts';
import { asHeldByVersion1, withoutReasons } from './held-by-version-1.ts';

const sha256 = (bytes: string): string => createHash('sha256').update(bytes).digest('hex');
const phone = readFrozenPhone();

describe.each(databaseKinds())('today’s server over the databases of version 1 (%s)', (kind) => {
  describe.each(['database', 'database-planted'] as const)('%s', (name) => {
    const frozen = readFrozenDatabase(name);
    type Row = { id: string; state: string; sequence: string; snapshot: FrozenSnapshot };
    const rows = frozenRows(frozen, 'ticket') as Row[];
    let server: FrozenApp;
    let support: TestMember;
    let admin: TestMember;
    beforeAll(async () => {
      server = await openFrozenApp(kind, name);
      support = await server.signIn('pim@lanternrow.example');
      admin = await server.signIn('runa@lanternrow.example');
    });
    afterAll(() => server.close());

    it.each(rows)('shows a ticket as it was, and finds its log clean: $id', async (row) => {
      const { id, snapshot } = row;
      const ticket = ticketForm.parse(bodyOf<Ticket>(await support.get(`/tickets/${id}`), 200));
      expect(ticket.state).toBe(row.state);
      expect(asHeldByVersion1(ticket.triage)).toStrictEqual(snapshot.context);
      const check = bodyOf<LogCheck>(await support.get(`/tickets/${id}/log/check`), 200);
      expect(check).toMatchObject({ isClean: true, events: Number(row.sequence) });
      for (const part of ['log', 'timeline', 'evidence', 'log-findings', 'applicable-changes', 'packets']) {
        bodyOf(await support.get(`/tickets/${id}/${part}`), 200);
      }
      bodyOf(await support.get(`/tickets/${id}/plan`), 200);
    });

    it('keeps old verdicts once the organisation takes less risk, and another figure of the fault model', async () => {
      const now = await admin.get('/organisation');
      const { name: called, settings } = bodyOf<{ name: string; settings: object }>(now, 200);
      const { items } = bodyOf<{ items: { path: string; figure: number }[] }>(
        await admin.get('/fault-model'),
        200,
      );
      const prior = items.find(({ path }) => path.startsWith('menuStays/'));
      const faultModel = { [prior?.path ?? '']: (prior?.figure ?? 0) / 2 };
      const body = { name: called, settings: { ...settings, risk: 0.04, faultModel } };
      const put = await admin.put('/organisation', { body, headers: { 'if-match': now.headers.etag ?? '' } });
      expect(put.status).toBe(200);
      for (const { id, snapshot } of rows) {
        const ticket = bodyOf<Ticket>(await support.get(`/tickets/${id}`), 200);
        expect(asHeldByVersion1(ticket.triage)).toStrictEqual(snapshot.context);
        expect(bodyOf<LogCheck>(await support.get(`/tickets/${id}/log/check`), 200).isClean).toBe(true);
      }
    });

    it('writes its own events after those of version 1, and the log stays clean', async () => {
      for (const { id } of rows) {
        const ticket = bodyOf<Ticket>(await send(admin, id, { type: 'note', text: 'Seen again.' }), 200);
        const check = bodyOf<LogCheck>(await support.get(`/tickets/${id}/log/check`), 200);
        expect(check).toMatchObject({ isClean: true, events: ticket.sequence });
        const { items } = bodyOf<{ items: { machineVersion: number }[] }>(
          await support.get(`/tickets/${id}/log`),
          200,
        );
        const versions = items.map(({ machineVersion }) => machineVersion);
        expect([versions[0], versions.at(-1)]).toEqual([1, MACHINE_VERSION]);
      }
    });
  });

  it('shows its packets in today’s form, with the bytes that version 1 wrote', async () => {
    const server = await openFrozenApp(kind);
    const support = await server.signIn('pim@lanternrow.example');
    const rows = frozenRows(readFrozenDatabase(), 'packet') as {
      id: string;
      case_file: { triage: object };
    }[];
    expect(rows.length).toBeGreaterThan(0);
    for (const { id, case_file: caseFile } of rows) {
      const { files, caseFile: today } = packetForm.parse(bodyOf(await support.get(`/packets/${id}`), 200));
      expect(asHeldByVersion1(today.triage)).toStrictEqual(caseFile.triage);
      const summary = await support.get(`/packets/${id}/summary`);
      const listed = files.find(({ path }) => path === 'data/summary.html');
      expect(sha256(summary.text)).toBe(listed?.sha256);
    }
    await server.close();
  });
});

/**
 * What may differ between the two servers that got the same: when, the ids they gave, whether a file came before a
 * reading, and what goes by the organisation's figures, which had changed: version 1 kept a ticket to those it was
 * opened under.
 */
const mayDiffer = ['at', 'id', 'updatedAt', 'settings', 'reasons'];
function comparable(triage: object | null): unknown {
  const same = JSON.parse(
    JSON.stringify(triage, (key, value) => (mayDiffer.includes(key) ? undefined : value)),
  );
  return { ...same, evidence: same.evidence.map((item: object) => JSON.stringify(item)).sort() };
}

/** An intake of version 1 as the migrations leave it in its table. */
const migrated = (intake: unknown): unknown =>
  JSON.parse(JSON.stringify(intake).replace('"noHdrOrWrongColour"', '"noHdr"'));

describe('today’s server and a phone of version 1', () => {
  let server: FrozenApp;
  let technician: TestMember;
  beforeAll(async () => {
    server = await openFrozenApp('embedded');
    technician = await server.signIn('brask@lanternrow.example');
    expect(technician.id).toBe(phone.memberId);
  });
  afterAll(() => server.close());

  const outbox = frozenStore(phone, 'outbox').map(({ value }) => value as OutboxEntry);
  const waitingFor = (ticketId: string) => outbox.filter((entry) => entry.ticketId === ticketId);
  const files = new Map(
    frozenStore(phone, 'files').map(({ key, value }) => [key, (value as FrozenBlob).blob]),
  );

  async function sendEntry(entry: OutboxEntry) {
    const path = `/tickets/${entry.ticketId}`;
    const { id: key } = entry;
    if (entry.kind === 'command') return technician.post(`${path}/commands`, { body: entry.command, key });
    if (entry.kind === 'reading') return technician.post(`${path}/readings`, { body: entry.reading, key });
    const { base64 } = files.get(key) ?? { base64: '' };
    return server.sendFile(technician, path, {
      about: entry.about,
      bytes: Buffer.from(base64, 'base64'),
      key,
    });
  }

  it.each([
    ['visit', 0],
    ['arrived', 1],
  ] as const)('takes all that waited in the outbox, in order: %s', async (name, at) => {
    const id = phone.tickets[name];
    const replies = [];
    for (const entry of waitingFor(id).filter(({ state }) => state === 'sending')) {
      await server.hashAsHere(entry);
    }
    for (const entry of waitingFor(id)) replies.push(await sendEntry(entry));
    expect(
      replies.map(({ status, text }) => (status < 300 ? '' : text)).filter((text) => text !== ''),
    ).toEqual([]);
    // What had arrived without a reply is answered with the reply of then.
    expect(replies.map(({ headers }) => headers['idempotency-replayed'] === 'true')).toEqual(
      waitingFor(id).map(({ state }) => state === 'sending'),
    );
    const then = phone.afterSending[at] as { state: string; sequence: number; triage: object };
    const ticket = bodyOf<Ticket>(await technician.get(`/tickets/${id}`), 200);
    expect(ticket.state).toBe(then.state);
    const [held, heldThen] = [asHeldByVersion1(ticket.triage), { ...then.triage }];
    expect(comparable(withoutReasons(held))).toEqual(comparable(withoutReasons(heldThen)));
    const check = bodyOf<LogCheck>(await technician.get(`/tickets/${id}/log/check`), 200);
    expect(check).toMatchObject({ isClean: true, events: ticket.sequence });
  });
});

describe.each(databaseKinds())('the log check of today’s server (%s)', (kind) => {
  let test: TestApp;
  let place: TestTicket;
  beforeAll(async () => {
    test = await openTestApp(kind);
    place = await openTestTicket(test);
  });
  afterAll(() => test.close());

  /** The rows of a log, in the organisation of the tests, in place of those of the log before. */
  async function putLog({ opening, events, snapshots }: FrozenLog, number: number): Promise<void> {
    const { orgId } = test.home;
    const { ticketId } = opening;
    await test.tamper('delete from ticket_event where org_id = $1 and ticket_id = $2', [orgId, ticketId]);
    await test.tamper('delete from ticket where org_id = $1 and id = $2', [orgId, ticketId]);
    const actors = [...new Set(events.map(({ actorId }) => actorId))];
    await test.tamper(
      `insert into member (org_id, id, email, name, role, active, password_hash)
       select $1::uuid, actor, actor::text, 'Somebody', 'technician', false, '' from unnest($2::uuid[]) as actor
       on conflict do nothing`,
      [orgId, actors],
    );
    const last = snapshots.at(-1);
    if (last === undefined) throw new Error('an empty log');
    const intake = migrated(events[0]?.payload.intake);
    await test.tamper(
      `insert into ticket (org_id, id, number, site_id, chain_id, intake, symptom, priority, state, snapshot,
         machine_version, sequence, opened_at, updated_at)
       values ($1, $2, $3, $4, $5, $6, 'dropOuts', 'normal', $7, $8, 1, $9, $10, $10)`,
      [
        orgId,
        ticketId,
        number,
        place.siteId,
        place.chainId,
        JSON.stringify(intake),
        frozenStateName(last),
        JSON.stringify(last),
        events.length,
        opening.at,
      ],
    );
    await test.tamper(
      `insert into ticket_event (org_id, ticket_id, sequence, type, payload, actor_id, at, machine_version,
         previous_hash, hash)
       select $1::uuid, $2::uuid, sequence, type, payload, "actorId", at, "machineVersion", "previousHash", hash
       from jsonb_to_recordset($3::jsonb) as event(sequence int, type text, payload jsonb, "actorId" uuid,
         at timestamptz, "machineVersion" int, "previousHash" text, hash text)`,
      [orgId, ticketId, JSON.stringify(events)],
    );
  }

  it('is clean for every log of version 1', async () => {
    for (const [at, log] of readAllFrozenLogs().entries()) {
      await putLog(log, 1000 + at);
      const path = `/tickets/${log.opening.ticketId}`;
      const check = bodyOf<LogCheck>(await test.home.support.get(`${path}/log/check`), 200);
      expect(check, log.name).toMatchObject({ isClean: true, events: log.events.length });
      const ticket = bodyOf<Ticket>(await test.home.support.get(path), 200);
      expect(asHeldByVersion1(ticket.triage), log.name).toStrictEqual(log.snapshots.at(-1)?.context);
    }
  }, 300_000);

  it('is not clean where an event of version 1 was written over', async () => {
    const [log] = readAllFrozenLogs();
    if (log === undefined) throw new Error('no log');
    await putLog({ ...log, events: log.events.map((each) => ({ ...each, type: 'note' })) }, 999);
    const check = bodyOf<LogCheck>(
      await test.home.support.get(`/tickets/${log.opening.ticketId}/log/check`),
      200,
    );
    expect(check).toMatchObject({ isClean: false });
  });
});
