import { createHash, randomUUID } from 'node:crypto';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import { display18, edidHex } from '../../signal/link-budget/build-edid.ts';
import { openTestApp, type TestApp, type TestReply } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { bodyOf, openTestTicket, type TestTicket } from '../../support/tickets.ts';
import { type Form, getBytes, postForm } from './form-client.ts';

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

  const post = (form: Form, member = test.home.technician, to = ticket.ticketId): Promise<TestReply> =>
    postForm(test, member, to, form);
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
      expect(await test.services.evidenceStore.has(test.home.orgId, sha256Of(bytes))).toBe(false);
      const [one, other] = [
        await added({ about: { kind: 'log' }, file: bytes }),
        await added({ about: { kind: 'log' }, file: bytes }),
      ];
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
      expect(reply.body.said).toMatchObject({
        code: 'fileTypeNotTaken',
        values: { taken: { code: 'photoTypes' }, found: 'text/plain' },
      });
    });

    it('is sent elsewhere when it is too large for one request', async () => {
      const reply = await post({
        about: { kind: 'log' },
        file: Buffer.alloc(25 * 1024 * 1024 + 1, 'a log line\n'),
      });
      expect(reply.status).toBe(413);
      expect(reply.body.said).toMatchObject({ code: 'fileTooLargeForOneRequest' });
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

  const bytesOf = (path: string) => getBytes(test, test.home.support, path);

  describe('readings', () => {
    const read = (body: object) =>
      test.home.technician.post(`/tickets/${ticket.ticketId}/readings`, { body });

    it('have no file', async () => {
      const reading = { kind: 'firmware', level: '3.10.2' };
      const item = bodyOf<EvidenceItem>(await read({ reading, tie: { deviceId: 'processor' } }), 201);
      expect((await test.home.technician.get(`/evidence/${item.id}/thumbnail`)).status).toBe(404);
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
      expect(body).toMatchObject({ isClean: true });
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
    expect(elsewhere.body.said).toEqual(nowhere.body.said);
  });
});
