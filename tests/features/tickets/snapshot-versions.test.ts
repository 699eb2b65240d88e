import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { QueueEntry, Ticket, UnreadKind } from '../../../shared/contract/ticket.ts';
import { openDatabase } from '../../../src/database/index.ts';
import { keepSnapshotsCurrent, rebuildTickets } from '../../../src/features/ticket-record/index.ts';
import { createLogger } from '../../../src/http/logging.ts';
import { MACHINE_VERSION } from '../../../state-machines/index.ts';
import { waiveAll } from '../../state-machines/triage/triage-events.ts';
import { openTestApp, type TestApp, type TestMember, type TestReply } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { accepted, bodyOf, bringToSubstitute, openTestTicket, send } from '../../support/tickets.ts';

const older = MACHINE_VERSION - 1;
const note = { type: 'note', text: 'Seen twice today.' };

describe.each(databaseKinds())('a ticket on the %s database', (kind) => {
  let test: TestApp;
  let ticketId: string;
  let before: Ticket;
  beforeAll(async () => {
    test = await openTestApp(kind);
    // While there is one version, an older one is none that the column takes.
    await test.tamper('alter table ticket drop constraint ticket_machine_version_check', []);
    ({ ticketId } = await openTestTicket(test));
    await bringToSubstitute(test.home.technician, ticketId);
    before = await ticketNow();
  });
  afterAll(() => test.close());

  const ticketNow = async (): Promise<Ticket> =>
    bodyOf<Ticket>(await test.home.technician.get(`/tickets/${ticketId}`), 200);
  /** The row as it is stored. */
  const row = (database = test.services.database) =>
    database.inTenant({ orgId: test.home.orgId, memberId: null }, (tx) =>
      tx.ticket.findFirstOrThrow({ where: { id: ticketId } }),
    );
  const setColumn = (column: string) => test.tamper(`update ticket set ${column} where id = $1`, [ticketId]);
  const contextOf = (stored: { snapshot: unknown }) =>
    (stored.snapshot as { context: Record<string, unknown> }).context;

  describe.each([
    ['its row', 'machine_version = 99', `machine_version = ${MACHINE_VERSION}`],
    [
      'its snapshot',
      `snapshot = jsonb_set(snapshot, '{machineVersion}', '99')`,
      `snapshot = jsonb_set(snapshot, '{machineVersion}', '${MACHINE_VERSION}')`,
    ],
  ])('of which a newer server wrote %s', (_what, newer, ours) => {
    beforeAll(() => setColumn(newer));
    afterAll(() => setColumn(ours));

    const refusesAsNewer = ({ status, body, headers }: TestReply) => {
      expect([status, body.type]).toEqual([503, '/problems/newer-data']);
      expect(Number(headers['retry-after'])).toBeGreaterThan(0);
    };

    it.each<[string, (who: TestApp['home']) => Promise<TestReply>]>([
      ['is not read', ({ support }) => support.get(`/tickets/${ticketId}`)],
      ['has no changes that apply', ({ support }) => support.get(`/tickets/${ticketId}/applicable-changes`)],
      ['has no timeline', ({ support }) => support.get(`/tickets/${ticketId}/timeline`)],
      ['is not checked', ({ support }) => support.get(`/tickets/${ticketId}/log/check`)],
      ['has no plan', ({ support }) => support.get(`/tickets/${ticketId}/plan`)],
      ['has no findings of logs', ({ support }) => support.get(`/tickets/${ticketId}/log-findings`)],
      ['takes no command', ({ technician }) => send(technician, ticketId, note)],
      [
        'makes no packet',
        ({ technician }) => send(technician, ticketId, { type: 'escalate', question: 'Why?' }),
      ],
      [
        'takes no evidence',
        ({ technician }) =>
          technician.post(`/tickets/${ticketId}/readings`, {
            body: { reading: { kind: 'note', text: 'Hums.' } },
          }),
      ],
      [
        'goes to nobody',
        ({ dispatcher }) =>
          dispatcher.post(`/tickets/${ticketId}/assignment`, { body: { assigneeId: null } }),
      ],
      ['is not taken over', ({ admin }) => admin.post(`/tickets/${ticketId}/take-over`)],
    ])('%s', async (_line, ask) => refusesAsNewer(await ask(test.home)));

    it('is in the list, and leaves other tickets alone', async () => {
      const { body } = await test.home.dispatcher.get('/tickets');
      expect(body.items.map((one: Ticket) => one.id)).toContain(ticketId);
      const other = await openTestTicket(test);
      await accepted(test.home.technician, other.ticketId, note);
    });

    it('keeps no reply: the same request is taken once its server is there', async () => {
      const write = (member: TestMember) =>
        member.post(`/tickets/${ticketId}/commands`, {
          body: note,
          key: `retry of ${newer}`.replaceAll(' ', '-'),
        });
      refusesAsNewer(await write(test.home.technician));
      await setColumn(ours);
      const taken = await write(test.home.technician);
      expect([taken.status, taken.headers['idempotency-replayed']]).toEqual([200, undefined]);
      await setColumn(newer);
    });
  });

  it('of which a newer server wrote the row keeps an export from being begun', async () => {
    await setColumn('machine_version = 99');
    const answer = await test.home.admin.get('/export');
    expect([answer.status, answer.body.type]).toEqual([503, '/problems/newer-data']);
    await setColumn(`machine_version = ${MACHINE_VERSION}`);
    expect((await test.home.admin.get('/export')).status).toBe(200);
  });

  it('with an event of a newer server has no log to show', async () => {
    const setEvent = (version: number) =>
      test.tamper('update ticket_event set machine_version = $1 where ticket_id = $2 and sequence = 2', [
        version,
        ticketId,
      ]);
    await setEvent(99);
    const answer = await test.home.admin.get(`/tickets/${ticketId}/log`);
    expect([answer.status, answer.body.type]).toEqual([503, '/problems/newer-data']);
    await setEvent(MACHINE_VERSION);
  });

  it.each([
    ['lacks a field', `snapshot = snapshot #- '{context,reopenings}'`],
    ['lacks a field far inside', `snapshot = snapshot #- '{context,watches,0,mode}'`],
    ['is in a state that there is not', `snapshot = jsonb_set(snapshot, '{value}', '"nowhere"')`],
    ['is of an older version', `machine_version = ${older}`],
    ['is nothing at all', `snapshot = 'null'`],
  ])(
    'whose snapshot %s is rebuilt when it is read, and stored by the next command',
    async (_what, damage) => {
      before = await ticketNow();
      const whole = await row();
      await setColumn(damage);
      const damaged = await row();
      expect(await ticketNow()).toEqual(before);
      expect(await row()).toEqual(damaged);
      const { body: check } = await test.home.support.get(`/tickets/${ticketId}/log/check`);
      expect(check).toMatchObject({ isClean: true, snapshot: { kind: 'notInUse' } });
      const assigned = await test.home.dispatcher.post(`/tickets/${ticketId}/take-over`);
      expect(assigned.status).toBe(403);
      expect(await row()).toEqual(damaged);
      await accepted(test.home.technician, ticketId, note);
      const stored = await row();
      expect(stored.machineVersion).toBe(MACHINE_VERSION);
      expect(contextOf(stored)).toEqual({
        ...contextOf(whole),
        notes: [...before.triage.notes, expect.objectContaining({ text: note.text })],
      });
    },
  );

  it('is rebuilt by a fact that the machine does not see, too', async () => {
    before = await ticketNow();
    await setColumn(`snapshot = snapshot #- '{context,reopenings}'`);
    const body = { assigneeId: test.home.secondTechnician.id };
    bodyOf(await test.home.dispatcher.post(`/tickets/${ticketId}/assignment`, { body }), 200);
    expect(contextOf(await row())).toEqual(before.triage);
    const back = { assigneeId: test.home.technician.id };
    bodyOf(await test.home.dispatcher.post(`/tickets/${ticketId}/assignment`, { body: back }), 200);
  });

  it('of an older version is stored by the job at start', async () => {
    const whole = await row();
    await setColumn(`machine_version = ${older}, state = 'baseline', snapshot = '{}'`);
    await keepSnapshotsCurrent(test.services.database, createLogger('silent')).stop();
    expect(await row()).toEqual(whole);
  });

  it.each<[UnreadKind, number, Record<'damage' | 'repair', string>]>([
    [
      'newer-data',
      503,
      {
        damage: 'update ticket set machine_version = 99 where id = $1',
        repair: `update ticket set machine_version = ${MACHINE_VERSION} where id = $1`,
      },
    ],
    [
      'log-does-not-replay',
      409,
      {
        damage: `with event as (update ticket_event set payload = jsonb_build_object('was', payload) where ticket_id = $1)
          update ticket set snapshot = 'null' where id = $1`,
        repair: `update ticket_event set payload = payload->'was' where ticket_id = $1`,
      },
    ],
  ])(
    'that cannot be read for %s is marked in the queue, which lists the others',
    async (because, status, sql) => {
      const { technician, support } = test.home;
      const escalate = { type: 'escalate', question: 'Why does it hum?', waivers: waiveAll };
      const [good, bad] = [await openTestTicket(test), await openTestTicket(test)];
      for (const { ticketId: id } of [good, bad]) await accepted(technician, id, escalate);
      await test.tamper(sql.damage, [bad.ticketId]);
      const { items } = bodyOf<{ items: QueueEntry[] }>(await support.get('/support-queue'), 200);
      const entryOf = (id: string) => items.find((entry) => entry.id === id);
      expect(entryOf(good.ticketId)).toMatchObject({ kind: 'waiting', question: escalate.question });
      expect(entryOf(bad.ticketId)).toMatchObject({ kind: 'unread', because });
      for (const asked of [
        await support.get(`/tickets/${bad.ticketId}`),
        await send(technician, bad.ticketId, note),
      ]) {
        expect([asked.status, asked.body.type]).toEqual([status, `/problems/${because}`]);
      }
      await test.tamper(sql.repair, [bad.ticketId]);
      await accepted(technician, bad.ticketId, note);
    },
  );

  it('whose log does not replay is reported and left as it is, whichever organisation has it', async () => {
    const theirs = await openTestTicket(test, test.other);
    await test.tamper(`update ticket_event set payload = payload - 'intake' where ticket_id = $1`, [
      theirs.ticketId,
    ]);
    await setColumn(`snapshot = jsonb_set(snapshot, '{context,round}', '7')`);
    const counted: Record<string, Record<string, number>> = {};
    for await (const { organisation, tickets } of rebuildTickets(test.services.database, 'all')) {
      const count = counted[organisation.handle] ?? {};
      for (const { kind: outcome } of tickets) count[outcome] = (count[outcome] ?? 0) + 1;
      counted[organisation.handle] = count;
    }
    const { items } = (await test.home.admin.get('/tickets?limit=200')).body;
    expect(counted).toEqual({
      'home-firm': { rebuilt: 1, kept: items.length - 1 },
      'other-firm': { failed: 1 },
    });
    expect((await ticketNow()).triage.round).toBe(1);
  });

  it('is rebuilt by npm run tickets:rebuild, which says what it could not', async () => {
    await setColumn(`snapshot = jsonb_set(snapshot, '{context,round}', '7')`);
    const { dataFolder, databaseUrl } = await test.databaseElsewhere();
    const env = {
      ...process.env,
      HALFSPLIT_DATA: dataFolder,
      ...(databaseUrl === undefined ? {} : { DATABASE_URL: databaseUrl }),
    };
    const run = promisify(execFile)(process.execPath, ['--import', 'tsx', 'src/cli/rebuild-tickets.ts'], {
      env,
    });
    const ended = await run.catch((error: { code: number; stdout: string; stderr: string }) => error);
    expect(ended).toMatchObject({ code: 1, stderr: expect.stringContaining('other-firm, ticket no. 1:') });
    expect(ended.stdout).toMatch(/1 rebuilt, 1 not/);
    const rebuilt = await openDatabase({ dataFolder, databaseUrl });
    expect(contextOf(await row(rebuilt))).toMatchObject({ round: 1 });
    await rebuilt.close();
  });
});
