/*
 * A backup against programs that nobody here wrote: GNU coreutils' `sha256sum` and GNU gzip's `gzip`.
 */
import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, truncate } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { backUp } from '../../src/backup/index.ts';
import { postForm } from '../features/evidence/form-client.ts';
import { openTestApp, type TestApp } from '../support/test-app.ts';
import { databaseKinds } from '../support/test-database.ts';
import { openTestTicket } from '../support/tickets.ts';

describe.each(databaseKinds())('a backup of the %s database', (kind) => {
  let test: TestApp;
  let to: string;
  let folder: string;
  const run = (program: string, ...args: string[]) => promisify(execFile)(program, args, { cwd: folder });

  beforeAll(async () => {
    to = await mkdtemp(join(tmpdir(), 'halfsplit-backup-'));
    test = await openTestApp(kind);
    const { ticketId } = await openTestTicket(test);
    const about = { about: { kind: 'log' }, file: Buffer.from('a line\n'), name: 'box.log' };
    await postForm(test, test.home.technician, ticketId, about);
    ({ folder } = await backUp(test.services, { to, secrets: false }));
  });
  afterAll(async () => {
    await test.close();
    await rm(to, { recursive: true, force: true });
  });

  it('is whole to sha256sum, file by file, evidence included', async () => {
    const { stdout } = await run('sha256sum', '--strict', '-c', 'contents.sha256', 'evidence.sha256');
    const lines = stdout.trim().split('\n');
    expect(lines.filter((line) => !line.endsWith(': OK'))).toEqual([]);
    expect(lines.filter((line) => line.startsWith('../evidence/'))).toHaveLength(1);
  });

  it('has as many rows in gzip as it says, each of them JSON', async () => {
    const { tables } = JSON.parse(await readFile(join(folder, 'backup.json'), 'utf8'));
    expect(tables.length).toBeGreaterThan(15);
    for (const { name, rows } of tables) {
      const { stdout } = await run('gzip', '-dc', `tables/${name}.ndjson.gz`);
      const lines = stdout.split('\n').filter((line) => line !== '');
      expect([name, lines.length]).toEqual([name, rows]);
      for (const line of lines) expect(JSON.parse(line)).toBeTypeOf('object');
    }
  });

  it('is not, once a file of it was cut off', async () => {
    await truncate(join(folder, 'tables/ticket.ndjson.gz'), 20);
    await expect(run('sha256sum', '--strict', '-c', 'contents.sha256')).rejects.toThrow();
  });
});
