import { createHash, randomUUID } from 'node:crypto';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import supertest from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import { display18, edidHex } from '../../signal/link-budget/build-edid.ts';
import { openTestApp, type TestApp, type TestMember, type TestReply } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { bodyOf, openTestTicket, type TestTicket } from '../../support/tickets.ts';

const sha256Of = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');
const log = Buffer.from('12:00:01 sync lost\n12:00:04 sync found\n');

describe.each(databaseKinds())('evidence, on the %s database', (kind) => {
  let test: TestApp;
  let ticket: TestTicket;
  beforeAll(async () => {
    test = await openTestApp(kind);
    ticket = await openTestTicket(test);
  });
  afterAll(() => test.close());

  type Form = { about?: unknown; file?: Buffer; name?: string; key?: string; fileFirst?: boolean };
  /** Sends multipart/form-data as the technician would. */
  async function post(
    form: Form,
    member: TestMember = test.home.technician,
    to = ticket.ticketId,
  ): Promise<TestReply> {
    const request = supertest(test.app.server)
      .post(`/tickets/${to}/evidence`)
      .set('authorization', `Bearer ${member.accessToken}`)
      .set('idempotency-key', form.key ?? randomUUID());
    const field = () => {
      if (form.about !== undefined) {
        request.field('about', typeof form.about === 'string' ? form.about : JSON.stringify(form.about));
      }
    };
    if (!form.fileFirst) field();
    if (form.file !== undefined) request.attach('file', form.file, form.name ?? 'file.bin');
    if (form.fileFirst) field();
    return request;
  }
  const added = async (form: Form): Promise<EvidenceItem> => bodyOf<EvidenceItem>(await post(form), 201);
  const errorsOf = (reply: TestReply): string[] =>
    (reply.body.errors as { pointer: string }[]).map(({ pointer }) => pointer);
  const staged = () => readdir(join(test.services.evidenceStore.stagingFolder, 'received'));

  const photo = (colour: string) =>
    sharp({ create: { width: 640, height: 480, channels: 3, background: colour } })
      .withExif({ IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '47/1 22/1 0/1' } })
      .jpeg()
      .toBuffer();

  describe('by form', () => {
    it('is kept as it was sent, and is on the ticket', async () => {
      const about = { kind: 'log', description: 'From the processor', tie: { deviceId: 'processor' } };
      const reply = await post({ about, file: log, name: '..\\..\\Log of today.log' });
      const item = bodyOf<EvidenceItem>(reply, 201);
      expect(reply.headers.location).toBe(`/evidence/${item.id}`);
      expect(item).toMatchObject({
        ticketId: ticket.ticketId,
        kind: 'log',
        description: 'From the processor',
        fileName: 'Log of today.log',
        mediaType: 'text/plain; charset=utf-8',
        sizeBytes: log.length,
        sha256: sha256Of(log),
        originalSha256: null,
        by: test.home.technician.id,
        withdrawn: null,
      });
      const { triage, sequence } = (await test.home.technician.get(`/tickets/${ticket.ticketId}`)).body;
      expect(triage.evidence.at(-1)).toMatchObject({ id: item.id, sha256: sha256Of(log) });
      const events = (await test.home.technician.get(`/tickets/${ticket.ticketId}/log?after=${sequence - 1}`))
        .body.items;
      expect(events).toMatchObject([{ type: 'evidenceAdded', payload: { evidence: { id: item.id } } }]);
    });

    it('may come before what is said about it', async () => {
      expect((await post({ about: { kind: 'log' }, file: log, fileFirst: true })).status).toBe(201);
    });

    it('is one item however often it is sent with one key, and its own with another', async () => {
      const key = randomUUID();
      const about = { kind: 'log' };
      const [first, second] = [await post({ about, file: log, key }), await post({ about, file: log, key })];
      expect(second.body).toEqual(first.body);
      expect(second.headers['idempotency-replayed']).toBe('true');
      expect((await post({ about, file: Buffer.from('another log\n'), key })).status).toBe(422);
      expect((await post({ about, file: log })).body.id).not.toBe(first.body.id);
    });

    it('is kept once for the same content', async () => {
      const bytes = Buffer.from(`log ${randomUUID()}\n`);
      const before = await test.services.evidenceStore.has(test.home.orgId, sha256Of(bytes));
      const [one, other] = [
        await added({ about: { kind: 'log' }, file: bytes }),
        await added({ about: { kind: 'log' }, file: bytes }),
      ];
      expect(before).toBe(false);
      expect(one.sha256).toBe(other.sha256);
      expect(await test.services.evidenceStore.has(test.home.orgId, sha256Of(bytes))).toBe(true);
      expect(await test.services.evidenceStore.has(test.other.orgId, sha256Of(bytes))).toBe(false);
    });

    it('is refused field by field', async () => {
      expect(errorsOf(await post({ file: log }))).toEqual(['/about']);
      expect(errorsOf(await post({ about: '{"kind":', file: log }))).toEqual(['/about']);
      expect(errorsOf(await post({ about: { kind: 'virus' }, file: log }))).toEqual(['/about/kind']);
      expect(errorsOf(await post({ about: { kind: 'log', description: 'a\0b' }, file: log }))).toEqual([
        '/about/description',
      ]);
      expect(errorsOf(await post({ about: { kind: 'log' } }))).toEqual(['/file']);
      const span = { from: '2026-11-20T12:00:00Z', to: '2026-11-20T11:00:00Z' };
      expect(errorsOf(await post({ about: { kind: 'log', span }, file: log }))).toEqual(['/span/to']);
    });

    it('is refused where the chain or the ticket has no such place', async () => {
      const tied = async (tie: object) => (await post({ about: { kind: 'log', tie }, file: log })).body.type;
      expect(await tied({ deviceId: 'toaster' })).toBe('/problems/unknown-reference');
      expect(await tied({ linkId: 'L99' })).toBe('/problems/unknown-reference');
      expect(await tied({ deviceId: 'processor', portId: 'in9' })).toBe('/problems/unknown-reference');
      expect(await tied({ portId: 'in1' })).toBe('/problems/invalid-input');
      expect(await tied({ watchId: randomUUID() })).toBe('/problems/unknown-reference');
    });

    it('is refused when its content is not what it is said to be', async () => {
      const reply = await post({ about: { kind: 'photo' }, file: log, name: 'photo.jpg' });
      expect(reply.status).toBe(415);
      expect(reply.body.detail).toContain('by its content this file is text/plain');
    });

    it('is sent elsewhere when it is too large for one request', async () => {
      const reply = await post({
        about: { kind: 'log' },
        file: Buffer.alloc(25 * 1024 * 1024 + 1, 'a log line\n'),
      });
      expect(reply.status).toBe(413);
      expect(reply.body.detail).toContain('/uploads');
    });

    it.each([
      ['no form', 'application/json', '{}', 415],
      ['a form without a boundary', 'multipart/form-data', 'x', 400],
      [
        'a form that breaks off',
        'multipart/form-data; boundary=b',
        '--b\r\nContent-Disposition: form-data; name="file"; filename="a"\r\n\r\nhalf',
        400,
      ],
    ])('is a 4xx for %s', async (_what, type, body, status) => {
      const reply = await test
        .request()
        .post(`/tickets/${ticket.ticketId}/evidence`)
        .set('authorization', `Bearer ${test.home.technician.accessToken}`)
        .set('idempotency-key', randomUUID())
        .set('content-type', type)
        .send(body);
      expect(reply.status).toBe(status);
      expect(reply.headers['content-type']).toContain('application/problem+json');
    });

    it('leaves nothing in the staging folder, whatever became of it', async () => {
      expect(await staged()).toEqual([]);
    });
  });

  describe('photos', () => {
    it('lose their position, keep the hash of the original, and get a thumbnail', async () => {
      const original = await photo('teal');
      const item = await added({
        about: { kind: 'photo', tie: { linkId: 'L4', shows: 'label' } },
        file: original,
      });
      expect(item).toMatchObject({
        mediaType: 'image/jpeg',
        originalSha256: sha256Of(original),
        hasThumbnail: true,
      });
      expect(item.sha256).not.toBe(sha256Of(original));
      const content = await bytesOf(`/evidence/${item.id}/content`);
      expect(sha256Of(content.body)).toBe(item.sha256);
      expect((await sharp(content.body).metadata()).exif).toBeUndefined();
      const thumbnail = await bytesOf(`/evidence/${item.id}/thumbnail`);
      expect(await sharp(thumbnail.body).metadata()).toMatchObject({
        format: 'jpeg',
        width: 480,
        height: 360,
      });
      expect(thumbnail.headers['content-type']).toBe('image/jpeg');
      expect(await test.services.evidenceStore.has(test.home.orgId, sha256Of(original))).toBe(false);
      expect(await staged()).toEqual([]);
    });

    it('have no thumbnail where there is no picture', async () => {
      const item = await added({ about: { kind: 'log' }, file: log });
      expect((await test.home.technician.get(`/evidence/${item.id}/thumbnail`)).status).toBe(404);
    });
  });

  describe('EDIDs', () => {
    const bytes = Buffer.from(edidHex(display18), 'hex');
    const about = { kind: 'edid', tie: { deviceId: 'projector', portId: 'in1' } };

    it('are decoded on arrival, from bytes and from text alike', async () => {
      const dump = bytes.toString('hex').replace(/(..)/g, '$1 ');
      const binary = await added({ about, file: bytes });
      const typed = await added({ about, file: Buffer.from(dump) });
      expect(binary.mediaType).toBe('application/octet-stream');
      expect(typed.mediaType).toMatch(/^text/);
      expect(binary.facts).toMatchObject({
        edidHex: bytes.toString('hex'),
        edid: {
          ok: true,
          checksumsValid: true,
          blockCount: 2,
          cta: { hdmi: { physicalAddress: expect.any(String) } },
        },
      });
      expect(typed.facts).toMatchObject({ edidHex: bytes.toString('hex') });
    });

    it('are kept when they are damaged, with what is wrong', async () => {
      const damaged = Buffer.from(bytes);
      damaged[20] = (damaged[20] ?? 0) ^ 0xff;
      const { facts } = await added({ about, file: damaged });
      expect(facts).toMatchObject({ edid: { checksumsValid: false } });
    });

    it('are refused when there is none in the text', async () => {
      expect((await post({ about, file: Buffer.from('the picture was black') })).status).toBe(415);
    });
  });

  const bytesOf = (path: string, headers: Record<string, string> = {}) =>
    test
      .request()
      .get(path)
      .set('authorization', `Bearer ${test.home.support.accessToken}`)
      .set(headers)
      .buffer(true)
      .parse((response, done) => {
        const chunks: Buffer[] = [];
        response.on('data', (chunk: Buffer) => chunks.push(chunk));
        response.on('end', () => done(null, Buffer.concat(chunks)));
      });

  describe('content', () => {
    let path: string;
    beforeAll(async () => {
      const item = await added({
        about: { kind: 'log' },
        file: Buffer.from('0123456789'),
        name: 'Zähler 1.log',
      });
      path = `/evidence/${item.id}/content`;
    });

    it('comes as an attachment that no browser takes for a page', async () => {
      const { status, headers } = await bytesOf(path);
      expect(status).toBe(200);
      expect(headers).toMatchObject({
        'content-type': 'text/plain; charset=utf-8',
        'content-length': '10',
        'content-disposition': 'attachment; filename="Zahler-1.txt"',
        'x-content-type-options': 'nosniff',
        'accept-ranges': 'bytes',
        etag: `"${sha256Of(Buffer.from('0123456789'))}"`,
      });
      expect(headers['content-security-policy']).toContain("sandbox; default-src 'none'");
    });

    it.each([
      ['bytes=2-4', 206, '234', 'bytes 2-4/10'],
      ['bytes=7-', 206, '789', 'bytes 7-9/10'],
      ['bytes=-3', 206, '789', 'bytes 7-9/10'],
      ['bytes=-30', 206, '0123456789', 'bytes 0-9/10'],
      ['bytes=8-30', 206, '89', 'bytes 8-9/10'],
      ['bytes=10-', 416, '', 'bytes */10'],
      ['bytes=-0', 416, '', 'bytes */10'],
      ['bytes=4-2', 200, '0123456789', undefined],
      ['bytes=0-1,3-4', 200, '0123456789', undefined],
      ['lines=1-2', 200, '0123456789', undefined],
    ])('in parts: %s', async (range, status, body, contentRange) => {
      const reply = await bytesOf(path, { range });
      expect([reply.status, reply.body.toString(), reply.headers['content-range']]).toEqual([
        status,
        body,
        contentRange,
      ]);
    });

    it('in parts only of the content that the reader has begun with', async () => {
      const { etag = '' } = (await bytesOf(path)).headers;
      expect((await bytesOf(path, { range: 'bytes=0-1', 'if-range': etag })).status).toBe(206);
      expect((await bytesOf(path, { range: 'bytes=0-1', 'if-range': '"another"' })).status).toBe(200);
      expect((await bytesOf(path, { 'if-none-match': etag })).status).toBe(304);
    });

    it('is there for nobody else', async () => {
      const elsewhere = await test.other.admin.get(path);
      const nowhere = await test.other.admin.get(`/evidence/${randomUUID()}/content`);
      expect([elsewhere.status, elsewhere.body.detail]).toEqual([404, nowhere.body.detail]);
      expect((await test.request().get(path)).status).toBe(401);
    });

    it('may be asked for by its head', async () => {
      const reply = await test
        .request()
        .head(path)
        .set('authorization', `Bearer ${test.home.support.accessToken}`);
      expect([reply.status, reply.headers['content-length']]).toEqual([200, '10']);
    });
  });

  describe('readings', () => {
    const read = (body: object) =>
      test.home.technician.post(`/tickets/${ticket.ticketId}/readings`, { body });

    it('have no file', async () => {
      const reading = { kind: 'firmware', level: '3.10.2' };
      const item = bodyOf<EvidenceItem>(await read({ reading, tie: { deviceId: 'processor' } }), 201);
      expect(item).toMatchObject({
        kind: 'firmware',
        reading,
        sha256: null,
        fileName: null,
        sizeBytes: null,
      });
      expect((await test.home.technician.get(`/evidence/${item.id}/content`)).status).toBe(404);
    });

    it('of settings and firmware say of which device; those around a change, of which change', async () => {
      expect(errorsOf(await read({ reading: { kind: 'firmware', level: '1' } }))).toEqual(['/tie/deviceId']);
      const reading = { kind: 'settings', values: { range: 'limited' }, phase: 'before' };
      expect(errorsOf(await read({ reading, tie: { deviceId: 'processor' } }))).toEqual(['/tie/changeId']);
      expect((await read({ reading: { kind: 'note', text: 'The fan is loud.' } })).status).toBe(201);
    });

    it('carry the time at which they were taken', async () => {
      const takenAt = new Date(Date.now() - 3_600_000).toISOString();
      const item = bodyOf<EvidenceItem>(
        await read({ reading: { kind: 'note', text: 'Earlier.' }, takenAt }),
        201,
      );
      expect(item.at).toBe(takenAt);
    });
  });

  describe('withdrawn', () => {
    it('stays with its file and the reason', async () => {
      const item = await added({ about: { kind: 'log' }, file: log });
      const withdraw = (reason: string) =>
        test.home.technician.post(`/evidence/${item.id}/withdraw`, { body: { reason } });
      expect(bodyOf<EvidenceItem>(await withdraw('Of another site.'), 200).withdrawn).toMatchObject({
        reason: 'Of another site.',
        by: test.home.technician.id,
      });
      expect((await withdraw('Again.')).status).toBe(409);
      expect((await bytesOf(`/evidence/${item.id}/content`)).body).toEqual(log);
      const { triage } = (await test.home.technician.get(`/tickets/${ticket.ticketId}`)).body;
      expect(triage.evidence.find(({ id }: { id: string }) => id === item.id).withdrawn.reason).toBe(
        'Of another site.',
      );
      const { body } = await test.home.technician.get(`/tickets/${ticket.ticketId}/log/check`);
      expect(body).toMatchObject({ sequenceHolds: true, hashChainHolds: true, snapshotMatches: true });
    });
  });

  it('is listed newest first, by page and by kind', async () => {
    const first = bodyOf<{ items: EvidenceItem[]; next: string }>(
      await test.home.support.get(`/tickets/${ticket.ticketId}/evidence?limit=2`),
      200,
    );
    const all = bodyOf<{ items: EvidenceItem[]; next: null }>(
      await test.home.support.get(`/tickets/${ticket.ticketId}/evidence?limit=200`),
      200,
    );
    const rest = await test.home.support.get(
      `/tickets/${ticket.ticketId}/evidence?limit=200&cursor=${first.next}`,
    );
    expect([...first.items, ...rest.body.items]).toEqual(all.items);
    expect(all.items.map(({ uploadedAt }) => uploadedAt)).toEqual(
      all.items
        .map(({ uploadedAt }) => uploadedAt)
        .sort()
        .reverse(),
    );
    const photos = await test.home.support.get(`/tickets/${ticket.ticketId}/evidence?kind=photo`);
    expect(photos.body.items.map(({ kind }: EvidenceItem) => kind)).toEqual(['photo']);
  });

  it('is not taken for a ticket of another organisation, nor for one that is not there', async () => {
    const about = { kind: 'log' };
    const elsewhere = await post({ about, file: log }, test.other.technician);
    const nowhere = await post({ about, file: log }, test.home.technician, randomUUID());
    expect([elsewhere.status, nowhere.status]).toEqual([404, 404]);
    expect(elsewhere.body.detail).toBe(nowhere.body.detail);
  });
});
