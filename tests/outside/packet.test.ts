/*
 * Packets against programs and texts that nobody here wrote: Info-ZIP's `unzip`, GNU coreutils' `sha256sum`,
 * `openssl`, and RFC 8493 (The BagIt File Packaging Format), sections 2, 3 and 4.1. A missing program fails the test.
 */
import { execFile } from 'node:child_process';
import { createHash, generateKeyPairSync } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { promisify } from 'node:util';
import canonicalize from 'canonicalize';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { erasedText } from '../../shared/contract/erased-text.ts';
import type { BagFile } from '../../shared/contract/packet.ts';
import { message } from '../../shared/message/index.ts';
import { type EvidenceStore, openEvidenceStore } from '../../src/evidence-store/index.ts';
import { bagDeclaration, manifest, payloadOxum } from '../../src/features/packets/bag.ts';
import { bagFolder } from '../../src/features/packets/packet-files.ts';
import { storeBag } from '../../src/features/packets/store-bag.ts';
import { caseSummary } from '../../src/features/packets/summary/index.ts';
import { zipOf } from '../../src/features/packets/zip.ts';
import type { LoggedEvent } from '../../src/features/ticket-record/index.ts';
import { homeCinema } from '../chain/build-chain.ts';
import { aCase, anItem, at, technicianId, ticketId, uuid } from '../features/packets/a-case.ts';

const run = promisify(execFile);
const orgId = uuid(5);
const { privateKey } = generateKeyPairSync('ed25519');
const photo = Buffer.alloc(150_000, 'not quite a photo ');
const log = Buffer.from('12:00:01 sync lost\n'.repeat(20_000));

let work: string;
let store: EvidenceStore;
let files: BagFile[];
let bag: string;
const file = aCase();

beforeAll(async () => {
  work = await mkdtemp(join(tmpdir(), 'packet-'));
  store = await openEvidenceStore({ folder: join(work, 'store') });
  const evidence = [
    { ...anItem(1), ...(await kept(photo)) },
    anItem(2, {
      kind: 'log',
      fileName: '../../Log %0A "über".txt',
      mediaType: 'text/plain',
      ...(await kept(log)),
    }),
    { ...anItem(3, { description: 'The same photo again' }), ...(await kept(photo)) },
  ];
  files = await storeBag({ store, signingKey: privateKey }, orgId, {
    file: aCase({ evidence }),
    events: chained(40),
    timeline: [{ at: at(1), kind: 'event', actorName: 'Robin', text: message('log/ticketOpened'), ref: {} }],
    chainVersions: [
      {
        version: 1,
        changedAt: at(-700),
        changedBy: technicianId,
        changes: [message('firstDescription')],
        chain: homeCinema(),
      },
    ],
    summary: caseSummary(file, new Map()),
    damage: [],
  });
  const zip = join(work, 'packet.zip');
  await writeZip(zip);
  await run('unzip', ['-q', zip, '-d', join(work, 'unpacked')]);
  bag = join(work, 'unpacked', bagFolder(file));
});
afterAll(() => rm(work, { recursive: true, force: true }));

async function kept(bytes: Buffer): Promise<{ sha256: string; sizeBytes: number }> {
  const content = await store.put(orgId, Readable.from([bytes]), { maxBytes: 1e9 });
  if (!content.ok) throw new Error('not kept');
  return { sha256: content.sha256, sizeBytes: content.sizeBytes };
}

const writeZip = (path: string): Promise<void> =>
  pipeline(
    zipOf({ folder: bagFolder(file), files, madeAt: new Date(file.packet.createdAt) }, ({ sha256 }) =>
      store.get(orgId, sha256),
    ),
    createWriteStream(path),
  );

/** A log as the service keeps it: each event's hash is over its RFC 8785 form, which names the hash before. */
function chained(count: number): LoggedEvent[] {
  const events: LoggedEvent[] = [];
  for (let sequence = 1; sequence <= count; sequence += 1) {
    const entry = {
      ticketId,
      sequence,
      type: 'note',
      payload: {
        text: `"previousHash":"${'e'.repeat(64)}" ° \\ {"text":{"sha256":"${'d'.repeat(64)}"}} ${sequence}`,
        previousHash: 'not the real one',
      },
      actorId: technicianId,
      at: at(sequence),
      machineVersion: 1,
      previousHash: events.at(-1)?.hash ?? '0'.repeat(64),
    };
    events.push(
      sequence % 3 === 0 ? withDigest(entry) : { ...entry, format: 1, texts: [], hash: hashOf(entry) },
    );
  }
  return events;
}

const hashOf = (hashed: object): string =>
  createHash('sha256')
    .update(canonicalize(hashed) ?? '')
    .digest('hex');

type Entry = Omit<LoggedEvent, 'hash' | 'format' | 'texts'>;

/** In format 2 the text's digest is hashed in its place; every other one of these is erased. */
function withDigest(entry: Entry): LoggedEvent {
  const salt = entry.sequence % 2 === 0 ? null : 'a1'.repeat(32);
  const written = `Line one,\nline two of ${entry.sequence}: °`;
  const sha256 = createHash('sha256')
    .update(`${'a1'.repeat(32)}${written}`)
    .digest('hex');
  const hash = hashOf({ ...entry, format: 2, payload: { ...entry.payload, text: { text: { sha256 } } } });
  const text = salt === null ? erasedText({ at: at(50), by: technicianId }) : written;
  const texts = [{ pointer: '/text', salt, text, sha256 }];
  return { ...entry, payload: { ...entry.payload, text }, format: 2, texts, hash };
}

/** Runs a check in the bag's folder: its exit code, and all it printed. */
async function check(command: string, ...args: string[]): Promise<{ code: number; said: string }> {
  try {
    const { stdout, stderr } = await run(command, args, { cwd: bag });
    return { code: 0, said: stdout + stderr };
  } catch (error) {
    const { code, stdout, stderr } = error as { code: number | string; stdout: string; stderr: string };
    if (typeof code !== 'number') throw error;
    return { code, said: stdout + stderr };
  }
}

const linesOf = async (name: string): Promise<string[]> =>
  (await readFile(join(bag, name), 'utf8')).split('\n').slice(0, -1);

const listed = async (name: string): Promise<string[]> => (await linesOf(name)).map((line) => line.slice(66));

async function present(folder: string): Promise<string[]> {
  const entries = await readdir(join(bag, folder), { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => relative(bag, join(entry.parentPath, entry.name)))
    .sort();
}

describe('sha256sum verifies a packet', () => {
  test.each(['manifest-sha256.txt', 'tagmanifest-sha256.txt'])('%s holds', async (name) => {
    const { code, said } = await check('sha256sum', '--strict', '-c', name);
    expect({ code, said }).toMatchObject({ code: 0 });
    expect(said.match(/: OK\n/g)).toHaveLength((await listed(name)).length);
  });

  test.each(['manifest-sha256.txt', 'tagmanifest-sha256.txt'])(
    'one changed byte of any file of %s fails',
    async (name) => {
      for (const path of await listed(name)) {
        const whole = await readFile(join(bag, path));
        const changed = Buffer.from(whole);
        const middle = Math.floor(whole.length / 2);
        changed[middle] = (whole[middle] ?? 0) ^ 1;
        await writeFile(join(bag, path), changed);
        const { code, said } = await check('sha256sum', '--strict', '-c', name);
        await writeFile(join(bag, path), whole);
        expect({ path, code }).toEqual({ path, code: 1 });
        expect(said).toContain(`${path}: FAILED`);
      }
    },
  );
});

describe('openssl verifies who signed a packet', () => {
  const verify = () =>
    check('openssl', ...'pkeyutl -verify -pubin -inkey public-key.pem -rawin'.split(' '), ...of);
  const of = '-in tagmanifest-sha256.txt -sigfile tagmanifest-sha256.sig'.split(' ');

  test('and that a changed tag manifest is not what was signed', async () => {
    expect(await verify()).toMatchObject({ code: 0 });
    const path = join(bag, 'tagmanifest-sha256.txt');
    const whole = await readFile(path);
    await writeFile(path, Buffer.concat([whole, Buffer.from('\n')]));
    const { code } = await verify();
    await writeFile(path, whole);
    expect(code).not.toBe(0);
  });
});

describe('RFC 8493', () => {
  test('sections 2.1.1 and 2.1.2: the declaration is exactly two lines, and there is a payload folder', async () => {
    expect(await readFile(join(bag, 'bagit.txt'), 'utf8')).toBe(
      'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n',
    );
    expect((await stat(join(bag, 'data'))).isDirectory()).toBe(true);
  });

  test('section 3, complete: the manifest lists every payload file once and nothing else', async () => {
    expect((await listed('manifest-sha256.txt')).sort()).toEqual(await present('data'));
  });

  test('section 2.2.1: the tag manifest lists every tag file but itself and the signature over it, and no payload', async () => {
    const tags = (await present('.')).filter(
      (path) => !path.startsWith('data/') && !path.startsWith('tagmanifest-sha256.'),
    );
    expect((await listed('tagmanifest-sha256.txt')).sort()).toEqual(tags);
  });

  test('section 2.2.2: Payload-Oxum is what lies in the payload folder; elements are label, colon, space, value', async () => {
    const info = await linesOf('bag-info.txt');
    const paths = await present('data');
    const sizes = await Promise.all(paths.map(async (path) => (await stat(join(bag, path))).size));
    expect(info).toContain(`Payload-Oxum: ${sizes.reduce((sum, size) => sum + size, 0)}.${paths.length}`);
    expect(info).toContain('Bagging-Date: 2026-11-20');
    for (const line of info) expect(line).toMatch(/^([^:\s][^:]*: \S|[ \t]+\S)/);
  });

  test('section 4.1: the layout and the manifest lines of its basic bag', () => {
    // The example shows MD5 for brevity; a manifest has the same form whatever the algorithm.
    const example: [string, string][] = [
      ['49afbd86a1ca9f34b677a3f09655eae9', 'data/27613-h/images/q172.png'],
      ['408ad21d50cef31da4df6d9ed81b01a7', 'data/27613-h/images/q172.txt'],
    ];
    const lines = manifest(example.map(([sha256, path]) => ({ sha256, path, sizeBytes: 0 })));
    expect(
      lines
        .trimEnd()
        .split('\n')
        .map((line) => line.split(/[ \t]+/)),
    ).toEqual(example);
    expect(bagDeclaration.split('\n')[1]).toBe('Tag-File-Character-Encoding: UTF-8');
  });

  test('section 2.2.2: the Payload-Oxum of its example', () => {
    const payload = Array.from({ length: 1198 }, (_, index) => ({
      path: `data/${index}`,
      sha256: '',
      sizeBytes: index === 0 ? 279_164_409_832 - 1197 : 1,
    }));
    expect(payloadOxum(payload)).toBe('279164409832.1198');
  });

  test('section 5.1: no name leads out of the folder', async () => {
    for (const path of files.map((each) => each.path))
      expect(path).toMatch(/^(data\/)?([a-z]+\/)?[A-Za-z0-9_-]+\.[a-z0-9]+$/);
    expect(await present('data/evidence')).toEqual([
      'data/evidence/001-photo-IMG-0042.jpg',
      'data/evidence/002-log-Log-0A-uber.txt',
      'data/evidence/003-photo-IMG-0042.jpg',
    ]);
  });
});

test('the evidence in the bag is the evidence that was kept', async () => {
  expect((await readFile(join(bag, 'data/evidence/001-photo-IMG-0042.jpg'))).equals(photo)).toBe(true);
  expect((await readFile(join(bag, 'data/evidence/002-log-Log-0A-uber.txt'))).equals(log)).toBe(true);
});

describe('the log verifies as its own text says', () => {
  /** The indented lines of the text, as the reader would paste them. */
  async function steps(): Promise<[string, string, string]> {
    const text = await readFile(join(bag, 'data/log/HOW-TO-VERIFY.txt'), 'utf8');
    const [first, second, third] = text.split(/\n\n/).filter((block) => block.startsWith('   '));
    if (first === undefined || second === undefined || third === undefined)
      throw new Error('the text has no three steps');
    return [first, second, third];
  }
  const inLog = (script: string) => check('bash', '-c', `cd data/log; set -o pipefail; ${script}`);

  test('a log that nobody touched', async () => {
    const [hashes, chain, texts] = await steps();
    expect(await inLog(texts)).toEqual({ code: 0, said: 'every text is as it was stored, or erased\n' });
    expect(await inLog(hashes)).toEqual({ code: 0, said: 'every event is as it was stored\n' });
    expect(await inLog(chain)).toEqual({ code: 0, said: 'the chain of events is whole\n' });
  });

  test('a word changed in an event, and an event taken out with its hash', async () => {
    const [hashes, chain] = await steps();
    const paths = ['data/log/events.jsonl', 'data/log/hashes.txt'].map((path) => join(bag, path));
    const before = await Promise.all(paths.map((path) => readFile(path, 'utf8')));
    await writeFile(paths[0] ?? '', (before[0] ?? '').replace('}} 7"', '}} 8"'));
    expect(await readFile(paths[0] ?? '', 'utf8')).not.toBe(before[0]);
    expect((await inLog(hashes)).code).toBe(1);
    for (const [index, path] of paths.entries()) {
      const lines = (before[index] ?? '').split('\n');
      await writeFile(path, lines.filter((_, at) => at !== 12).join('\n'));
    }
    expect(await inLog(hashes)).toMatchObject({ code: 0 });
    expect((await inLog(chain)).code).toBe(1);
    await Promise.all(paths.map((path, index) => writeFile(path, before[index] ?? '')));
  });

  test('a word changed in a text, and a text left out', async () => {
    const [, , texts] = await steps();
    const path = join(bag, 'data/log/texts.txt');
    const before = await readFile(path, 'utf8');
    expect(before).toContain(' erased ');
    const lines = before.split('\n');
    const there = lines.findIndex((line) => !line.includes(' erased '));
    const [event, place, digest, content] = (lines[there] ?? '').split(' ');
    const changed = `${Buffer.from(content ?? '', 'base64')}!`;
    const line = [event, place, digest, Buffer.from(changed).toString('base64')].join(' ');
    await writeFile(path, lines.with(there, line).join('\n'));
    expect((await inLog(texts)).code).toBe(1);
    await writeFile(path, lines.toSpliced(there, 1).join('\n'));
    expect((await inLog(texts)).code).toBe(1);
    await writeFile(path, before);
    expect((await inLog(texts)).code).toBe(0);
  });
});

describe('the zip', () => {
  test('unzip finds nothing wrong with it', async () => {
    await run('unzip', ['-tq', join(work, 'packet.zip')]);
  });

  test('the same version gives the same bytes, in another time zone too', async () => {
    const first = await readFile(join(work, 'packet.zip'));
    const zone = process.env.TZ;
    process.env.TZ = 'Pacific/Auckland';
    try {
      await writeZip(join(work, 'again.zip'));
    } finally {
      if (zone === undefined) delete process.env.TZ;
      else process.env.TZ = zone;
    }
    expect((await readFile(join(work, 'again.zip'))).equals(first)).toBe(true);
  });

  test('a file that is gone from the store ends the stream with an error', async () => {
    const broken = zipOf(
      {
        folder: 'case',
        files: [{ path: 'data/x.txt', sha256: 'b'.repeat(64), sizeBytes: 3 }],
        madeAt: new Date(0),
      },
      (each) => store.get(orgId, each.sha256),
    );
    await expect(pipeline(broken, createWriteStream(join(work, 'broken.zip')))).rejects.toThrow('ENOENT');
  });
});
