import { execFile } from 'node:child_process';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { getBytes, postForm } from '../features/evidence/form-client.ts';
import { waiveAll } from '../state-machines/triage/triage-events.ts';
import { openTestApp, type TestApp } from '../support/test-app.ts';
import { databaseKinds } from '../support/test-database.ts';
import { accepted, bodyOf, openTestTicket } from '../support/tickets.ts';

// Checked by programs that nobody here wrote: Info-ZIP's unzip, GNU coreutils' sha256sum and base64, grep, sed, bash.

const run = promisify(execFile);

describe.each(databaseKinds())('the export of everything, on the %s database', (kind) => {
  let test: TestApp;
  let folder: string;
  let ticketId: string;
  const kept = 'Hums “loudly”.\nOnly with the lamp on: 50 °.';
  const gone = 'Mia Overgrove next door ran the sander.';
  beforeAll(async () => {
    test = await openTestApp(kind);
    ({ ticketId } = await openTestTicket(test));
    await openTestTicket(test, test.other);
    const sent = await postForm(test, test.home.technician, ticketId, {
      about: { kind: 'log', tie: { kind: 'device', deviceId: 'receiver' } },
      file: Buffer.from('a line of a log\n'),
      name: 'box.log',
    });
    expect(sent.status).toBe(201);
    for (const text of [kept, gone]) await accepted(test.home.technician, ticketId, { type: 'note', text });
    const erasure = { body: { event: 4, pointer: '/text', reason: 'Names a neighbour.' } };
    bodyOf(await test.home.admin.post(`/tickets/${ticketId}/erasures`, erasure), 200);
    await accepted(test.home.technician, ticketId, {
      type: 'escalate',
      question: 'Is it the lamp?',
      waivers: waiveAll,
    });
    folder = await unpacked(test);
  });
  afterAll(async () => {
    await rm(join(folder, '..'), { recursive: true, force: true });
    await test.close();
  });

  const json = async (path: string) => JSON.parse(await readFile(join(folder, path), 'utf8'));

  it('is taken by sha256sum: every file is listed, and none has another content', async () => {
    const { stdout } = await run('sha256sum', ['-c', '--strict', 'manifest-sha256.txt'], { cwd: folder });
    const listed = stdout
      .trim()
      .split('\n')
      .map((line) => line.replace(/: OK$/, ''))
      .toSorted();
    const there = (await readdir(folder, { recursive: true, withFileTypes: true }))
      .filter((entry) => entry.isFile() && entry.name !== 'manifest-sha256.txt')
      .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
      .toSorted();
    expect(listed).toEqual(there);
  });

  it('has nothing damaged', async () => {
    expect(await json('damage.json')).toEqual([]);
  });

  it('has the organisation, its people, sites, chains, tickets with their logs, and files', async () => {
    const { organisation, members } = await json('organisation.json');
    expect(organisation.handle).toBe('home-firm');
    expect(members).toHaveLength(5);
    const [site] = await json('sites.json');
    expect(site.document.client).toBe('Family Overwell');
    const ticket = await json('tickets/000001/ticket.json');
    expect(ticket.id).toBe(ticketId);
    expect(ticket.events[0].type).toBe('open');
    expect(ticket.events[0].hash).toMatch(/^[0-9a-f]{64}$/);
    const chain = await json(`chains/${ticket.chainId}.json`);
    expect(chain.versions[0].version).toBe(1);
    const [evidence] = await json('tickets/000001/evidence.json');
    expect(await readFile(join(folder, 'files', evidence.sha256), 'utf8')).toBe('a line of a log\n');
  });

  it('has what people typed, but for what was erased, in a log that verifies as its own text says', async () => {
    const ticket = await json('tickets/000001/ticket.json');
    expect(ticket.events[2].texts).toEqual([
      { pointer: '/text', salt: expect.stringMatching(/^[0-9a-f]{64}$/), text: kept },
    ]);
    expect(ticket.events[3].texts[0].salt).toBeNull();
    const { stdout } = await run('grep', ['-rl', 'Mia Overgrove', folder]).catch(
      (error: { code: number; stdout: string }) => error,
    );
    expect(stdout).toBe('');
    const log = join(folder, 'tickets/000001/log');
    const steps = (await readFile(join(log, 'HOW-TO-VERIFY.txt'), 'utf8'))
      .split(/\n\n/)
      .filter((block) => block.startsWith('   '));
    expect(steps).toHaveLength(3);
    const verified = () =>
      Promise.all(
        steps.map((step) =>
          run('bash', ['-c', `set -o pipefail; ${step}`], { cwd: log }).then(
            () => true,
            () => false,
          ),
        ),
      );
    expect(await verified()).toEqual([true, true, true]);
    const texts = join(log, 'texts.txt');
    const before = await readFile(texts, 'utf8');
    expect(before).toMatch(/^4 \/text [0-9a-f]{64} erased /m);
    const base64 = Buffer.from('0'.repeat(64) + gone).toString('base64');
    await writeFile(texts, before.replace(/^(4 .{71}).*$/m, `$1${base64}`));
    expect(await verified()).toEqual([true, true, false]);
    await writeFile(texts, before);
  });

  it('has nothing of passwords, of sign-ins, or of another organisation', async () => {
    const { stdout } = await run('grep', ['-rliE', 'argon2|passwordHash|tokenHash|other-firm', folder]).catch(
      (error: { code: number; stdout: string }) => {
        // grep ends with 1 where nothing was found
        expect(error.code).toBe(1);
        return error;
      },
    );
    expect(stdout).toBe('');
  });

  it('names what was damaged or lost since it was kept, and has all the rest', async () => {
    const [evidence] = await json('tickets/000001/evidence.json');
    const { dataFolder } = test.services.config;
    const shelf = join(dataFolder, 'evidence', test.home.orgId);
    const at = (sha256: string) => join(shelf, sha256.slice(0, 2), sha256);
    const files = await readdir(join(folder, 'files'));
    const lost = files.find((sha256) => sha256 !== evidence.sha256) ?? '';
    await writeFile(at(evidence.sha256), 'another line of a log\n');
    await rm(at(lost));

    const after = await unpacked(test);
    expect(JSON.parse(await readFile(join(after, 'damage.json'), 'utf8')).toSorted(byPath)).toEqual(
      [
        { path: `files/${evidence.sha256}`, sha256: evidence.sha256, is: 'damaged' },
        { path: `files/${lost}`, sha256: lost, is: 'missing' },
      ].toSorted(byPath),
    );
    const checked = await run('sha256sum', ['-c', '--strict', 'manifest-sha256.txt'], { cwd: after }).catch(
      (error: { code: number; stdout: string }) => error,
    );
    const failed = checked.stdout.split('\n').filter((line) => line.endsWith(': FAILED'));
    expect(failed.toSorted()).toEqual(
      [`files/${evidence.sha256}: FAILED`, `files/${lost}: FAILED`].toSorted(),
    );
    expect(await readdir(join(after, 'files'))).toHaveLength(files.length);
    await rm(join(after, '..'), { recursive: true, force: true });
  });
});

/** Asks for the export and unpacks it with the system's unzip. @returns the folder inside */
async function unpacked(test: TestApp): Promise<string> {
  const outside = await mkdtemp(join(tmpdir(), 'halfsplit-export-'));
  const answer = await getBytes(test, test.home.admin, '/export');
  expect(answer.status).toBe(200);
  expect(answer.headers['content-disposition']).toMatch(
    /^attachment; filename="halfsplit-export-[\d-]+\.zip"$/,
  );
  await writeFile(join(outside, 'export.zip'), answer.body as Buffer);
  await run('unzip', ['-q', 'export.zip'], { cwd: outside });
  const [inside] = (await readdir(outside)).filter((name) => name !== 'export.zip');
  return join(outside, inside ?? '');
}

const byPath = (a: { path: string }, b: { path: string }): number => (a.path < b.path ? -1 : 1);
