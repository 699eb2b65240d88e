import { createHash, randomUUID } from 'node:crypto';
import { readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { strFromU8, unzipSync } from 'fflate';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { GrantedPacket, Packet, PacketGrant, PacketSummary } from '../../../shared/contract/packet.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { english } from '../../../shared/message/en/index.ts';
import { withSentences } from '../../../src/replies/spoken.ts';
import { checkPacket } from '../../../src/web/second-line/check-packet.ts';
import { waiveAll } from '../../state-machines/triage/triage-events.ts';
import {
  openTestApp,
  signInTestMember,
  type TestApp,
  type TestMember,
  testPassword,
} from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { accepted, bodyOf, bringToSubstitute, openTestTicket, send } from '../../support/tickets.ts';
import { getBytes, postForm } from '../evidence/form-client.ts';

const sha256Of = (content: string): string => createHash('sha256').update(content).digest('hex');
const question = 'Is the optical cable within its limits?';

describe.each(databaseKinds())('case packets, on the %s database', (kind) => {
  let test: TestApp;
  let ticketId: string;
  let first: Packet;

  beforeAll(async () => {
    test = await openTestApp(kind);
    const { technician } = test.home;
    ({ ticketId } = await openTestTicket(test));
    await bringToSubstitute(technician, ticketId);
    await addPhoto('<b>Label</b>');
    const { missing } = bodyOf<Ticket>(await technician.get(`/tickets/${ticketId}`), 200);
    const waivers = [...new Set(missing.map(({ item }) => item))].map((item) => ({
      item,
      reason: `No way to have it: ${item}.`,
    }));
    expect(waivers.length).toBeGreaterThan(0);
    await accepted(technician, ticketId, { type: 'escalate', question, waivers });
    first = await packetNo(1);
  });
  afterAll(() => test.close());

  async function addPhoto(description: string): Promise<void> {
    const bytes = await sharp({ create: { width: 640, height: 480, channels: 3, background: 'teal' } })
      .jpeg()
      .toBuffer();
    const about = { kind: 'photo', description, tie: { linkId: 'L4', shows: 'label' } };
    const form = { about, file: bytes, name: 'IMG 1.jpg' };
    const reply = await postForm(test, test.home.technician, ticketId, form);
    expect(reply.status).toBe(201);
  }
  const listed = async (): Promise<PacketSummary[]> =>
    bodyOf<{ items: PacketSummary[] }>(await test.home.technician.get(`/tickets/${ticketId}/packets`), 200)
      .items;
  async function packetNo(version: number): Promise<Packet> {
    const summary = (await listed()).find((packet) => packet.version === version);
    return bodyOf<Packet>(await test.home.support.get(`/packets/${summary?.id}`), 200);
  }
  async function contentOf(packet: Packet, path: string): Promise<string> {
    const file = packet.files.find((one) => one.path === path);
    if (file === undefined) throw new Error(`the packet has no ${path}`);
    return text(await test.services.evidenceStore.get(test.home.orgId, file.sha256));
  }

  it('are built by the escalation itself', async () => {
    expect(first).toMatchObject({ ticketId, version: 1, news: [], createdBy: test.home.technician.id });
    expect(first.caseFile).toMatchObject({
      packet: { question, createdBy: test.home.technician.id },
      organisation: { name: 'The home-firm' },
      site: { client: 'Family Overwell' },
      ticket: { id: ticketId, state: expect.stringMatching(/^escalated/) },
    });
    // The file holds codes and values; a reply has each sentence beside them.
    const inFile = JSON.parse(await contentOf(first, 'data/case.json'));
    expect(withSentences(inFile, english)).toEqual(first.caseFile);
    expect(first.caseFile.segment?.linkIds).toEqual(['L4']);
    expect(first.caseFile.people.map(({ id }) => id).sort()).toEqual(
      [test.home.dispatcher.id, test.home.technician.id].sort(),
    );
  });

  it('are not built by an escalation that is refused', async () => {
    const other = await openTestTicket(test);
    expect((await send(test.home.technician, other.ticketId, { type: 'escalate', question })).status).toBe(
      409,
    );
    const { body } = await test.home.technician.get(`/tickets/${other.ticketId}/packets`);
    expect(body.items).toEqual([]);
  });

  it('hold a file under every hash that they name', async () => {
    for (const { path, sha256, sizeBytes } of first.files) {
      expect([path, await test.services.evidenceStore.size(test.home.orgId, sha256)]).toEqual([
        path,
        sizeBytes,
      ]);
    }
    expect(first.files.map(({ path }) => path)).toEqual(
      expect.arrayContaining([
        'bagit.txt',
        'bag-info.txt',
        'manifest-sha256.txt',
        'tagmanifest-sha256.txt',
        'data/summary.html',
        'data/chain/as-found.json',
        'data/chain/version-0001.json',
        'data/evidence/001-photo-IMG-1.jpg',
      ]),
    );
  });

  it('carry the log with the very bytes that were hashed', async () => {
    const lines = (await contentOf(first, 'data/log/events.jsonl')).trimEnd().split('\n');
    const hashes = (await contentOf(first, 'data/log/hashes.txt')).trimEnd().split('\n');
    const { items } = (await test.home.support.get(`/tickets/${ticketId}/log`)).body;
    expect(lines.map(sha256Of)).toEqual(hashes);
    expect(hashes).toEqual(items.slice(0, hashes.length).map(({ hash }: { hash: string }) => hash));
    const texts = (await contentOf(first, 'data/log/texts.txt')).trimEnd().split('\n');
    const asked = texts.find((line) => line.startsWith(`${lines.length} /question `)) ?? '';
    const [event, pointer, digest, content] = asked.split(' ');
    const saltAndText = Buffer.from(content ?? '', 'base64').toString();
    expect({ event, pointer, text: saltAndText.slice(64) }).toEqual({
      event: String(lines.length),
      pointer: '/question',
      text: question,
    });
    expect(sha256Of(saltAndText)).toBe(digest);
    const hashed = { type: 'escalate', payload: { question: { text: { sha256: digest } } } };
    expect(JSON.parse(lines.at(-1) ?? '')).toMatchObject(hashed);
  });

  it('tell the story in order', async () => {
    const timeline = JSON.parse(await contentOf(first, 'data/timeline.json'));
    const served = (await test.home.support.get(`/tickets/${ticketId}/timeline`)).body.items;
    expect(withSentences(timeline, english)).toEqual(served.slice(0, timeline.length));
    expect(await contentOf(first, 'data/timeline.csv')).toContain('event,technician of home-firm');
  });

  it('show a summary that runs nothing', async () => {
    const reply = await test.home.support.get(`/packets/${first.id}/summary`);
    expect(reply.status).toBe(200);
    expect(reply.headers).toMatchObject({
      'content-type': 'text/html; charset=utf-8',
      'x-content-type-options': 'nosniff',
      'content-disposition': `inline; filename="case-${first.caseFile.ticket.number}-version-1.html"`,
    });
    expect(reply.headers['content-security-policy']).toMatch(/^sandbox; default-src 'none'/);
    expect(reply.text).toContain(question);
    expect(reply.text).toContain('&lt;b&gt;Label&lt;/b&gt;');
    expect(reply.text).toContain('<img src="data:image/jpeg;base64,');
    expect(reply.text).not.toContain('960 143');
  });

  it('are downloaded as a zip, the same every time', async () => {
    const zip = () => getBytes(test, test.home.support, `/packets/${first.id}/download`);
    const [one, other] = [await zip(), await zip()];
    expect(one.headers).toMatchObject({
      'content-type': 'application/zip',
      'content-disposition': `attachment; filename="case-${first.caseFile.ticket.number}-version-1.zip"`,
    });
    expect(one.body.subarray(0, 4).toString('latin1')).toBe('PK\x03\x04');
    expect(one.body.equals(other.body)).toBe(true);
    const { etag = '' } = one.headers;
    const again = await test.home.support.get(`/packets/${first.id}/download`, { 'if-none-match': etag });
    expect(again.status).toBe(304);
  });

  it('name what was damaged or lost since, never pass it off as whole, and heal', async () => {
    const { orgId, support, technician } = test.home;
    const download = `/packets/${first.id}/download`;
    const fileOf = (path: string) => {
      const sha256 = first.files.find((file) => file.path === path)?.sha256 ?? '';
      return {
        sha256,
        at: join(test.services.config.dataFolder, 'evidence', orgId, sha256.slice(0, 2), sha256),
      };
    };
    const [summary, timeline] = [fileOf('data/summary.html'), fileOf('data/timeline.csv')];
    const whole = await getBytes(test, support, download);
    const kept = [await readFile(summary.at), await readFile(timeline.at)];
    const flipped = Buffer.from(kept[0] ?? '');
    flipped[5] = (flipped[5] ?? 0) ^ 1;
    await writeFile(summary.at, flipped);
    await rm(timeline.at);

    const summaryPath = `/packets/${first.id}/summary`;
    const refused = await support.get(summaryPath);
    expect([refused.status, refused.body.type]).toEqual([410, '/problems/file-damaged']);
    const worn = await getBytes(test, support, download);
    expect(worn.status).toBe(200);
    expect(worn.headers.etag).not.toBe(whole.headers.etag);
    const inZip = unzipSync(worn.body);
    const folder = `case-${first.caseFile.ticket.number}-version-1`;
    expect(JSON.parse(strFromU8(inZip[`${folder}/damage.json`] ?? new Uint8Array()))).toEqual(
      expect.arrayContaining([
        { path: 'data/summary.html', sha256: summary.sha256, is: 'damaged' },
        { path: 'data/timeline.csv', sha256: timeline.sha256, is: 'missing' },
      ]),
    );
    expect(strFromU8(inZip[`${folder}/manifest-sha256.txt`] ?? new Uint8Array())).toContain(
      `${summary.sha256}  data/summary.html`,
    );
    const checked = await checkPacket(new Blob([new Uint8Array(worn.body)]));
    const statuses = checked.kind === 'checked' ? checked.files : [];
    expect(statuses.filter(({ status }) => status !== 'ok')).toEqual([
      { path: 'damage.json', status: 'unlisted' },
      { path: 'data/summary.html', status: 'changed' },
      { path: 'data/timeline.csv', status: 'missing' },
    ]);
    // Who has the whole one needs no other.
    const has = { 'if-none-match': whole.headers.etag ?? '' };
    expect((await support.get(download, has)).status).toBe(304);

    for (const bytes of kept) {
      const about = { about: { kind: 'log' }, file: bytes, name: 'healed.log' };
      const elsewhere = await openTestTicket(test);
      expect((await postForm(test, technician, elsewhere.ticketId, about)).status).toBe(201);
    }
    expect((await getBytes(test, support, download)).body.equals(whole.body)).toBe(true);
    expect((await support.get(summaryPath)).status).toBe(200);
  });

  it('are made although a file of the evidence was damaged or lost, and name it', async () => {
    const { ticketId: worn } = await openTestTicket(test);
    const { technician } = test.home;
    const bytes = Buffer.from('what a disk forgot\n');
    const sent = await postForm(test, technician, worn, {
      about: { kind: 'log' },
      file: bytes,
      name: 'a.log',
    });
    const photo = await sharp({ create: { width: 90, height: 60, channels: 3, background: 'red' } })
      .jpeg()
      .toBuffer();
    const about = { about: { kind: 'photo' }, file: photo, name: 'red.jpg' };
    const shot = await postForm(test, technician, worn, about);
    const rows = await test.services.database.inTenant({ orgId: test.home.orgId, memberId: null }, (tx) =>
      tx.evidence.findMany({ where: { ticketId: worn } }),
    );
    const thumbnail = rows.find(({ id }) => id === shot.body.id)?.thumbnailSha256 ?? '';
    for (const sha256 of [sent.body.sha256, thumbnail])
      await rm(
        join(test.services.config.dataFolder, 'evidence', test.home.orgId, sha256.slice(0, 2), sha256),
      );
    await accepted(technician, worn, { type: 'escalate', question, waivers: waiveAll });
    const { body } = await technician.get(`/tickets/${worn}/packets`);
    const packet = bodyOf<Packet>(await technician.get(`/packets/${body.items[0].id}`), 200);
    const listed = packet.files.find(({ sha256 }) => sha256 === sent.body.sha256);
    expect((await contentOf(packet, 'bag-info.txt')).replaceAll('\n  ', ' ')).toContain(
      `Damaged-File: ${listed?.path} is missing`,
    );
  });

  it('say in the next version what is new', async () => {
    const { support, technician } = test.home;
    await accepted(support, ticketId, { type: 'takeCase' });
    const asked = await accepted(support, ticketId, {
      type: 'askForMore',
      requests: [{ item: 'logs', text: 'The log of the projector, please.' }],
    });
    await test.home.technician.post(`/tickets/${ticketId}/readings`, {
      body: { reading: { kind: 'firmware', level: '3.10.2' }, tie: { deviceId: 'processor' } },
    });
    await addPhoto('Source end');
    const requestId = asked.triage.requests[0]?.id;
    await accepted(technician, ticketId, { type: 'answerRequest', requestId, text: 'It keeps none.' });
    await accepted(technician, ticketId, { type: 'resubmit', waivers: first.caseFile.packet.waivers });
    const second = await packetNo(2);
    expect(second.news).toMatchObject([
      {
        code: 'news/requestAnswered',
        values: { request: 'The log of the projector, please.', answer: 'It keeps none.' },
      },
      {
        code: 'news/evidenceAdded',
        values: {
          item: {
            values: {
              kind: 'firmware',
              of: { deviceId: 'processor' },
              reading: { values: { level: '3.10.2' } },
            },
          },
        },
      },
      {
        code: 'news/evidenceAdded',
        values: {
          item: { values: { kind: 'photo', of: { kind: 'link' }, fileName: '003-photo-IMG-1.jpg' } },
        },
      },
    ]);
    expect((await listed()).map(({ version }) => version)).toEqual([2, 1]);
    expect(await packetNo(1)).toEqual(first);
  });

  it('are in the language that whoever escalates asks for, and are read in any', async () => {
    const { support, technician } = test.home;
    await accepted(support, ticketId, { type: 'handBack', reason: 'Look at the plug first.' });
    await accepted(technician, ticketId, { type: 'note', text: 'Der Stecker sitzt.' });
    const { waivers } = first.caseFile.packet;
    const command = { type: 'escalate', question: 'Hält der Stecker?', waivers };
    const headers = { 'accept-language': 'de' };
    bodyOf<Ticket>(await technician.post(`/tickets/${ticketId}/commands`, { body: command, headers }), 200);
    const third = await packetNo(3);
    const caseFile = JSON.parse(await contentOf(third, 'data/case.json'));
    expect(caseFile).toMatchObject({ caseFileVersion: 2, language: 'de' });
    expect(await contentOf(third, 'bag-info.txt')).toMatch(/^Case-Packet-Language: de$/m);
    expect(await contentOf(third, 'data/summary.html')).toContain('<html lang="de">');
    expect(await contentOf(third, 'data/timeline.csv')).toMatch(/^Zeit,Art,Wer,Was\r\n/);
    // What it says in a reply is in the language of the reply: its JSON holds codes and values.
    const german = bodyOf<Packet>(await support.get(`/packets/${third.id}`, headers), 200);
    for (const { news } of [third, german])
      expect(news).toMatchObject([{ code: 'news/noteBy', values: { text: 'Der Stecker sitzt.' } }]);
    expect(german.news[0]?.text).not.toBe(third.news[0]?.text);
    for (const one of caseFile.news) expect(Object.keys(one).sort()).toEqual(['code', 'values']);
  });

  it('of an earlier version are read as today’s, of a later one refused by a server that can’t read them', async () => {
    const before = await packetNo(1);
    const storedAs = (change: string) =>
      test.tamper(`update packet set case_file = ${change} where id = $1`, [before.id]);
    await storedAs(
      `(case_file - 'language') || '{"caseFileVersion": 1, "news": ["Side found: upstream of it."]}'::jsonb`,
    );
    const read = bodyOf<Packet>(await test.home.support.get(`/packets/${before.id}`), 200);
    expect(read.caseFile).toMatchObject({
      caseFileVersion: 2,
      language: 'en',
      news: [{ code: 'asWritten', values: { sentence: 'Side found: upstream of it.' } }],
    });
    await storedAs(`case_file || '{"caseFileVersion": 99}'::jsonb`);
    const { status, body } = await test.home.support.get(`/packets/${before.id}`);
    expect([status, body.type]).toEqual([503, '/problems/newer-data']);
    await storedAs(`case_file || '{"caseFileVersion": 2, "language": "en", "news": []}'::jsonb`);
    expect(await packetNo(1)).toEqual(before);
  });

  describe('granted to another organisation', () => {
    const grant = (memberAddress: string, by: TestMember = test.home.support) =>
      by.post(`/packets/${first.id}/grants`, { body: { memberAddress } });

    it('are refused for every other address with one and the same answer', async () => {
      const inactive = await test.other.admin.post('/members', {
        body: { name: 'Gone', email: 'gone@other-firm.example', role: 'support', password: testPassword },
      });
      const { etag = '' } = inactive.headers;
      await test.other.admin.put(`/members/${inactive.body.id}`, {
        ifMatch: etag,
        body: { name: 'Gone', role: 'support', active: false },
      });
      const answers = [];
      for (const address of [
        randomUUID(),
        inactive.body.id,
        test.other.technician.id,
        test.other.admin.id,
        test.home.support.id,
      ]) {
        const { status, body } = await grant(address);
        const { instance, ...answer } = body;
        answers.push([status, answer]);
      }
      expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1);
      expect(answers[0]?.[0]).toBe(422);
    });

    it('are readable by that member: that packet and nothing else', async () => {
      const guest = test.other.support;
      const paths = ['', '/summary', '/download'].map((rest) => `/packets/${first.id}${rest}`);
      for (const path of paths) expect((await guest.get(path)).status).toBe(404);

      const made = bodyOf<PacketGrant>(await grant(guest.id), 201);
      expect(made).toMatchObject({ memberAddress: guest.id, firstOpenedAt: null, revokedAt: null });
      expect(bodyOf<PacketGrant>(await grant(guest.id), 200).id).toBe(made.id);
      const shown = bodyOf<{ items: GrantedPacket[] }>(await guest.get('/granted-packets'), 200).items;
      expect(shown).toMatchObject([
        { grantId: made.id, packetId: first.id, organisationName: 'The home-firm', question, version: 1 },
      ]);
      for (const path of paths) expect((await guest.get(path)).status).toBe(200);
      const seen = bodyOf<Packet>(await guest.get(paths[0] ?? ''), 200);
      expect(seen.createdByName).toBe('technician of home-firm');

      const second = await packetNo(2);
      const closed = [
        `/packets/${second.id}`,
        `/packets/${second.id}/download`,
        `/packets/${first.id}/grants`,
        `/tickets/${ticketId}`,
        `/tickets/${ticketId}/packets`,
        `/tickets/${ticketId}/evidence`,
        `/evidence/${first.caseFile.evidence[0]?.id}`,
        `/evidence/${first.caseFile.evidence[0]?.id}/content`,
        `/chains/${first.caseFile.chain.id}`,
      ];
      for (const path of closed) expect([path, (await guest.get(path)).status]).toEqual([path, 404]);
      expect(
        (await guest.post(`/packets/${first.id}/grants`, { body: { memberAddress: guest.id } })).status,
      ).toBe(404);
      for (const path of paths) expect((await test.other.admin.get(path)).status).toBe(404);
      const grants = bodyOf<{ items: PacketGrant[] }>(
        await test.home.admin.get(`/packets/${first.id}/grants`),
        200,
      );
      expect(grants.items[0]?.firstOpenedAt).not.toBeNull();
    });

    it('are shut for a guest who is no longer second line', async () => {
      const { body } = await test.other.admin.post('/members', {
        body: { name: 'Mover', email: 'mover@other-firm.example', role: 'support', password: testPassword },
      });
      const mover = await signInTestMember(test.app, 'other-firm', 'mover@other-firm.example');
      expect((await grant(body.id)).status).toBe(201);
      expect((await mover.get(`/packets/${first.id}`)).status).toBe(200);
      const { headers } = await test.other.admin.get(`/members/${body.id}`);
      await test.other.admin.put(`/members/${body.id}`, {
        ifMatch: headers.etag ?? '',
        body: { name: 'Mover', role: 'technician', active: true },
      });
      expect((await mover.get(`/packets/${first.id}`)).status).toBe(404);
    });

    it('are shut again by revoking', async () => {
      const guest = test.other.support;
      const { id } = bodyOf<PacketGrant>(await grant(guest.id), 200);
      expect((await guest.post(`/grants/${id}/revoke`)).status).toBe(404);
      const revoked = bodyOf<PacketGrant>(await test.home.support.post(`/grants/${id}/revoke`), 200);
      expect(revoked.revokedAt).not.toBeNull();
      expect(bodyOf<PacketGrant>(await test.home.support.post(`/grants/${id}/revoke`), 200)).toEqual(revoked);
      for (const rest of ['', '/summary', '/download']) {
        expect((await guest.get(`/packets/${first.id}${rest}`)).status).toBe(404);
      }
      expect((await guest.get('/granted-packets')).body.items).toEqual([]);
      expect((await grant(guest.id)).status).toBe(201);
    });
  });
});
