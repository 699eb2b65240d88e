import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { memberRoles } from '../../shared/contract/primitives.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import { everythingIn } from '../support/everything.ts';
import {
  bodyWith,
  guardedRoutes,
  type Ids,
  openRoutes,
  pathWith,
  type RouteRow,
  streamRoutes,
} from '../support/routes.ts';
import { openTestApp, type TestApp, type TestMember, type TestReply } from '../support/test-app.ts';
import { databaseKinds } from '../support/test-database.ts';
import { openTestTicket } from '../support/tickets.ts';

const rows = guardedRoutes.map((row): [string, RouteRow] => [`${row.method.toUpperCase()} ${row.path}`, row]);

describe.each(databaseKinds())('every route, on the %s database', (kind) => {
  let test: TestApp;
  let ids: Ids;
  beforeAll(async () => {
    test = await openTestApp(kind);
    ids = await everythingIn(test);
  });
  afterAll(() => test.close());

  const call = (member: TestMember, row: RouteRow, theirs: Ids): Promise<TestReply> => {
    const path = pathWith(row, theirs);
    if (row.method === 'get') return member.get(path);
    const body = bodyWith(row, theirs);
    return member[row.method](path, { ifMatch: '*', ...(body === undefined ? {} : { body }) });
  };

  it('is in the table', async () => {
    const { body } = await test.request().get('/openapi.json');
    const described = Object.entries(body.paths as Record<string, object>).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`),
    );
    const tabled = [...rows.map(([line]) => line), ...openRoutes, ...streamRoutes];
    expect(described.filter((line) => !line.includes('/uploads')).toSorted()).toEqual(tabled.toSorted());
  });

  it.each(rows)('%s needs a sign-in', async (_line, row) => {
    const answer = await test.request()[row.method](pathWith(row, ids)).set('idempotency-key', randomUUID());
    expect(answer.status).toBe(401);
    expect(answer.headers.etag).toBeUndefined();
  });

  it.each(rows)('%s is for those roles only', async (_line, row) => {
    for (const role of memberRoles) {
      const answer = await call(test.home[role], row, inventedIds());
      expect([role, answer.status === 403]).toEqual([role, !row.roles.includes(role)]);
      if (answer.status === 403) expect(answer.body.type).toBe('/problems/role-not-allowed');
    }
  });

  it.each(rows.filter(([, row]) => row.path.includes('{') || JSON.stringify(row.body ?? {}).includes('"{')))(
    '%s tells nobody of another organisation that an id exists',
    async (_line, row) => {
      for (const role of memberRoles) {
        const real = await call(test.other[role], row, ids);
        const invented = inventedIds();
        const none = await call(test.other[role], row, invented);
        expect([role, real.status]).toEqual([role, none.status]);
        if (row.roles.includes(role)) expect(real.status).toBeGreaterThanOrEqual(400);
        expect(comparable(real, ids)).toEqual(comparable(none, invented));
        expect(real.headers.etag).toBe(none.headers.etag);
      }
    },
  );

  it('leaves the first organisation as it was', async () => {
    const { body } = await test.home.admin.get(`/tickets/${ids.tickets}`);
    expect((body as Ticket).triage.notes).toEqual([]);
    expect((await test.home.admin.get(`/sites/${ids.sites}`)).body.client).toBe('Family Overwell');
  });

  it('shows lists and searches of one organisation only', async () => {
    const seen = await Promise.all(
      [
        '/sites?q=overwell',
        '/sites?q=1632960143',
        '/tickets',
        '/tickets?q=1',
        '/firmware-levels',
        '/support-queue',
        '/past-cases',
      ].map((path) => test.other.admin.get(path)),
    );
    expect(seen.map((answer) => answer.body.items)).toEqual([[], [], [], [], [], [], []]);
    const emails = (await test.other.admin.get('/members')).text;
    expect(emails).not.toContain('home-firm');
  });

  it('counts tickets of one organisation only, and lets both use the same names and keys', async () => {
    const key = randomUUID();
    const body = { client: 'Same', address: 'Same' };
    expect((await test.home.dispatcher.post('/sites', { body, key })).status).toBe(201);
    const theirs = await test.other.dispatcher.post('/sites', { body, key });
    expect(theirs.status).toBe(201);
    expect(theirs.headers['idempotency-replayed']).toBeUndefined();
    const level = { model: 'Quellor R-9', minimum: '9' };
    expect((await test.other.admin.post('/firmware-levels', { body: level })).status).toBe(201);
    const { ticketId } = await openTestTicket(test, test.other);
    expect((await test.other.admin.get(`/tickets/${ticketId}`)).body.number).toBe(1);
  });
});

const inventedIds = (): Ids => ({
  members: randomUUID(),
  'firmware-levels': randomUUID(),
  sites: randomUUID(),
  chains: randomUUID(),
  tickets: randomUUID(),
  evidence: randomUUID(),
  packets: randomUUID(),
  grants: randomUUID(),
  diaries: randomUUID(),
});

/** A reply with everything taken out that differs between two requests by right. */
function comparable(reply: TestReply, ids: Ids): string {
  const named = Object.entries(ids).reduce(
    (text, [kind, id]) => text.replaceAll(id, `<${kind}>`),
    reply.text ?? '',
  );
  return named.replaceAll(/urn:request:[0-9a-f-]{36}/g, '<request>');
}
