/*
 * README's tour, word for word, against `npm run demo`: its commands ask `bash`, `curl`, `unzip` and `sha256sum`. A missing
 * program fails the test.
 */
import { type ChildProcess, execFile } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { freePort, startProgram, stopProgram } from './support/server-process.ts';

const run = promisify(execFile);
const root = join(import.meta.dirname, '..');

/** The commands of README's tour in order, each with the lines that it goes on over. */
async function tourCommands(): Promise<string[]> {
  const readme = await readFile(join(root, 'README.md'), 'utf8');
  const [, tour = ''] = readme.match(/\n## Tour\n(.*?)\n## /s) ?? [];
  const lines = tour.split('\n').filter((line) => line.startsWith('    '));
  return lines
    .map((line) => line.slice(4))
    .join('\n')
    .split(/^\$ /m)
    .slice(1)
    .map((command) => command.trim());
}

let work: string;
let address: string;
let demo: ChildProcess;
let commands: string[];
const commandWith = (part: string): string => {
  const found = commands.find((command) => command.includes(part));
  if (found === undefined) throw new Error(`The tour has no command with ${part}.`);
  return found;
};

/** Runs commands one after the other as one person would, with the demo's own address; gives what they print. */
async function printed(...asked: string[]): Promise<string> {
  const script = ['set -euo pipefail', ...asked]
    .join('\n')
    .replaceAll('localhost:8080', address)
    .replaceAll('--out out', `--out ${work}/out`)
    .replaceAll('cd out', `cd ${work}/out`);
  const { stdout } = await run('bash', ['-c', script], { cwd: root, maxBuffer: 16 * 1024 * 1024 });
  return stdout.trim();
}

beforeAll(async () => {
  work = await mkdtemp(join(tmpdir(), 'halfsplit-tour-'));
  commands = await tourCommands();
  const port = await freePort();
  address = `127.0.0.1:${port}`;
  const env = { ...process.env, PORT: String(port), HALFSPLIT_DATA: join(work, 'data'), LOG_LEVEL: 'silent' };
  demo = await startProgram('seed/run-demo.ts', env, `http://${address}`);
}, 200_000);
afterAll(async () => {
  if (demo !== undefined) await stopProgram(demo);
  await rm(work, { recursive: true, force: true });
});

describe('the tour of README', () => {
  it('plays a case, and its packet is what its manifests say', async () => {
    const checked = await printed(commandWith('demo:case'), commandWith('sha256sum'));
    expect(checked).toMatch(/^data\/summary\.html: OK$/m);
    expect(checked).toMatch(/^manifest-sha256\.txt: OK$/m);
    expect(checked).not.toMatch(/FAILED/);
  });

  it('signs in, finds a ticket and writes a note to it, once under its key', async () => {
    const steps = ['TOKEN=', 'AUTH=', 'ID='].map((start) => commandWith(start));
    const note = commandWith('idempotency-key');
    const sequence = 'curl -s localhost:8080/tickets/$ID/log -H "$AUTH"';
    const notesIn = (log: string): number => log.split('The key is with the neighbour.').length - 1;
    const [once, after, twice, still] = (
      await printed(...steps, note, sequence, 'echo', note, sequence)
    ).split('\n');
    expect(once?.split(' ')).toContain('note');
    expect(twice).toBe(once);
    expect(notesIn(after ?? '')).toBe(1);
    expect(notesIn(still ?? '')).toBe(1);
  });

  it('decodes the EDID in the tree', async () => {
    const edid = await printed(commandWith('edid'));
    expect(edid).toContain('L-40');
    expect(edid).toContain('checksums right');
  });

  it('has no command that this test leaves out', () => {
    const tried = ['demo:case', 'sha256sum', 'TOKEN=', 'AUTH=', 'ID=', 'idempotency-key', 'edid'].map(
      commandWith,
    );
    expect(new Set(tried)).toEqual(new Set(commands));
  });
});
