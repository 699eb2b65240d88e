import { createHash, randomBytes, randomUUID } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { request as httpRequest } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestApp, type TestApp, type TestMember, type TestReply } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { openTestTicket, type TestTicket } from '../../support/tickets.ts';
import { metadataHeader, signed, tus } from './tus-client.ts';

const sha256Of = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');
describe.each(databaseKinds())('uploads that resume, on the %s database', (kind) => {
  let test: TestApp;
  let ticket: TestTicket;
  beforeAll(async () => {
    test = await openTestApp(kind, { maxUploadBytes: 3 * 1024 * 1024 });
    ticket = await openTestTicket(test);
    await test.app.listen({ port: 0, host: '127.0.0.1' });
  });
  afterAll(() => test.close());

  type Begin = {
    about?: object | string;
    ticketId?: string;
    size?: number;
    as?: TestMember;
    filename?: string;
  };
  async function begin({
    about = { kind: 'log' },
    size = 0,
    as = test.home.technician,
    ...more
  }: Begin): Promise<TestReply> {
    const metadata = {
      ticketId: more.ticketId ?? ticket.ticketId,
      about: typeof about === 'string' ? about : JSON.stringify(about),
      filename: more.filename ?? 'long.log',
    };
    return test
      .request()
      .post('/uploads')
      .set({
        ...signed(as),
        'upload-length': String(size),
        'upload-metadata': metadataHeader(metadata),
      });
  }
  const begun = async (options: Begin): Promise<string> => {
    const reply = await begin(options);
    if (reply.status !== 201) throw new Error(`expected 201, got ${reply.status}: ${reply.text}`);
    return reply.headers.location ?? '';
  };
  const send = (path: string, offset: number, bytes: Buffer, as = test.home.technician) =>
    test
      .request()
      .patch(path)
      .set({
        ...signed(as),
        'upload-offset': String(offset),
        'content-type': 'application/offset+octet-stream',
      })
      .send(bytes);
  const head = (path: string, as = test.home.technician) => test.request().head(path).set(signed(as));

  it('arrives in parts, and the last reply names the evidence', async () => {
    const bytes = Buffer.from('12:00:01 sync lost\n'.repeat(5000));
    const path = await begun({ size: bytes.length, about: { kind: 'log', tie: { deviceId: 'processor' } } });
    expect(path).toMatch(/^\/uploads\/[0-9a-f-]{36}$/);
    const first = await send(path, 0, bytes.subarray(0, 40_000));
    expect([first.status, first.headers['upload-offset']]).toEqual([204, '40000']);
    expect(first.headers['evidence-id']).toBeUndefined();
    expect((await head(path)).headers).toMatchObject({
      'upload-offset': '40000',
      'upload-length': String(bytes.length),
    });
    const last = await send(path, 40_000, bytes.subarray(40_000));
    expect(last.status).toBe(204);
    const { body } = await test.home.support.get(`/evidence/${last.headers['evidence-id']}`);
    expect(body).toMatchObject({
      ticketId: ticket.ticketId,
      sha256: sha256Of(bytes),
      sizeBytes: bytes.length,
      fileName: 'long.log',
      tie: { deviceId: 'processor' },
      by: test.home.technician.id,
    });
    const { triage } = (await test.home.technician.get(`/tickets/${ticket.ticketId}`)).body;
    expect(triage.evidence.at(-1).id).toBe(body.id);
  });

  it('goes on after the connection broke in the middle of a part', async () => {
    const bytes = randomBytes(300_000).toString('hex');
    const whole = Buffer.from(bytes);
    const path = await begun({ size: whole.length });
    await breakOff(path, whole.subarray(0, 200_000), whole.length);
    const { headers } = await untilReleased(path);
    const offset = Number(headers['upload-offset']);
    expect(offset).toBeGreaterThan(0);
    expect(offset).toBeLessThan(whole.length);
    const last = await send(path, offset, whole.subarray(offset));
    const { body } = await test.home.support.get(`/evidence/${last.headers['evidence-id']}`);
    expect(body.sha256).toBe(sha256Of(whole));
  });

  /** Promises more than it sends, then drops the connection. */
  async function breakOff(path: string, bytes: Buffer, length: number): Promise<void> {
    const { port } = test.app.server.address() as AddressInfo;
    const request = httpRequest({
      port,
      path,
      method: 'PATCH',
      headers: {
        ...signed(test.home.technician),
        'upload-offset': '0',
        'content-type': 'application/offset+octet-stream',
        'content-length': length,
      },
    });
    request.on('error', () => undefined);
    await new Promise<void>((done) => request.write(bytes, () => done()));
    await new Promise((wait) => setTimeout(wait, 300));
    const closed = new Promise((done) => request.on('close', done));
    request.destroy();
    await closed;
  }

  /** The server notices a lost connection a moment later. */
  async function untilReleased(path: string): Promise<TestReply> {
    for (let tries = 0; ; tries += 1) {
      const reply = await head(path);
      if (reply.status === 200 || tries === 50) return reply;
      await new Promise((wait) => setTimeout(wait, 100));
    }
  }

  it('is answered again when the phone missed the last reply', async () => {
    const bytes = Buffer.from('a log line\n');
    const path = await begun({ size: bytes.length });
    const { headers } = await send(path, 0, bytes);
    const again = await head(path);
    expect(again.status).toBe(200);
    expect(again.headers['upload-offset']).toBe(String(bytes.length));
    expect(again.headers['evidence-id']).toBe(headers['evidence-id']);
    expect((await send(path, 0, bytes)).status).toBe(409);
    const { items } = (await test.home.support.get(`/tickets/${ticket.ticketId}/evidence?limit=200`)).body;
    expect(items.filter(({ sha256 }: { sha256: string }) => sha256 === sha256Of(bytes))).toHaveLength(1);
  });

  it('is finished by asking for it, when the server stopped between the last byte and the evidence', async () => {
    const bytes = Buffer.from('the last line before the power went\n');
    const path = await begun({ size: bytes.length });
    const { database } = test.services;
    const inTenant = database.inTenant.bind(database);
    Object.assign(database, { inTenant: () => Promise.reject(new Error('the power went')) });
    const broken = await send(path, 0, bytes);
    Object.assign(database, { inTenant });
    expect(broken.status).toBe(500);
    expect(broken.text).not.toContain('the power went');
    const [one, other] = await Promise.all([head(path), head(path)]);
    expect(one.headers['evidence-id']).toBeDefined();
    expect(other.headers['evidence-id']).toBe(one.headers['evidence-id']);
    const { items } = (await test.home.support.get(`/tickets/${ticket.ticketId}/evidence?limit=200`)).body;
    expect(items.filter(({ sha256 }: { sha256: string }) => sha256 === sha256Of(bytes))).toHaveLength(1);
  });

  it('is cleaned when it is a photo', async () => {
    const original = await sharp({ create: { width: 60, height: 40, channels: 3, background: 'red' } })
      .withExif({ IFD0: { Copyright: 'left in the camera' } })
      .jpeg()
      .toBuffer();
    const path = await begun({ size: original.length, about: { kind: 'photo' }, filename: 'IMG_1.JPG' });
    const { headers } = await send(path, 0, original);
    const { body } = await test.home.support.get(`/evidence/${headers['evidence-id']}`);
    expect(body).toMatchObject({ originalSha256: sha256Of(original), hasThumbnail: true });
    expect(body.sha256).not.toBe(sha256Of(original));
  });

  it('is refused at its end when it is not what it was said to be, and stays until its sender gives it up', async () => {
    const bytes = Buffer.from('no photo at all');
    const path = await begun({ size: bytes.length, about: { kind: 'photo' } });
    const reply = await send(path, 0, bytes);
    expect(reply.status).toBe(415);
    expect(reply.headers['content-type']).toContain('application/problem+json');
    expect(JSON.parse(reply.text).type).toBe('/problems/type-not-allowed');
    const id = path.split('/').at(-1) ?? '';
    const kept = join(test.services.evidenceStore.stagingFolder, 'uploads', id);
    expect(await readFile(kept)).toEqual(bytes);
    expect((await head(path)).status).toBe(415);
    expect((await test.request().delete(path).set(signed(test.home.technician))).status).toBe(204);
    expect((await head(path)).status).toBe(404);
    await expect(readFile(kept)).rejects.toThrow('ENOENT');
  });

  it('is refused at its beginning and at its end on a closed ticket, and is evidence once that is open again', async () => {
    const { ticketId } = await openTestTicket(test);
    const bytes = Buffer.from('the line that was sent too late\n');
    const path = await begun({ ticketId, size: bytes.length });
    const { snapshot } = await test.services.database.inTenant(
      { orgId: test.home.orgId, memberId: null },
      (tx) => tx.ticket.findFirstOrThrow({ where: { id: ticketId }, select: { snapshot: true } }),
    );
    const closed = { closedAt: new Date().toISOString() };
    await test.tamper(
      `update ticket set snapshot = snapshot || '{"value":"closed"}' ||
        jsonb_build_object('context', snapshot->'context' || $2::jsonb) where id = $1`,
      [ticketId, JSON.stringify(closed)],
    );
    expect((await begin({ ticketId })).status).toBe(409);
    expect((await send(path, 0, bytes)).status).toBe(409);
    expect((await head(path)).status).toBe(409);
    // The client may still sign the report.
    const about = { kind: 'document', description: 'Edda', tie: { shows: 'signature' } };
    expect((await begin({ ticketId, about, size: 64 })).status).toBe(201);
    await test.tamper('update ticket set snapshot = $2 where id = $1', [ticketId, JSON.stringify(snapshot)]);
    const { headers } = await head(path);
    const { body } = await test.home.support.get(`/evidence/${headers['evidence-id']}`);
    expect(body).toMatchObject({ ticketId, sha256: sha256Of(bytes) });
  });

  it('is refused at its beginning where it could not end well', async () => {
    const typeOf = async (options: Begin) => JSON.parse((await begin(options)).text).type;
    expect(await typeOf({ about: { kind: 'virus' } })).toBe('/problems/invalid-input');
    expect(await typeOf({ about: 'no JSON' })).toBe('/problems/invalid-input');
    expect(await typeOf({ about: '{"kind":"log","__proto__":{}}' })).toBe('/problems/malformed-request');
    expect(await typeOf({ ticketId: 'no id' })).toBe('/problems/invalid-input');
    expect(await typeOf({ ticketId: randomUUID() })).toBe('/problems/not-found');
    expect(await typeOf({ as: test.other.technician })).toBe('/problems/not-found');
    const tied = (tie: object) => typeOf({ about: { kind: 'log', tie } });
    expect(await tied({ deviceId: 'no-such-device' })).toBe('/problems/unknown-reference');
    expect(await tied({ changeId: randomUUID() })).toBe('/problems/unknown-reference');
    const backwards = { from: '2026-01-02T00:00:00Z', to: '2026-01-01T00:00:00Z' };
    expect(await typeOf({ about: { kind: 'log', span: backwards } })).toBe('/problems/invalid-input');
    expect((await begin({ size: 3 * 1024 * 1024 + 1 })).status).toBe(413);
    expect((await begin({ size: 3 * 1024 * 1024 })).status).toBe(201);
  });

  it('belongs to its member: to anybody else it is not there', async () => {
    const path = await begun({ size: 10 });
    const nowhere = await head(`/uploads/${randomUUID()}`);
    for (const stranger of [test.home.secondTechnician, test.home.admin, test.other.technician]) {
      expect((await head(path, stranger)).status).toBe(nowhere.status);
      expect((await send(path, 0, Buffer.from('x'), stranger)).status).toBe(404);
      expect((await test.request().delete(path).set(signed(stranger))).status).toBe(404);
    }
    expect((await test.request().head(path).set(tus)).status).toBe(401);
    expect((await head(path)).status).toBe(200);
  });

  it('is given up by its member', async () => {
    const path = await begun({ size: 10 });
    expect((await test.request().delete(path).set(signed(test.home.technician))).status).toBe(204);
    expect((await head(path)).status).toBe(404);
  });

  it.each([
    ['another offset', { 'upload-offset': '5' }, 409],
    ['no offset', { 'upload-offset': '' }, 403],
    ['another type', { 'content-type': 'text/plain' }, 400],
    ['no version of the protocol', { 'tus-resumable': '' }, 412],
    ['another version of the protocol', { 'tus-resumable': '0.2.2' }, 400],
  ])('refuses a part with %s as a problem', async (_what, headers, status) => {
    const path = await begun({ size: 10 });
    const request = test
      .request()
      .patch(path)
      .set({
        ...signed(test.home.technician),
        'upload-offset': '0',
        'content-type': 'application/offset+octet-stream',
        'accept-language': 'de',
      });
    for (const [name, value] of Object.entries(headers)) {
      if (value === '') request.unset(name);
      else request.set(name, value);
    }
    const reply = await request.send(Buffer.from('x'));
    expect(reply.status).toBe(status);
    expect(reply.headers['content-type']).toContain('application/problem+json');
    expect(JSON.parse(reply.text)).toMatchObject({ status, said: { code: 'uploadRefused' } });
    expect([reply.headers['content-language'], reply.headers.vary]).toEqual(['de', 'accept-language']);
  });

  it('never takes more than was announced', async () => {
    const path = await begun({ size: 10 });
    expect((await send(path, 0, Buffer.from('more than ten bytes'))).status).toBe(413);
  });

  it('says what it can do, and lets no page of elsewhere in', async () => {
    const reply = await test.request().options('/uploads').set('origin', 'https://elsewhere.example');
    expect(reply.status).toBe(204);
    expect(reply.headers).toMatchObject({ 'tus-version': '1.0.0' });
    expect(reply.headers['tus-extension']).toContain('creation');
    expect(reply.headers['access-control-allow-origin']).toBeUndefined();
  });

  it('leaves nothing but notes in the staging folder once it is done', async () => {
    const path = await begun({ size: 4 });
    await send(path, 0, Buffer.from('log\n'));
    const id = path.split('/').at(-1) ?? '';
    const names = await readdir(join(test.services.evidenceStore.stagingFolder, 'uploads'));
    expect(names).toContain(`${id}.json`);
    expect(names).not.toContain(id);
    expect(await readdir(join(test.services.evidenceStore.stagingFolder, 'received'))).toEqual([]);
  });
});
