import { createHash, randomUUID } from 'node:crypto';
import { rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { bodyOf, openTestTicket } from '../../support/tickets.ts';
import { getBytes, postForm } from './form-client.ts';

const digits = Buffer.from('0123456789');

describe.each(databaseKinds())('the content of evidence, on the %s database', (kind) => {
  let test: TestApp;
  let path: string;
  beforeAll(async () => {
    test = await openTestApp(kind);
    const { ticketId } = await openTestTicket(test);
    const form = { about: { kind: 'log' }, file: digits, name: 'Zähler 1.log' };
    const reply = await postForm(test, test.home.technician, ticketId, form);
    path = `/evidence/${bodyOf<EvidenceItem>(reply, 201).id}/content`;
  });
  afterAll(() => test.close());

  const bytesOf = (headers: Record<string, string> = {}) => getBytes(test, test.home.support, path, headers);

  it('comes as an attachment that no browser takes for a page', async () => {
    const { status, headers } = await bytesOf();
    expect(status).toBe(200);
    expect(headers).toMatchObject({
      'content-type': 'text/plain; charset=utf-8',
      'content-length': '10',
      'content-disposition': 'attachment; filename="Zahler-1.txt"',
      'x-content-type-options': 'nosniff',
      'accept-ranges': 'bytes',
      etag: `"${createHash('sha256').update(digits).digest('hex')}"`,
    });
    expect(headers['content-security-policy']).toContain("sandbox; default-src 'none'");
  });

  it('is not handed out as genuine when it was damaged or lost, and sending it again heals it', async () => {
    const { ticketId } = await openTestTicket(test);
    const send = (file: Buffer) =>
      postForm(test, test.home.technician, ticketId, { about: { kind: 'log' }, file, name: 'worn.log' });
    const bytes = Buffer.from('a line that a disk may lose\n');
    const item = bodyOf<EvidenceItem>(await send(bytes), 201);
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    const { dataFolder } = test.services.config;
    const file = join(dataFolder, 'evidence', test.home.orgId, sha256.slice(0, 2), sha256);
    const fetched = () => getBytes(test, test.home.support, `/evidence/${item.id}/content`);
    const problem = async () => {
      const { status, body } = await fetched();
      const { type, said } = JSON.parse(String(body)) as { type: string; said: { code: string } };
      return { status, type, code: said.code };
    };
    const gone = { status: 410, type: '/problems/file-damaged' };

    await writeFile(file, 'a line that a disk may loose\n');
    expect(await problem()).toEqual({ ...gone, code: 'fileDamaged' });
    await send(bytes);
    expect(String((await fetched()).body)).toBe(String(bytes));
    await rm(file);
    expect(await problem()).toEqual({ ...gone, code: 'fileLost' });
    await send(bytes);
    expect((await fetched()).status).toBe(200);
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
    const reply = await bytesOf({ range });
    expect([reply.status, reply.body.toString(), reply.headers['content-range']]).toEqual([
      status,
      body,
      contentRange,
    ]);
  });

  it('in parts only of the content that the reader has begun with', async () => {
    const { etag = '' } = (await bytesOf()).headers;
    expect((await bytesOf({ range: 'bytes=0-1', 'if-range': etag })).status).toBe(206);
    expect((await bytesOf({ range: 'bytes=0-1', 'if-range': '"another"' })).status).toBe(200);
    expect((await bytesOf({ 'if-none-match': etag })).status).toBe(304);
  });

  it('is there for nobody else', async () => {
    const elsewhere = await test.other.admin.get(path);
    const nowhere = await test.other.admin.get(`/evidence/${randomUUID()}/content`);
    expect([elsewhere.status, elsewhere.body.said]).toEqual([404, nowhere.body.said]);
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
