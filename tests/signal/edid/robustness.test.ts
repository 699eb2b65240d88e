import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { message } from '../../../shared/message/index.ts';
import {
  type DecodedEdid,
  decodeEdid,
  encodeEdid,
  readableText,
  readEdidInput,
  sinkCapabilities,
  summarise,
} from '../../../shared/signal/edid/index.ts';
import { edid } from './arbitrary-edid.ts';
import { wallDisplay } from './build-edid.ts';
import { keyOf, statedIn } from './stated-formats.ts';

/** The bound for one EDID of up to 32 KiB, in milliseconds of processor time. */
const mostMs = 50;

const header = [0x00, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0x00];

function cpuMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Decodes, and again where that is too slow, up to twenty-five times: other work on the machine isn't ours. */
function decodedInTime(content: Uint8Array): DecodedEdid {
  for (let attempt = 1; ; attempt += 1) {
    const from = cpuMs();
    const decoded = decodeEdid(readEdidInput(content).bytes);
    summarise(decoded);
    const took = cpuMs() - from;
    if (took >= mostMs && attempt < 25) continue;
    expect(took).toBeLessThan(mostMs);
    return decoded;
  }
}

const anyBytes = fc.uint8Array({ maxLength: 32_768, size: 'max' });
const blocksOfCta = fc
  .array(fc.uint8Array({ minLength: 125, maxLength: 125 }), { maxLength: 255, size: 'max' })
  .map((blocks) => Uint8Array.from([...header, ...new Array(120).fill(1), ...blocks.flatMap(ctaBlock)]));

function ctaBlock(bytes: Uint8Array): number[] {
  return [2, 3, 127, ...bytes];
}

/** 255 extensions of that content, which is repeated until a block is full. */
function filledWith(...content: number[]): Uint8Array {
  const bytes = new Uint8Array(32_768);
  bytes.set([...header, ...new Array(10).fill(1), 1, 4]);
  for (let block = 1; block < 256; block += 1) {
    bytes.set([2, 3, 127, 0xf0], block * 128);
    for (let at = 4; at + content.length <= 127; at += content.length) bytes.set(content, block * 128 + at);
  }
  return bytes;
}

/** How many mutations are tried; `EDID_MUTATIONS=100000` for a long run. */
const mutationRuns = Number(process.env.EDID_MUTATIONS ?? 300);

const mutations = fc.array(fc.tuple(fc.nat(), fc.integer({ min: 1, max: 255 })), {
  minLength: 1,
  maxLength: 16,
});

/** Several of each EDID, since making one up takes longer than reading it. */
const damagesEach = 10;
const mutated = fc.array(fc.tuple(mutations, fc.nat(400)), {
  minLength: damagesEach,
  maxLength: damagesEach,
});

function damagedBy(whole: Uint8Array, changes: readonly [number, number][], cut: number): Uint8Array {
  const bytes = whole.slice(0, cut < 40 ? whole.length - cut : whole.length);
  for (const [at, change] of changes) {
    const place = at % whole.length;
    if (place < bytes.length) bytes[place] = (bytes[place] ?? 0) ^ change;
  }
  return bytes;
}

/** Facts, capabilities and text, and no format that the bytes don't state. */
function expectReadable(bytes: Uint8Array): void {
  const decoded = decodedInTime(bytes);
  const summary = summarise(decoded);
  expect(JSON.parse(JSON.stringify(summary))).toEqual(summary);
  expect(readableText(decoded, ({ code }) => code)).toContain('Blocks');
  if (!decoded.edid) return;
  const { maxTmdsCharacterRateMHz, formats } = sinkCapabilities(decoded.edid);
  expect(maxTmdsCharacterRateMHz).toBeGreaterThan(0);
  const stated = statedIn(bytes);
  expect(formats.filter((format) => !stated.has(keyOf(format)))).toEqual([]);
}

describe('EDID decoding of whatever comes', () => {
  it('takes any bytes up to 32 KiB in time', () => {
    fc.assert(
      fc.property(fc.oneof(anyBytes, blocksOfCta), (content) => {
        const decoded = decodedInTime(content);
        expect(decoded.edid !== null || decoded.problems.length > 0).toBe(true);
        const { bytes } = readEdidInput(content);
        if (decoded.checksumsValid) expect(bytes.reduce((sum, value) => sum + value, 0) % 256).toBe(0);
        else expect(summarise(decoded).ok).toBe(false);
      }),
      { numRuns: 60, endOnFailure: true },
    );
  });

  it.each([
    ['empty data blocks', filledWith(0x00)],
    ['empty blocks of an unknown tag', filledWith(0xc0)],
    ['capability maps of everything', filledWith(0xe1, 15)],
    ['video and maps in turn', filledWith(0x43, 16, 97, 4, 0xe1, 15)],
    ['maps that never name all', filledWith(0x43, 16, 97, 4, 0xe2, 15, 1)],
    ['video formats', filledWith(0xdf, 2, ...new Array(10).fill([0xc9, 0xff, 1]).flat())],
    ['audio', filledWith(0x3e, ...new Array(30).fill(0x0f))],
    ['timings', filledWith(0x40, 0x1b, ...new Array(16).fill(0x55))],
    ['lines of one byte', new TextEncoder().encode('a0\n'.repeat(10_900))],
    ['offsets alone', new TextEncoder().encode('1234: '.repeat(5400))],
    ['comments that never end', new TextEncoder().encode('/*'.repeat(16_384))],
    ['spaces', new TextEncoder().encode(' '.repeat(32_768))],
  ])('takes 32 KiB of %s in time', (_, content) => {
    decodedInTime(content);
  });

  it('finds the damaged checksum in any EDID with one byte changed', () => {
    fc.assert(
      fc.property(edid, fc.nat(), fc.integer({ min: 1, max: 255 }), (tree, place, change) => {
        const bytes = encodeEdid(tree);
        const at = place % bytes.length;
        bytes[at] = (bytes[at] ?? 0) ^ change;
        const decoded = decodeEdid(bytes);
        const block = Math.floor(at / 128);
        expect(decoded.checksumsValid).toBe(false);
        expect(decoded.problems).toContainEqual(
          expect.objectContaining({
            severity: 'error',
            block,
            offset: 127,
            text: expect.objectContaining({ code: expect.stringMatching(/checksum/i) }),
          }),
        );
        expect(summarise(decoded).ok).toBe(false);
      }),
      { numRuns: 300 },
    );
  });

  it('gives facts, capabilities and text for any mutation of an EDID, and no format that it does not state', () => {
    fc.assert(
      fc.property(edid, mutated, (tree, damages) => {
        const whole = encodeEdid(tree);
        for (const [changes, cut] of damages) expectReadable(damagedBy(whole, changes, cut));
      }),
      { numRuns: Math.ceil(mutationRuns / damagesEach), endOnFailure: true },
    );
  }, 600_000);
});

it('would tell of a format that no byte states', () => {
  const formats = sinkCapabilities(wallDisplay).formats;
  const [whole, baseAlone] = [encodeEdid(wallDisplay), encodeEdid({ ...wallDisplay, extensions: [] })];
  const untold = (bytes: Uint8Array) =>
    formats.filter((format) => !statedIn(bytes).has(keyOf(format))).length;
  expect(untold(whole)).toBe(0);
  expect(untold(baseAlone)).toBeGreaterThan(8);
});

describe('what is wrong with an EDID', () => {
  const whole = encodeEdid(wallDisplay);
  const errorsOf = (bytes: Uint8Array) =>
    decodeEdid(bytes)
      .problems.filter(({ severity }) => severity === 'error')
      .map(({ block, offset, text: { code, values } }) => [`${block}/${offset}`, code, values]);

  it('is nothing for a good one', () => {
    expect(decodeEdid(whole).problems).toEqual([]);
  });

  it('is said with block and byte for a damaged header', () => {
    const bytes = Uint8Array.from(whole);
    bytes[1] = 0xfe;
    bytes[127] = ((bytes[127] ?? 0) + 1) % 256;
    expect(errorsOf(bytes)).toEqual([['0/1', 'edid/headerDamaged', {}]]);
    expect(summarise(decodeEdid(bytes)).productName).toBe('LUMEN WALL 9');
  });

  it('is said for a block that is cut off, and the rest is read', () => {
    const decoded = decodeEdid(whole.slice(0, 200));
    expect(errorsOf(whole.slice(0, 200))[0]).toEqual(['1/72', 'edid/blockCutOff', { bytes: 72, of: 128 }]);
    expect(decoded.blockCount).toBe(2);
    expect(summarise(decoded).cta?.vics.length).toBe(8);
  });

  it('is said for an extension that is missing', () => {
    expect(errorsOf(whole.slice(0, 128))).toEqual([
      ['0/126', 'edid/extensionsMiscounted', { declared: 1, present: 0 }],
    ]);
  });

  it.each([
    ['nothing', new Uint8Array(), message('edid/noBytes')],
    ['zeros', new Uint8Array(256), message('edid/emptyMemory', { byte: '00' })],
    ['all FFh', new Uint8Array(256).fill(255), message('edid/emptyMemory', { byte: 'FF' })],
    ['a few bytes', Uint8Array.of(0, 255, 255), message('edid/tooFewBytes', { bytes: 3 })],
  ])('is that there is nothing to read in %s', (_, bytes, text) => {
    const decoded = decodeEdid(bytes);
    expect(decoded.edid).toBeNull();
    expect(decoded.problems.map((problem) => problem.text)).toEqual([text]);
    expect(summarise(decoded)).toMatchObject({
      ok: false,
      manufacturer: null,
      detailedTimings: [],
      cta: null,
    });
  });

  it('is said for a data block that runs over the end', () => {
    const bytes = Uint8Array.from(whole);
    bytes[128 + 2] = 9;
    bytes[255] = 0;
    const sum = bytes.subarray(128, 255).reduce((total, part) => total + part, 0);
    bytes[255] = (256 - (sum % 256)) % 256;
    expect(errorsOf(bytes)).toContainEqual(['1/4', 'edid/dataBlockOverruns', { bytes: 8 }]);
  });
});
