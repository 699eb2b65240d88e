import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  decodeEdid,
  type Edid,
  encodeEdid,
  limitEdid,
  sinkCapabilities,
  summarise,
  summariseSink,
} from '../../shared/signal/edid/index.ts';
import { pair, uhd120 } from '../audit/chains/build.ts';
import { plainDisplay, wallDisplay } from '../signal/edid/build-edid.ts';

/* The programs as they are built, each run as a process of its own. */

const root = join(import.meta.dirname, '../..');
let folder = '';
const at = (name: string): string => join(folder, name);

function run(program: 'edid' | 'chain', args: readonly string[], input: string | Uint8Array = '') {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(root, `dist/server/${program}.js`), ...args],
    { input, encoding: 'utf8', maxBuffer: 1 << 26 },
  );
  return { status, stdout, stderr, lines: stdout.trimEnd().split('\n') };
}
const edid = (...args: string[]) => run('edid', args);
const edidOf = (input: string | Uint8Array, ...args: string[]) => run('edid', args, input);

const wall = encodeEdid(wallDisplay);
const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');
const hex = (bytes: Uint8Array): string => Buffer.from(bytes).toString('hex');

/** All that JSON says of an EDID without a fault, as JSON has it. */
const facts = (tree: Edid) =>
  JSON.parse(JSON.stringify({ ...summarise(decodeEdid(encodeEdid(tree))), sink: summariseSink(tree) }));

beforeAll(() => {
  execFileSync(process.execPath, ['src/cli/build.js', '--if-needed', 'server'], { cwd: root });
  folder = mkdtempSync(join(tmpdir(), 'commands-'));
  writeFileSync(at('wall.bin'), wall);
  writeFileSync(at('plain.hex'), hex(encodeEdid(plainDisplay)));
  writeFileSync(at('broken.bin'), wall.slice().fill(0x5a, 20, 90));
  writeFileSync(at('empty.bin'), '');
  writeFileSync(at('letter.txt'), 'Dear display,\nplease say who you are.\n');
  writeFileSync(at('chain.json'), JSON.stringify(pair()));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe.each(['edid', 'chain'] as const)('the program %s', (program) => {
  const commands = { edid: ['decode', 'check', 'compare', 'limit', 'encode'], chain: ['budget', 'audit'] };

  it('helps on the standard output and ends with 0, whole and for each command', () => {
    const whole = run(program, ['--help']);
    expect(whole).toMatchObject({ status: 0, stderr: '' });
    for (const command of commands[program]) {
      expect(whole.stdout).toContain(command);
      const help = run(program, [command, '--help']);
      expect(help).toMatchObject({ status: 0, stderr: '' });
      expect(help.lines[0]).toContain(command);
      expect(help.stdout).toContain('--help');
    }
  });

  it.each([[[]], [['nothing']], [['--nothing']]])(
    'ends with 2 and its usage on the standard error for %j',
    (words) => {
      expect(run(program, words)).toMatchObject({
        status: 2,
        stdout: '',
        stderr: expect.stringContaining(program),
      });
    },
  );
});

describe('words that are no request', () => {
  it.each([
    ['no file', 'edid', ['decode']],
    ['an option that there is not', 'edid', ['decode', '--txt', 'x']],
    ['one file to compare', 'edid', ['compare', 'x']],
    ['the standard input twice', 'edid', ['compare', '-', '-']],
    ['no limit at all', 'edid', ['limit', 'x']],
    ['a limit that is no number', 'edid', ['limit', '--max-tmds', 'fast', 'x']],
    ['a limit below what every sink takes', 'edid', ['limit', '--max-tmds', '10', 'x']],
    ['two chains', 'chain', ['audit', 'x', 'y']],
  ] as const)('are %s', (_, program, words) => {
    expect(run(program, words)).toMatchObject({ status: 2, stdout: '' });
  });
});

describe('edid decode', () => {
  it('prints one JSON object a line, in the order of the files, binary or hexadecimal', () => {
    const files = ['wall.bin', 'plain.hex', 'broken.bin', 'empty.bin'].map(at);
    const { status, lines } = edid('decode', ...files);
    expect(status).toBe(0);
    const objects = lines.map((line) => JSON.parse(line));
    expect(objects.map(({ file }) => file)).toEqual(files);
    expect(objects[0]).toEqual({ file: at('wall.bin'), ...facts(wallDisplay) });
    expect(objects[1]).toEqual({ file: at('plain.hex'), ...facts(plainDisplay) });
    expect(objects.map(({ ok }) => ok)).toEqual([true, true, false, false]);
  });

  it.each([
    ['binary', wall],
    ['hexadecimal', hex(wall)],
    ['base64', base64(wall)],
    [
      'base64 in lines, after a word',
      `EDID: ${base64(wall)
        .match(/.{1,64}/g)
        ?.join('\n')}\n`,
    ],
  ])('reads %s from the standard input', (_, input) => {
    const { status, lines } = edidOf(input, 'decode', '-');
    expect(status).toBe(0);
    expect(JSON.parse(lines[0] ?? '')).toEqual({ file: '-', ...facts(wallDisplay) });
  });

  it('says so of a file that is not there, goes on, and ends with 1', () => {
    const { status, lines, stderr } = edid('decode', at('nowhere.bin'), at('wall.bin'));
    expect(status).toBe(1);
    expect(stderr).toContain(at('nowhere.bin'));
    const [missing, found] = lines.map((line) => JSON.parse(line));
    expect(missing).toMatchObject({
      ok: false,
      cta: null,
      problems: [{ text: { code: 'edid/fileUnreadable' } }],
    });
    expect(found.productName).toBe('LUMEN WALL 9');
    expect(edid('decode', '--text', at('nowhere.bin'))).toMatchObject({ status: 1, stdout: '' });
  });

  it.each([
    ['a folder', () => folder],
    ['a text without an EDID', () => at('letter.txt')],
  ])('says so of %s', (_, file) => {
    const { status, stderr } = edid('decode', '--text', file());
    expect(status).toBe(1);
    expect(stderr).toContain(file());
  });

  it('stops reading what has no end', () => {
    const endless = Buffer.alloc(5 * 1024 * 1024, 0x55);
    expect(edidOf(endless, 'decode', '--text', '-')).toMatchObject({ status: 1, stdout: '' });
  });

  it('prints text for a person', () => {
    const { status, lines, stdout } = edid('decode', '--text', at('wall.bin'));
    expect(status).toBe(0);
    expect(lines[0]).toBe('Display');
    expect(stdout).toContain('LUMEN WALL 9');
  });

  it('takes what follows -- for files', () => {
    const { status, lines } = edid('decode', '--', '--text');
    expect(status).toBe(1);
    expect(JSON.parse(lines[0] ?? '')).toMatchObject({ file: '--text', ok: false });
  });
});

describe('edid check', () => {
  it('ends with 0 for a good EDID and with 1 for a broken, missing or empty one', () => {
    expect(edid('check', at('wall.bin')).status).toBe(0);
    for (const file of ['broken.bin', 'nowhere.bin', 'empty.bin'])
      expect(edid('check', at('wall.bin'), at(file)).status).toBe(1);
  });

  it('fails warnings when it is strict, and notes never', () => {
    const undeclared = wall.slice();
    undeclared[126] = 0;
    undeclared[127] = (undeclared[127] ?? 0) + 1;
    expect(decodeEdid(undeclared).problems.map(({ severity }) => severity)).toEqual(['warning']);
    expect(edidOf(undeclared, 'check', '-').status).toBe(0);
    expect(edidOf(undeclared, 'check', '--strict', '-').status).toBe(1);
    expect(edidOf(`${hex(wall)}\nmore:\n${hex(wall)}`, 'check', '--strict', '-').status).toBe(0);
  });

  it('names each problem by its code in JSON', () => {
    const { lines } = edid('check', '--json', at('broken.bin'));
    const { ok, problems } = JSON.parse(lines[0] ?? '');
    expect(ok).toBe(false);
    expect(problems.map((problem: { text: { code: string } }) => problem.text.code)).toContain(
      'edid/checksumWrong',
    );
  });
});

describe('edid compare', () => {
  it('ends with 0 and silence for the same, with 1 and the topics for others', () => {
    expect(edid('compare', at('wall.bin'), at('wall.bin'))).toMatchObject({ status: 0, stdout: '' });
    const { status, stdout } = edid('compare', '--json', at('wall.bin'), at('plain.hex'));
    expect(status).toBe(1);
    expect(JSON.parse(stdout).map(({ topic }: { topic: string }) => topic)).toContain('fixedRateLink');
  });

  it('ends with 1 where one is missing', () => {
    expect(edid('compare', at('wall.bin'), at('nowhere.bin')).status).toBe(1);
  });
});

describe('edid limit', () => {
  const limited = (...limits: string[]) => {
    const { status } = edid('limit', ...limits, '-o', at('limited.bin'), at('wall.bin'));
    expect(status).toBe(0);
    const { edid: tree, problems } = decodeEdid(readFileSync(at('limited.bin')));
    if (tree === null) throw new Error('Nothing was written.');
    expect(problems).toEqual([]);
    return sinkCapabilities(tree);
  };

  it('writes what the library makes of the same limits', () => {
    const bytes = encodeEdid(limitEdid(wallDisplay, { maxTmdsCharacterRateMHz: 300, dropFrl: true }));
    const { stdout } = edid('limit', '--max-tmds', '300', '--no-frl', at('wall.bin'));
    expect(stdout.replaceAll('\n', '')).toBe(hex(bytes));
    const inBase64 = edid('limit', '--max-tmds', '300', '--no-frl', '--form', 'base64', at('wall.bin'));
    expect(inBase64.stdout.replaceAll('\n', '')).toBe(base64(bytes));
  });

  it('takes away what each limit names, and leaves the rest', () => {
    const whole = sinkCapabilities(wallDisplay);
    expect(whole).toMatchObject({ frl: { lanes: 4, gbpsPerLane: 10 }, compression: {}, vrr: {} });
    expect(limited('--max-frl', '24')).toMatchObject({
      frl: { lanes: 4, gbpsPerLane: 6 },
      formats: whole.formats,
    });
    expect(limited('--max-frl', '39').frl).toEqual({ lanes: 4, gbpsPerLane: 8 });
    expect(limited('--max-frl', '8')).toEqual(limited('--no-frl'));
    expect(limited('--no-frl')).toMatchObject({ frl: null, compression: null });
    expect(limited('--no-compression')).toMatchObject({ frl: whole.frl, compression: null });
    expect(limited('--no-hdr')).toMatchObject({ eotfs: [], dynamicMetadataTypes: [], vendorVideoOuis: [] });
    expect(limited('--no-vrr')).toMatchObject({ vrr: null, allm: whole.allm });
    expect(limited('--stereo').audio.map(({ channels }) => channels)).toEqual([2]);
    expect(limited('--no-420').depths.ycbcr420).toEqual([]);
  });
});

describe('edid encode', () => {
  const tree = () => JSON.parse(edid('decode', '--tree', at('wall.bin')).stdout);

  it('gives back the bytes that were decoded', () => {
    const { status } = edidOf(JSON.stringify(tree()), 'encode', '-', '--out', at('again.bin'));
    expect(status).toBe(0);
    expect(new Uint8Array(readFileSync(at('again.bin')))).toEqual(wall);
  });

  it('writes a changed field', () => {
    const changed = tree();
    changed.base.productCode = 77;
    const { stdout } = edidOf(JSON.stringify(changed), 'encode', '-');
    expect(summarise(decodeEdid(Buffer.from(stdout.replaceAll('\n', ''), 'hex')))).toMatchObject({
      ok: true,
      productCode: 77,
    });
  });

  it('refuses, with its place, a field that no EDID holds', () => {
    const changed = tree();
    changed.base.revision = 300;
    expect(edidOf(JSON.stringify(changed), 'encode', '-')).toMatchObject({
      status: 1,
      stdout: '',
      stderr: expect.stringContaining('/base/revision'),
    });
    for (const text of ['{', '[]', 'null', '{"base":{}}'])
      expect(edidOf(text, 'encode', '-')).toMatchObject({ status: 1, stdout: '' });
  });
});

describe('chain', () => {
  it('says which formats arrive, and ends with 1 where one does not', () => {
    expect(run('chain', ['budget', at('chain.json')])).toMatchObject({ status: 0, stderr: '' });
    const short = JSON.stringify(pair({}, uhd120));
    const { status, stdout } = run('chain', ['budget', '--json', '-'], short);
    expect(status).toBe(1);
    expect(JSON.parse(stdout).budget.wanted[0].verdict).toBe('short');
  });

  it('audits what a server would reply with, and ends with 1 for what must be put right', () => {
    expect(run('chain', ['audit', at('chain.json')]).status).toBe(0);
    const reversed = pair({ construction: 'activeOptical', direction: 'reversed' });
    const reply = JSON.stringify({ id: 'x', version: 3, chain: reversed });
    const { status, stdout } = run('chain', ['audit', '--json', '-'], reply);
    expect(status).toBe(1);
    expect(JSON.parse(stdout)[0]).toMatchObject({ severity: 'mustFix', place: { kind: 'link' } });
  });

  it.each([
    ['no JSON', '{'],
    ['no chain', '{}'],
    ['a chain that can not be', JSON.stringify({ ...pair(), devices: [] })],
  ])('refuses %s', (_, text) => {
    for (const command of ['audit', 'budget']) {
      const { status, stdout, stderr } = run('chain', [command, '-'], text);
      expect({ status, stdout }).toEqual({ status: 1, stdout: '' });
      expect(stderr).not.toBe('');
    }
  });
});
