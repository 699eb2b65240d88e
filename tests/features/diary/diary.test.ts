import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DiaryWithCode } from '../../../shared/contract/diary.ts';
import { erasureOf } from '../../../shared/contract/erased-text.ts';
import type { LogCheck } from '../../../shared/contract/log-check.ts';
import type { Ticket, TicketEvent } from '../../../shared/contract/ticket.ts';
import { openTestApp, type TestApp, type TestReply } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { bodyOf, openTestTicket, send } from '../../support/tickets.ts';

const dayMs = 86_400_000;

describe.each(databaseKinds())("a client's diary on the %s database", (kind) => {
  let test: TestApp;
  let ticketId: string;
  beforeAll(async () => {
    test = await openTestApp(kind);
    ({ ticketId } = await openTestTicket(test));
  });
  afterAll(() => test.close());

  const open = async (days = 7): Promise<DiaryWithCode & { code: string }> => {
    const made = await test.home.dispatcher.post(`/tickets/${ticketId}/diaries`, { body: { days } });
    const { id } = bodyOf<{ id: string }>(made, 201);
    const { items } = bodyOf<{ items: DiaryWithCode[] }>(
      await test.home.technician.get(`/tickets/${ticketId}/diaries`),
      200,
    );
    const diary = items.find((one) => one.id === id);
    if (diary === undefined || diary.code === null) throw new Error('the diary has no code');
    return { ...diary, code: diary.code };
  };
  const get = (path: string, language = 'en'): Promise<TestReply> =>
    test.request().get(path).set('accept-language', language).redirects(0);
  const post = (code: string, form: Record<string, string>): Promise<TestReply> =>
    test.request().post(`/d/${code}`).type('form').send(form).redirects(0);
  const tap = async (code: string, more: Record<string, string> = { what: 'now' }): Promise<string> => {
    const report = randomUUID();
    const answer = await post(code, { report, ...more });
    expect([answer.status, answer.headers.location]).toEqual([303, `/d/${code}?sent=${report}`]);
    return report;
  };
  const ticketNow = async (): Promise<Ticket> =>
    bodyOf<Ticket>(await test.home.technician.get(`/tickets/${ticketId}`), 200);
  const log = async (): Promise<TicketEvent[]> =>
    bodyOf<{ items: TicketEvent[] }>(await test.home.admin.get(`/tickets/${ticketId}/log`), 200).items;

  it('is opened with a code that no table and no kept reply holds', async () => {
    const { code } = await open();
    expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{16}$/);
    const holding = await test.services.database.inTenant(
      { orgId: test.home.orgId, memberId: null },
      async (tx) => {
        const tables = await tx.$queryRaw<{ name: string }[]>`
          select relname::text as name from pg_class where relnamespace = 'public'::regnamespace
            and relkind = 'r' and has_table_privilege(oid, 'select')`;
        const found = [];
        for (const { name } of tables) {
          const sql = `select 1 from "${name}" t where position($1 in to_jsonb(t)::text) > 0 limit 1`;
          if ((await tx.$queryRawUnsafe<unknown[]>(sql, code)).length > 0) found.push(name);
        }
        return found;
      },
    );
    expect(holding).toEqual([]);
  });

  it('writes nothing when its page is opened, however it is', async () => {
    const { code } = await open();
    const before = (await ticketNow()).sequence;
    for (const path of [`/d/${code}`, `/d/${code.toLowerCase()}`, `/d/${code}?sent=${randomUUID()}`]) {
      const answer = await get(path);
      expect([answer.status, answer.headers['content-type']]).toEqual([200, 'text/html; charset=utf-8']);
      expect(answer.headers['cache-control']).toBe('no-store');
    }
    expect((await test.request().head(`/d/${code}`)).status).toBe(200);
    expect((await ticketNow()).sequence).toBe(before);
  });

  it('runs nothing on its page, and says nothing of whom and what it is about', async () => {
    const { code } = await open();
    const { headers, text: whole } = await get(`/d/${code}`);
    const text = whole.slice(whole.indexOf('</style>'));
    const policy = String(headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).not.toContain('unsafe');
    expect(headers['referrer-policy']).toBe('no-referrer');
    expect(text).not.toMatch(/<script|onclick|style=/);
    const { client, number, chainName } = await ticketNow();
    const { body } = await test.home.technician.get(`/sites/${(await ticketNow()).siteId}`);
    for (const secret of [client, chainName, body.address, test.home.orgId, ticketId, test.home.handle])
      expect(text).not.toContain(secret);
    expect(text).not.toContain(`#${number}`);
  });

  it('speaks the language that is asked for', async () => {
    const { code } = await open();
    const [english, german] = [await get(`/d/${code}`), await get(`/d/${code}`, 'de-AT,de;q=0.9')];
    expect([english.headers['content-language'], german.headers['content-language']]).toEqual(['en', 'de']);
    expect(english.text).toContain('<html lang="en">');
    expect(german.text).toContain('<html lang="de">');
  });

  it('takes one tap as an occurrence that is reported, and a double tap as one', async () => {
    const { id, code } = await open();
    const at = new Date(Date.now() + 1000);
    test.setNow(at);
    const report = await tap(code);
    expect((await post(code, { what: 'now', report })).status).toBe(303);
    test.setNow(null);
    const { triage } = await ticketNow();
    expect(triage.reports.filter(({ diaryId }) => diaryId === id)).toEqual([
      {
        id: report,
        diaryId: id,
        occurredAt: at.toISOString(),
        receivedAt: at.toISOString(),
        lasted: null,
        cameBack: null,
        withdrawn: null,
      },
    ]);
    expect(triage.watches).toEqual([]);
  });

  it('takes an earlier time by the clocks at the site, and none that lies ahead', async () => {
    test.setNow(new Date('2027-01-10T12:00:00Z'));
    const later = await open();
    await tap(later.code, { what: 'earlier', at: '2027-01-10T09:30' });
    const { triage } = await ticketNow();
    expect(triage.reports.at(-1)).toMatchObject({ occurredAt: '2027-01-10T09:30:00.000Z' });
    for (const at of ['2027-01-11T09:30', 'yesterday', '2020-01-01T00:00']) {
      const answer = await post(later.code, { what: 'earlier', at, report: randomUUID() });
      expect([at, answer.status]).toEqual([at, 200]);
      expect(answer.text).toContain('role="alert"');
    }
    expect((await ticketNow()).triage.reports).toHaveLength(triage.reports.length);
    test.setNow(null);
  });

  it('asks two questions afterwards, which need not be answered', async () => {
    const { code } = await open();
    const report = await tap(code);
    expect((await get(`/d/${code}?sent=${report}`)).text).toContain('name="lasted"');
    const answers = { what: 'answers', report, lasted: 'someSeconds', cameBack: 'byItself' };
    expect((await post(code, answers)).status).toBe(303);
    expect((await ticketNow()).triage.reports.find(({ id }) => id === report)).toMatchObject({
      lasted: 'someSeconds',
      cameBack: 'byItself',
    });
    const before = (await ticketNow()).sequence;
    const other = await open();
    expect((await post(other.code, answers)).status).toBe(303);
    expect((await ticketNow()).sequence).toBe(before + 1);
  });

  it('answers a wrong, a closed and an expired code alike', async () => {
    const [closed, expired] = [await open(), await open(1)];
    bodyOf(await test.home.technician.post(`/diaries/${closed.id}/close`), 200);
    test.setNow(new Date(Date.now() + 2 * dayMs));
    const answers = [];
    for (const code of ['0123456789ABCDEF', 'no-code', closed.code, expired.code]) {
      const [page, sent] = [await get(`/d/${code}`), await post(code, { what: 'now', report: randomUUID() })];
      // What counts up or down with every request, whatever it asks for.
      const counting = /^(date|x-request-id|x-ratelimit-.*)$/;
      const headers = Object.entries(page.headers).filter(([name]) => !counting.test(name));
      answers.push(JSON.stringify([page.status, sent.status, page.text, sent.text, headers]));
    }
    test.setNow(null);
    expect(new Set(answers).size).toBe(1);
    expect(JSON.parse(answers[0] ?? '')[0]).toBe(404);
    const { items } = bodyOf<{ items: DiaryWithCode[] }>(
      await test.home.technician.get(`/tickets/${ticketId}/diaries`),
      200,
    );
    expect(items.find(({ id }) => id === closed.id)).toMatchObject({
      code: null,
      closedAt: expect.any(String),
    });
  });

  it('is found by a code as it is told over the phone', async () => {
    const { code } = await open();
    const told = `${code.match(/.{4}/g)?.join('-').toLowerCase()} `;
    const answer = await get(`/d?code=${encodeURIComponent(told)}`);
    expect([answer.status, answer.headers.location]).toEqual([303, `/d/${code}`]);
    expect((await get('/d')).status).toBe(200);
    expect((await get('/d?code=0000')).status).toBe(404);
  });

  it('deletes what was sent by it and nothing else, and the log still verifies', async () => {
    const [mine, theirs] = [await open(), await open()];
    const report = await tap(mine.code);
    await post(mine.code, { what: 'answers', report, lasted: 'longer', cameBack: 'notByItself' });
    const other = await tap(theirs.code);
    const sent = (await ticketNow()).triage.reports.find(({ id }) => id === report)?.occurredAt ?? '';
    expect((await post(mine.code, { what: 'delete' })).headers.location).toBe(`/d/${mine.code}?said=removed`);
    const { triage } = await ticketNow();
    const gone = triage.reports.find(({ id }) => id === report);
    for (const text of [gone?.occurredAt, gone?.lasted, gone?.cameBack])
      expect(erasureOf(text ?? '')?.by).toBe(mine.id);
    expect(erasureOf(triage.reports.find(({ id }) => id === other)?.occurredAt ?? '')).toBeNull();
    expect(JSON.stringify(await log())).not.toContain(`"occurredAt":"${sent}"`);
    expect((await log()).at(-1)).toMatchObject({
      type: 'reportsErased',
      payload: { diaryId: mine.id, reports: 1 },
    });
    const check = bodyOf<LogCheck>(await test.home.admin.get(`/tickets/${ticketId}/log/check`), 200);
    expect(check).toMatchObject({ isClean: true, texts: { erased: 3, wrong: [] } });
    const before = (await ticketNow()).sequence;
    await post(mine.code, { what: 'delete' });
    expect((await ticketNow()).sequence).toBe(before);
  });

  it('does not count what the ticket says was none', async () => {
    const { code } = await open();
    const reportId = await tap(code);
    const withdraw = { type: 'withdrawReport', reportId, reason: 'Tapped by a child.' };
    const { triage } = bodyOf<Ticket>(await send(test.home.dispatcher, ticketId, withdraw), 200);
    expect(triage.reports.find(({ id }) => id === reportId)?.withdrawn?.reason).toBe('Tapped by a child.');
    const again = await send(test.home.dispatcher, ticketId, withdraw);
    expect(again.status).toBe(409);
  });

  it('takes no more than somebody can mean in an hour', async () => {
    const { code } = await open();
    for (let sent = 0; sent < 30; sent += 1) await tap(code);
    const answer = await post(code, { what: 'now', report: randomUUID() });
    expect(answer.status).toBe(200);
    expect(answer.text).toContain('role="alert"');
  });

  it('is told in the timeline, and to whom follows the changes', async () => {
    const { items } = (await test.home.dispatcher.get(`/tickets/${ticketId}/timeline`)).body as {
      items: { text: { code: string } }[];
    };
    const codes = new Set(items.map(({ text }) => text.code));
    for (const code of ['diaryOpened', 'diaryClosed', 'occurrenceReported', 'reportDeleted', 'reportsErased'])
      expect(codes).toContain(`log/${code}`);
  });
});

describe.each(databaseKinds())('the pages of diaries on the %s database', (kind) => {
  it('are not asked too often by one address', async () => {
    const test = await openTestApp(kind, { diaryPerMin: 3 });
    try {
      const statuses = [];
      for (let asked = 0; asked < 4; asked += 1)
        statuses.push((await test.request().get('/d/0123456789ABCDEF')).status);
      expect(statuses).toEqual([404, 404, 404, 429]);
      const { headers } = await test.request().get('/d/0123456789ABCDEF');
      expect(headers['content-type']).toBe('text/html; charset=utf-8');
    } finally {
      await test.close();
    }
  });
});
