import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AuditEntry } from '../../../shared/contract/audit-log.ts';
import type { Organisation } from '../../../shared/contract/organisation.ts';
import type { Page } from '../../../shared/contract/primitives.ts';
import { recoverMember } from '../../../src/features/people/index.ts';
import { forgetOld } from '../../../src/retention.ts';
import { everythingIn } from '../../support/everything.ts';
import { openTestApp, type TestApp, testPassword } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { bodyOf } from '../../support/tickets.ts';

type Told = Pick<AuditEntry, 'kind' | 'actorId' | 'memberId' | 'aboutId' | 'detail'>;

describe.each(databaseKinds())('the audit log, on the %s database', (kind) => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  afterAll(() => test.close());

  const pageAt = async (query: string): Promise<Page<AuditEntry>> =>
    bodyOf<Page<AuditEntry>>(await test.home.admin.get(`/organisation/audit-log${query}`), 200);
  /** What was entered since `work` began, the oldest first. */
  const entered = async (work: () => Promise<unknown>): Promise<Told[]> => {
    const before = new Set((await pageAt('?limit=200')).items.map(({ id }) => id));
    await work();
    const { items } = await pageAt('?limit=200');
    return items
      .filter(({ id }) => !before.has(id))
      .toReversed()
      .map(({ kind, actorId, memberId, aboutId, detail }) => ({ kind, actorId, memberId, aboutId, detail }));
  };
  const told = (kind: AuditEntry['kind'], rest: Partial<Told>): Told => ({
    kind,
    actorId: null,
    memberId: null,
    aboutId: null,
    detail: null,
    ...rest,
  });
  const signIn = (email: string, password: string) =>
    test.request().post('/auth/sign-in').send({ organisation: test.home.handle, email, password });

  it('tells who signed in and out, and whose sign-in was refused, once a minute', async () => {
    const { technician } = test.home;
    const entries = await entered(async () => {
      const tokens = bodyOf<{ refreshToken: string }>(await signIn(technician.email, testPassword), 200);
      const { refreshToken } = tokens;
      await test.request().post('/auth/sign-out').send({ refreshToken }).expect(204);
      for (const _ of [1, 2]) await signIn(technician.email, 'not the password').expect(401);
      await signIn('nobody@home-firm.example', testPassword).expect(401);
    });
    expect(entries).toEqual([
      told('signedIn', { actorId: technician.id, detail: 'password' }),
      told('signedOut', { actorId: technician.id }),
      told('signInRefused', { memberId: technician.id }),
      told('signInRefused', {}),
    ]);
  });

  it('tells that a token was in two hands, and who asked for what their role may not have', async () => {
    const { dispatcher } = test.home;
    const entries = await entered(async () => {
      const { refreshToken } = bodyOf<{ refreshToken: string }>(
        await signIn(dispatcher.email, testPassword),
        200,
      );
      const next = bodyOf<{ refreshToken: string }>(
        await test.request().post('/auth/refresh').send({ refreshToken }),
        200,
      );
      await test.request().post('/auth/refresh').send({ refreshToken: next.refreshToken }).expect(200);
      await test.request().post('/auth/refresh').send({ refreshToken }).expect(401);
      expect((await dispatcher.get('/export')).status).toBe(403);
      expect((await dispatcher.put('/organisation', { body: {}, ifMatch: '*' })).status).toBeGreaterThan(399);
    });
    expect(entries).toContainEqual(told('tokenUsedTwice', { memberId: dispatcher.id }));
    expect(entries).toContainEqual(told('accessRefused', { actorId: dispatcher.id, detail: 'GET /export' }));
  });

  it('tells what an admin did to a member, once however often it is sent, and no word of any person', async () => {
    const { admin } = test.home;
    let id = '';
    const entries = await entered(async () => {
      const body = { name: 'Wendel Ostermoor', email: 'wendel@home-firm.example', role: 'technician' };
      const add = { body: { ...body, password: 'a password for Tests' }, key: 'adds-wendel' };
      id = bodyOf<{ id: string }>(await admin.post('/members', add), 201).id;
      await admin.post('/members', add);
      const change = { name: body.name, role: 'dispatcher', active: false };
      bodyOf(await admin.put(`/members/${id}`, { body: change, ifMatch: '*' }), 200);
      bodyOf(await admin.post(`/members/${id}/password`, { body: { password: 'another one here' } }), 200);
      bodyOf(await admin.post(`/members/${id}/second-factors/end`), 200);
      await recoverMember(test.services, {
        organisation: test.home.handle,
        email: body.email,
        makeAdmin: false,
      });
    });
    const byAdmin = { actorId: admin.id, memberId: id };
    expect(entries).toEqual([
      told('memberAdded', { ...byAdmin, detail: 'technician' }),
      told('memberChanged', { ...byAdmin, detail: 'dispatcher inactive' }),
      told('memberPasswordSet', byAdmin),
      told('memberFactorsTaken', byAdmin),
      told('memberRecovered', { memberId: id }),
    ]);
    const rows = await test.services.database.inTenant({ orgId: test.home.orgId, memberId: null }, (tx) =>
      tx.auditEntry.findMany(),
    );
    expect(rows.length).toBeGreaterThan(5);
    expect(JSON.stringify(rows)).not.toMatch(/wendel|@|password for/i);
  });

  it('tells of grants, erased texts and exports', async () => {
    const { admin, support } = test.home;
    const entries = await entered(async () => {
      const ids = await everythingIn(test);
      bodyOf(await support.post(`/grants/${ids.grants}/revoke`), 200);
      await admin.get('/export').then(({ status }) => expect(status).toBe(200));
      const erased = [
        told('packetGranted', { actorId: support.id, aboutId: ids.packets ?? '' }),
        told('grantRevoked', { actorId: support.id, aboutId: ids.packets ?? '' }),
        told('everythingExported', { actorId: admin.id }),
      ];
      expect((await pageAt('?limit=3')).items.map(({ kind, aboutId }) => [kind, aboutId])).toEqual(
        erased.toReversed().map(({ kind, aboutId }) => [kind, aboutId]),
      );
    });
    expect(entries.map((entry) => entry.kind)).toEqual([
      'packetGranted',
      'grantRevoked',
      'everythingExported',
    ]);
  });

  it('is given page by page, newest first, each entry once; of one member where asked', async () => {
    const all = (await pageAt('?limit=200')).items;
    const paged: AuditEntry[] = [];
    let next: string | null = '';
    while (next !== null) {
      const page: Page<AuditEntry> = await pageAt(`?limit=3${next === '' ? '' : `&cursor=${next}`}`);
      paged.push(...page.items);
      next = page.next;
    }
    expect(paged).toEqual(all);
    expect(all.length).toBeGreaterThan(6);
    expect(all.map(({ at }) => at)).toEqual(
      all
        .map(({ at }) => at)
        .toSorted()
        .toReversed(),
    );
    const { id } = test.home.technician;
    const own = (await pageAt(`?limit=200&memberId=${id}`)).items;
    expect(own).toEqual(all.filter(({ actorId, memberId }) => actorId === id || memberId === id));
    expect(own.length).toBeGreaterThan(1);
  });

  it('forgets entries after as many days as the organisation says', async () => {
    const { admin } = test.home;
    const count = async () => (await pageAt('?limit=200')).items.length;
    const { etag, body } = await admin.get('/organisation').then((reply) => ({
      etag: String(reply.headers.etag),
      body: reply.body as Organisation,
    }));
    const settings = (auditLogDays: number) => ({
      name: body.name,
      settings: { ...body.settings, auditLogDays },
    });
    expect((await admin.put('/organisation', { body: settings(89), ifMatch: etag })).status).toBe(400);
    bodyOf(await admin.put('/organisation', { body: settings(100), ifMatch: etag }), 200);
    const before = await count();
    for (const days of [99, 101, 400])
      await test.tamper(
        `insert into audit_entry (org_id, id, at, kind, actor_id)
         values ($1, gen_random_uuid(), now() - $2 * interval '1 day', 'signedIn', $3)`,
        [test.home.orgId, days, admin.id],
      );
    await forgetOld(test.services);
    expect(await count()).toBe(before + 1);
  });
});
