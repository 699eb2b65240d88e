import { createHash } from 'node:crypto';
import { strFromU8, unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AuditEntry } from '../../../shared/contract/audit-log.ts';
import { everythingIn } from '../../support/everything.ts';
import type { Ids } from '../../support/routes.ts';
import { openTestApp, type TestApp, type TestMember } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { accepted, bodyOf, openTestTicket } from '../../support/tickets.ts';
import { postForm } from '../evidence/form-client.ts';

const log = '2026-03-02T19:00:00Z input 1: sync lost\n';
const othersLog = '2026-03-02T19:00:00Z input 2: nothing of theirs\n';
const sha256 = (text: string | Uint8Array): string => createHash('sha256').update(text).digest('hex');

describe.each(databaseKinds())('what an organisation has of a client, on the %s database', (kind) => {
  let test: TestApp;
  let ids: Ids;
  beforeAll(async () => {
    test = await openTestApp(kind);
    ids = await everythingIn(test);
    const { technician } = test.home;
    const add = async (ticketId: string, text: string) => {
      const about = { about: { kind: 'log' }, file: Buffer.from(text), name: 'box.log' };
      expect((await postForm(test, technician, ticketId, about)).status).toBe(201);
    };
    await add(ids.tickets ?? '', log);
    const other = await openTestTicket(test);
    await accepted(technician, other.ticketId, { type: 'note', text: 'Of another client altogether.' });
    await add(other.ticketId, othersLog);
  });
  afterAll(() => test.close());

  const exportOf = (member: TestMember, siteId: string) =>
    test
      .request()
      .get(`/sites/${siteId}/export`)
      .set('authorization', `Bearer ${member.accessToken}`)
      .buffer(true)
      .parse((response, done) => {
        const chunks: Buffer[] = [];
        response.on('data', (chunk: Buffer) => chunks.push(chunk));
        response.on('end', () => done(null, Buffer.concat(chunks)));
      });

  it('is one zip: site, chain, ticket with its log, diaries and every file, and nothing of another client', async () => {
    const { body } = await exportOf(test.home.admin, ids.sites ?? '').expect(200);
    const files = Object.fromEntries(
      Object.entries(unzipSync(body)).map(([path, bytes]) => [path.slice(path.indexOf('/') + 1), bytes]),
    );
    const json = (path: string) => JSON.parse(strFromU8(files[path] ?? new Uint8Array()));
    expect(json('sites.json').map(({ id }: { id: string }) => id)).toEqual([ids.sites]);
    expect(Object.keys(files).filter((path) => path.startsWith('chains/'))).toEqual([
      `chains/${ids.chains}.json`,
    ]);
    expect(new Set(Object.keys(files).flatMap((path) => path.match(/^tickets\/\d+/) ?? []))).toEqual(
      new Set(['tickets/000001']),
    );
    expect(json('tickets/000001/ticket.json').id).toBe(ids.tickets);
    expect(json('tickets/000001/diaries.json')).toEqual([expect.objectContaining({ id: ids.diaries })]);
    expect(json('tickets/000001/evidence.json')).toContainEqual(
      expect.objectContaining({ sha256: sha256(log) }),
    );
    expect(strFromU8(files[`files/${sha256(log)}`] ?? new Uint8Array())).toBe(log);
    expect(files[`files/${sha256(othersLog)}`]).toBeUndefined();
    const all = Object.values(files).map((bytes) => Buffer.from(bytes).toString('latin1'));
    expect(all.filter((text) => text.includes('Of another client altogether'))).toEqual([]);
    expect(json('tickets/000001/diaries.json')[0]).not.toHaveProperty('codeHash');
    const manifest = strFromU8(files['manifest-sha256.txt'] ?? new Uint8Array());
    for (const line of manifest.trim().split('\n')) {
      const [hash, path = ''] = line.split('  ');
      expect([path, sha256(files[path] ?? '')]).toEqual([path, hash]);
    }
  });

  it('stands in the audit log, and is not given where there is no such site', async () => {
    const { admin } = test.home;
    await exportOf(admin, ids.tickets ?? '').expect(404);
    await exportOf(test.other.admin, ids.sites ?? '').expect(404);
    await exportOf(admin, ids.sites ?? '').expect(200);
    const { items } = bodyOf<{ items: AuditEntry[] }>(
      await admin.get('/organisation/audit-log?limit=200'),
      200,
    );
    const [last, ...before] = items.filter((entry) => entry.kind === 'clientExported');
    expect(last).toMatchObject({ actorId: admin.id, aboutId: ids.sites });
    expect(before.every(({ aboutId }) => aboutId === ids.sites)).toBe(true);
  });
});
