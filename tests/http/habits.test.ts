import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createApp } from '../../src/app.ts';
import { createLogger } from '../../src/http/logging.ts';
import { postForm } from '../features/evidence/form-client.ts';
import { openTestApp, type TestApp } from '../support/test-app.ts';
import { databaseKinds } from '../support/test-database.ts';
import { openTestTicket } from '../support/tickets.ts';

const site = { client: 'Family Overwell', address: '1 Mill Lane' };

describe.each(databaseKinds())('habits of the API, on the %s database', (kind) => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp(kind);
  });
  afterAll(() => test.close());

  const countSites = async () => (await test.home.dispatcher.get('/sites?limit=200')).body.items.length;

  describe('a write', () => {
    it('needs an Idempotency-Key', async () => {
      const answer = await test
        .request()
        .post('/sites')
        .set('authorization', `Bearer ${test.home.dispatcher.accessToken}`)
        .send(site);
      expect(answer.status).toBe(400);
      expect(answer.body.type).toBe('/problems/idempotency-key-missing');
      expect(answer.headers['content-type']).toContain('application/problem+json');
    });

    it('happens once per key and answers the same again', async () => {
      const before = await countSites();
      const key = randomUUID();
      const first = await test.home.dispatcher.post('/sites', { body: site, key });
      const again = await test.home.dispatcher.post('/sites', { body: site, key });
      expect(first.status).toBe(201);
      expect(again.status).toBe(201);
      expect(again.body).toEqual(first.body);
      expect(again.headers.etag).toBe(first.headers.etag);
      expect(again.headers.location).toBe(first.headers.location);
      expect(again.headers['idempotency-replayed']).toBe('true');
      expect(await countSites()).toBe(before + 1);
    });

    it('happens once when the same key comes twenty times at once', async () => {
      const before = await countSites();
      const key = randomUUID();
      const answers = await Promise.all(
        Array.from({ length: 20 }, () => test.home.dispatcher.post('/sites', { body: site, key })),
      );
      expect(answers.map((answer) => answer.status)).toEqual(Array(20).fill(201));
      expect(new Set(answers.map((answer) => answer.body.id)).size).toBe(1);
      expect(await countSites()).toBe(before + 1);
    });

    it('refuses a key that was used for something else, and keeps keys of members apart', async () => {
      const key = randomUUID();
      expect((await test.home.dispatcher.post('/sites', { body: site, key })).status).toBe(201);
      const other = await test.home.dispatcher.post('/sites', { body: { ...site, client: 'Else' }, key });
      expect(other.status).toBe(422);
      expect(other.body.type).toBe('/problems/idempotency-key-reused');
      expect(
        (await test.home.technician.post('/sites', { body: { ...site, client: 'Else' }, key })).status,
      ).toBe(201);
      expect(
        (await test.other.dispatcher.post('/sites', { body: { ...site, client: 'Else' }, key })).status,
      ).toBe(201);
    });

    it('gives the same refusal again under the same key', async () => {
      const key = randomUUID();
      const missing = `/tickets/${randomUUID()}/take-over`;
      const first = await test.home.technician.post(missing, { key });
      const again = await test.home.technician.post(missing, { key });
      expect(first.status).toBe(404);
      expect(again.body).toEqual(first.body);
      expect(again.headers['idempotency-replayed']).toBe('true');
    });
  });

  describe('a read', () => {
    it('carries an ETag and is not sent twice', async () => {
      const { body } = await test.home.dispatcher.post('/sites', { body: site });
      const first = await test.home.support.get(`/sites/${body.id}`);
      const etag = first.headers.etag ?? '';
      expect(etag).toMatch(/^"[\w-]+"$/);
      const again = await test.home.support.get(`/sites/${body.id}`, { 'if-none-match': `"x", W/${etag}` });
      expect(again.status).toBe(304);
      expect(again.text).toBe('');
    });
  });

  describe('an update', () => {
    it('says which version it is of, and loses nothing when it is late', async () => {
      const { body } = await test.home.dispatcher.post('/sites', { body: site });
      const path = `/sites/${body.id}`;
      const etag = (await test.home.dispatcher.get(path)).headers.etag ?? '';
      expect((await test.home.dispatcher.put(path, { body: site })).status).toBe(428);
      const [one, two] = await Promise.all([
        test.home.dispatcher.put(path, { body: { ...site, client: 'One' }, ifMatch: etag }),
        test.home.technician.put(path, { body: { ...site, client: 'Two' }, ifMatch: etag }),
      ]);
      expect([one.status, two.status].toSorted()).toEqual([200, 412]);
      const winner = one.status === 200 ? one : two;
      const loser = one.status === 200 ? two : one;
      expect(loser.body.type).toBe('/problems/version-conflict');
      expect(loser.body.currentVersion).toBe(winner.headers.etag);
      expect((await test.home.dispatcher.get(path)).body.client).toBe(winner.body.client);
    });
  });

  describe('bad input', () => {
    it('is answered field by field', async () => {
      const answer = await test.home.dispatcher.post('/sites', {
        body: { client: ' ', hazards: [{ kind: 'dragons' }] },
      });
      expect(answer.status).toBe(400);
      expect(answer.body.type).toBe('/problems/invalid-input');
      const pointers = answer.body.errors.map((error: { pointer: string }) => error.pointer);
      expect(pointers).toEqual(expect.arrayContaining(['/client', '/address', '/hazards/0/kind']));
    });

    it.each([
      ['JSON that breaks off', '{"client": "x"', 'application/json', 400],
      ['another media type', 'client=x', 'application/x-www-form-urlencoded', 415],
      [
        'a poisoned prototype',
        '{"__proto__": {"admin": true}, "client": "x", "address": "y"}',
        'application/json',
        400,
      ],
      ['NUL in text', '{"client": "a\\u0000b", "address": "y"}', 'application/json', 400],
      ['half a surrogate pair', '{"client": "a\\ud800", "address": "y"}', 'application/json', 400],
    ])('%s is a 4xx problem', async (_name, body, type, status) => {
      const answer = await test.home.dispatcher.post('/sites', { body, headers: { 'content-type': type } });
      expect(answer.status).toBe(status);
      expect(answer.headers['content-type']).toContain('application/problem+json');
    });

    it('larger than the limit is a problem', async () => {
      const answer = await test.home.dispatcher.post('/sites', {
        body: { client: 'x'.repeat(5_000_000), address: 'y' },
      });
      expect(answer.status).toBe(413);
      expect(answer.body.type).toBe('/problems/too-large');
    });

    it.each([
      '/sites?cursor=rubbish',
      '/tickets?cursor=IiI',
      '/sites?limit=0',
      '/sites?q=%00',
      '/tickets?assigneeId=you',
    ])('%s is a problem', async (path) => {
      const answer = await test.home.dispatcher.get(path);
      expect(answer.status).toBe(400);
      expect(answer.body.errors.length).toBeGreaterThan(0);
    });

    it.each([
      ['/sites?limit=0', 'limit'],
      ['/sites?q=%00', 'q'],
      ['/tickets?cursor=IiI', 'cursor'],
      ['/chains/somewhere', 'id'],
    ])('%s is told by the name it has there', async (path, name) => {
      const { body } = await test.home.dispatcher.get(path);
      expect(body.errors.map((error: { pointer: string }) => error.pointer)).toEqual([name]);
    });

    it.each([
      ['no object', '[]', 'fieldNotObject', ''],
      ['nested too deep', `${'['.repeat(5000)}${']'.repeat(5000)}`, 'fieldTooDeep', '/0'.repeat(65)],
    ])('a body that is %s is told as that', async (_name, body, code, pointer) => {
      const answer = await test.home.dispatcher.post('/sites', {
        body,
        headers: { 'content-type': 'application/json' },
      });
      expect(answer.status).toBe(400);
      expect(answer.body.errors).toMatchObject([{ code, pointer }]);
    });

    it('in a search is taken literally', async () => {
      await test.home.dispatcher.post('/sites', {
        body: { client: '100%_\\ sure', address: 'Percent Street' },
      });
      for (const query of ['100%_\\', '%_']) {
        const answer = await test.home.dispatcher.get(`/sites?q=${encodeURIComponent(query)}`);
        expect(answer.body.items.map((item: { client: string }) => item.client)).toEqual(['100%_\\ sure']);
      }
    });
  });

  it('lets in no key that would change what an object is', async () => {
    for (const body of [
      '{"client":"Family Overwell","address":"1 Mill Lane","__proto__":{"notes":""}}',
      '{"client":"Family Overwell","address":"1 Mill Lane","contacts":[{"__proto__":0}]}',
    ]) {
      const headers = { 'content-type': 'application/json' };
      const answer = await test.home.dispatcher.post('/sites', { body, headers });
      expect(answer.status).toBe(400);
      expect(answer.body.type).toBe('/problems/malformed-request');
    }
  });

  it('lets in none of them in a field of a form either', async () => {
    const { technician } = test.home;
    const { ticketId } = await openTestTicket(test);
    const file = Buffer.from('21:03:11 sync lost\n');
    for (const about of [
      '{"kind":"log","__proto__":{"description":"from elsewhere"}}',
      '{"kind":"log","tie":{"__proto__":{"deviceId":"processor"}}}',
      '{"kind":"log","constructor":{"prototype":{}}}',
    ]) {
      const answer = await postForm(test, technician, ticketId, { about, file });
      expect(answer.status, about).toBe(400);
      expect(answer.body.type, about).toBe('/problems/malformed-request');
    }
    const about = '{"kind":"log","description":"of the __proto__","constructor":"any"}';
    expect((await postForm(test, technician, ticketId, { about, file })).status).toBe(201);
  });

  it('describes itself as OpenAPI 3.1 and explains its problems', async () => {
    const description = await test.request().get('/openapi.json');
    expect(description.status).toBe(200);
    expect(description.body.openapi).toMatch(/^3\.1/);
    expect(Object.keys(description.body.paths)).toEqual(
      expect.arrayContaining(['/tickets/{id}/commands', '/sites/{id}/chains', '/auth/sign-in']),
    );
    const { paths } = description.body;
    const headersOf = ({
      parameters = [],
    }: {
      parameters?: { in: string; name: string; required: boolean }[];
    }) => parameters.filter((one) => one.in === 'header' && one.required).map(({ name }) => name);
    expect(headersOf(paths['/sites'].post)).toEqual(['idempotency-key']);
    expect(headersOf(paths['/chains/{id}'].put)).toEqual(['idempotency-key', 'if-match']);
    expect(headersOf(paths['/chains/{id}'].get)).toEqual([]);
    expect(headersOf(paths['/auth/sign-in'].post)).toEqual([]);
    for (const operation of [paths['/chains/{id}'].get, paths['/auth/sign-in'].post]) {
      const asked = operation.parameters.map(({ name }: { name: string }) => name);
      expect(asked).toContain('accept-language');
      for (const status of ['200', 'default'])
        expect(operation.responses[status].headers['content-language'].schema.enum).toEqual(['en', 'de']);
    }
    const refusal = paths['/chains/{id}'].put.responses.default.content['application/problem+json'].schema;
    expect(refusal.properties).toMatchObject({ type: { type: 'string' }, status: { type: 'integer' } });
    const explained = await test.request().get('/problems/change-open');
    expect(explained.body).toMatchObject({ kind: 'change-open', status: 409 });
    expect((await test.request().get('/problems/nothing-like-it')).status).toBe(404);
    expect((await test.request().get('/reference')).status).toBe(200);
  });

  it('answers unknown addresses with a problem, signed in or not', async () => {
    for (const answer of [await test.request().get('/nowhere'), await test.home.admin.get('/nowhere')]) {
      expect(answer.status).toBe(404);
      expect(answer.body.type).toBe('/problems/not-found');
    }
  });

  it('tells a wrong method from a wrong address', async () => {
    const patch = await test.request().patch(`/sites/${randomUUID()}`);
    expect(patch.status).toBe(405);
    expect(patch.body.type).toBe('/problems/method-not-allowed');
    expect(patch.headers.allow).toBe('GET, HEAD, PUT');
    expect((await test.request().delete('/readyz')).headers.allow).toBe('GET, HEAD');
    expect((await test.request().patch('/sites/one/two/three')).status).toBe(404);
  });

  it('is alive and ready', async () => {
    expect((await test.request().get('/healthz')).body).toEqual({ status: 'ok' });
    expect((await test.request().get('/readyz')).body).toEqual({ status: 'ok' });
  });

  it('is not ready where the disk has less room than it was told to keep', async () => {
    const config = { ...test.services.config, leastFreeBytes: Number.MAX_SAFE_INTEGER };
    const app = await createApp({ ...test.services, config }, createLogger('silent'));
    const ready = await app.inject('/readyz');
    await app.close();
    expect([ready.statusCode, ready.json()]).toEqual([503, { status: 'diskFull' }]);
  });
});
