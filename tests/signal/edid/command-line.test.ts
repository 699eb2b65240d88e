import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { decodeEdid, encodeEdid, summarise } from '../../../shared/signal/edid/index.ts';
import { plainDisplay, wallDisplay } from './build-edid.ts';

const command = join(import.meta.dirname, '../../../src/cli/edid.ts');
let folder = '';
const at = (name: string) => join(folder, name);

function run(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', command, ...args], {
    encoding: 'utf8',
    cwd: join(import.meta.dirname, '../../..'),
  });
  return { status, lines: stdout.trimEnd().split('\n'), stderr };
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'edid-'));
  writeFileSync(at('wall.bin'), encodeEdid(wallDisplay));
  writeFileSync(at('plain.hex'), Buffer.from(encodeEdid(plainDisplay)).toString('hex'));
  writeFileSync(at('broken.bin'), encodeEdid(wallDisplay).fill(0x5a, 20, 90));
  writeFileSync(at('empty.bin'), '');
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the edid command', () => {
  it('prints one JSON object a line, in the order of the files, binary or hex', () => {
    const files = [at('wall.bin'), at('plain.hex'), at('broken.bin'), at('empty.bin')];
    const { status, lines } = run('decode', ...files);
    expect(status).toBe(0);
    const objects = lines.map((line) => JSON.parse(line));
    expect(objects.map(({ file }) => file)).toEqual(files);
    expect(objects[0]).toEqual({ file: at('wall.bin'), ...summarise(decodeEdid(encodeEdid(wallDisplay))) });
    expect(objects[1]).toEqual({ file: at('plain.hex'), ...summarise(decodeEdid(encodeEdid(plainDisplay))) });
    expect(objects.map(({ ok }) => ok)).toEqual([true, true, false, false]);
  });

  it('goes on after a file that can not be read, and ends with 1', () => {
    const { status, lines } = run('decode', at('nowhere.bin'), at('wall.bin'));
    expect(status).toBe(1);
    const [missing, wall] = lines.map((line) => JSON.parse(line));
    expect(missing).toMatchObject({ file: at('nowhere.bin'), ok: false, manufacturer: null, cta: null });
    expect(missing.problems[0].text).toMatchObject({
      code: 'edid/fileUnreadable',
      values: { reason: expect.stringContaining('ENOENT') },
      text: expect.stringContaining('ENOENT'),
    });
    expect(wall.productName).toBe('LUMEN WALL 9');
  });

  it('prints text for a person with --text', () => {
    const { status, lines } = run('decode', '--text', at('wall.bin'));
    expect(status).toBe(0);
    expect(lines[0]).toBe('Display');
    expect(lines.join('\n')).toContain('LUMEN WALL 9');
  });

  it('says how to use it', () => {
    expect(run()).toMatchObject({ status: 2, stderr: expect.stringContaining('decode [--text] FILE...') });
    expect(run('decode').status).toBe(2);
    expect(run('decode', '--txt', at('wall.bin'))).toMatchObject({ status: 2, lines: [''] });
  });

  it('takes what follows -- for files', () => {
    const { status, lines } = run('decode', '--', '--text');
    expect(status).toBe(1);
    expect(JSON.parse(lines[0] ?? '')).toMatchObject({ file: '--text', ok: false });
  });
});
