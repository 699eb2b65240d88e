import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cp, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import canonicalize from 'canonicalize';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeAnchors } from '../../../src/features/ticket-record/index.ts';
import { waiveAll } from '../../state-machines/triage/triage-events.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { accepted, openTestTicket } from '../../support/tickets.ts';
import { postForm } from '../evidence/form-client.ts';

describe.each(databaseKinds())('npm run verify, on the %s database', (kind) => {
  let test: TestApp;
  const tickets: string[] = [];
  const files = { flipped: 'a line of a log\n', lost: 'another line\n' };
  beforeAll(async () => {
    test = await openTestApp(kind);
    for (let count = 0; count < 3; count += 1) {
      const { ticketId } = await openTestTicket(test);
      tickets.push(ticketId);
      await accepted(test.home.technician, ticketId, { type: 'note', text: 'It hums.' });
    }
    for (const file of Object.values(files)) {
      const about = { about: { kind: 'log' }, file: Buffer.from(file), name: 'box.log' };
      expect((await postForm(test, test.home.technician, tickets[0] ?? '', about)).status).toBe(201);
    }
    const escalate = { type: 'escalate', question: 'Is it the lamp?', waivers: waiveAll };
    await accepted(test.home.technician, tickets[0] ?? '', escalate);
    await writeAnchors(test.services);
  });
  afterAll(() => test.close());

  const sha256Of = (text: string): string => createHash('sha256').update(text).digest('hex');
  const pathOf = (folder: string, text: string): string =>
    join(folder, 'evidence', test.home.orgId, sha256Of(text).slice(0, 2), sha256Of(text));

  /** Runs it on what the server has by now, after something was done to a copy of its files. */
  const verify = async (toFiles: (folder: string) => Promise<void> = async () => undefined) => {
    const { dataFolder, databaseUrl } = await test.databaseElsewhere();
    const { signingKey, dataFolder: original } = test.services.config;
    if (dataFolder !== original)
      await cp(join(original, 'evidence'), join(dataFolder, 'evidence'), { recursive: true });
    await cp(join(original, 'anchors'), join(dataFolder, 'anchors'), { recursive: true });
    await toFiles(dataFolder);
    const env = {
      ...process.env,
      HALFSPLIT_DATA: dataFolder,
      HALFSPLIT_SIGNING_KEY: String(signingKey.export({ type: 'pkcs8', format: 'pem' })),
      ...(databaseUrl === undefined ? {} : { DATABASE_URL: databaseUrl }),
    };
    const command = ['--import', 'tsx', 'src/cli/verify.ts'];
    const { code, stderr, stdout } = await promisify(execFile)(process.execPath, command, { env }).then(
      (ended) => ({ ...ended, code: 0 }),
      (error: { code: number; stdout: string; stderr: string }) => error,
    );
    return {
      code,
      stdout,
      faults: stderr
        .trim()
        .split('\n')
        .filter((line) => line !== '')
        .toSorted(),
    };
  };

  it('finds nothing in what the server wrote', async () => {
    const { code, faults, stdout } = await verify();
    expect(faults).toEqual([]);
    expect(code).toBe(0);
    expect(stdout).toContain('home-firm: 3 tickets, 2 files, 1 packets, 1 anchors');
  });

  it('names a flipped byte, a lost file, an edited event, and a forged one that was hashed anew', async () => {
    const event = 'ticket_id = $1 and sequence = 2';
    await test.tamper(
      `update ticket_event set machine_version = machine_version, payload =
      jsonb_set(payload, '{more}', '1') where ${event}`,
      [tickets[1]],
    );
    const entry = await test.services.database.inTenant({ orgId: test.home.orgId, memberId: null }, (tx) =>
      tx.ticketEvent.findFirstOrThrow({ where: { ticketId: tickets[2] ?? '', sequence: 2 } }),
    );
    const { orgId: _, hash: _hash, signature: _signature, at, payload, ...rest } = entry;
    const forged = { ...(payload as object), more: 1 };
    const hash = sha256Of(canonicalize({ ...rest, at: at.toISOString(), payload: forged }) ?? '');
    await test.tamper(`update ticket_event set payload = $2, hash = $3 where ${event}`, [
      tickets[2],
      JSON.stringify(forged),
      hash,
    ]);

    const { code, faults } = await verify(async (folder) => {
      const bytes = await readFile(pathOf(folder, files.flipped));
      bytes[3] = (bytes[3] ?? 0) ^ 1;
      await writeFile(pathOf(folder, files.flipped), bytes);
      await rm(pathOf(folder, files.lost));
    });
    expect(code).toBe(1);
    const packed = (text: string) =>
      expect.stringMatching(new RegExp(`packet 1 of ticket no. 1, .*: ${text}$`));
    expect(faults).toEqual(
      expect.arrayContaining([
        `home-firm, file ${sha256Of(files.flipped)}: damaged`,
        `home-firm, file ${sha256Of(files.lost)}: missing`,
        'home-firm, ticket no. 2: event 2 (note) is not what its hash was taken of',
        "home-firm, ticket no. 3: event 2 (note) was not signed by this server's key",
        packed('damaged'),
        packed('missing'),
      ]),
    );
    // The forged event was the newest of its log when that was anchored.
    const anchored = faults.filter((fault) => fault.includes('the anchor of'));
    expect(anchored).toEqual([
      expect.stringMatching(/ticket no\. 3: event 2 is not the one that the anchor of/),
    ]);
    expect(faults).toHaveLength(7);
  });

  it('names a packet whose list was made to fit other files, and one that lost its signature', async () => {
    const where = 'where ticket_id = $1 and version = 1';
    const before = await test.services.database.inTenant({ orgId: test.home.orgId, memberId: null }, (tx) =>
      tx.packet.findFirstOrThrow({ where: { ticketId: tickets[0] ?? '' }, select: { files: true } }),
    );
    const files = before.files as { path: string; sha256: string; sizeBytes: number }[];
    const other = files.find(({ path }) => path === 'data/timeline.csv');
    const swapped = files.map((file) =>
      file.path === 'data/case.json' ? { ...file, sha256: other?.sha256 } : file,
    );
    const put = (list: object) =>
      test.tamper(`update packet set files = $2 ${where}`, [tickets[0], JSON.stringify(list)]);
    await put(swapped.filter(({ path }) => !path.endsWith('.sig')));
    const { faults } = await verify();
    await put(files);
    const name = 'home-firm, packet 1 of ticket no. 1';
    expect(faults).toEqual(
      expect.arrayContaining([
        `${name}, data/case.json: damaged`,
        `${name}, tagmanifest-sha256.txt: not signed`,
      ]),
    );
  });

  it('names a text that is not the one that was kept, and an event that was cut off', async () => {
    await test.tamper(`update ticket_text set text = 'It sings.' where ticket_id = $1 and sequence = 2`, [
      tickets[1],
    ]);
    await test.tamper('update ticket set sequence = sequence + 1 where id = $1', [tickets[2]]);
    const { faults } = await verify();
    expect(faults).toContain(
      'home-firm, ticket no. 2: event 2 (note) has another text at /text than the one that was kept',
    );
    expect(faults).toContain('home-firm, ticket no. 3: event 3 is missing at the end of the log');
  });
});
