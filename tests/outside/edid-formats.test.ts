import { describe, expect, it } from 'vitest';
import type { Descriptor } from '../../shared/signal/edid/base/descriptors.ts';
import type { StandardTiming } from '../../shared/signal/edid/base/standard-timings.ts';
import type { DisplayIdExtension } from '../../shared/signal/edid/displayid/extension.ts';
import type { DetailedTimingType } from '../../shared/signal/edid/displayid/timings.ts';
import { type Edid, encodeEdid, sinkCapabilities } from '../../shared/signal/edid/index.ts';
import { baseBlock, ctaExtension, timingSlot } from '../signal/edid/build-edid.ts';
import { referenceOutput } from './edid-decode-output.ts';
import { formatsFromReference, formatsOf } from './edid-formats.ts';

/*
 * The rasters of what an EDID names without describing them, against Debian's edid-decode: established and standard
 * timings, three-byte codes, and the blocks of DisplayID that list codes or sizes.
 */

const dummy: Descriptor = { kind: 'dummy' };
const range = (kind: 'defaultGtf' | 'cvt'): Descriptor => ({
  kind: 'rangeLimits',
  limits: {
    minVerticalHz: 23,
    maxVerticalHz: 120,
    minHorizontalKHz: 15,
    maxHorizontalKHz: 255,
    maxPixelClockMHz: 600,
    timing:
      kind === 'defaultGtf'
        ? { kind }
        : {
            kind,
            version: 0x11,
            clockSteps: 0,
            maxActivePx: 0,
            aspectFlags: 0xf8,
            preferredAspectCode: 0,
            standardBlanking: true,
            reducedBlanking: false,
            scalingFlags: 0,
            preferredRefreshHz: 60,
          },
  },
});

const sizes: StandardTiming[] = [
  { widthPx: 1720, aspect: '16:9', refreshHz: 72 },
  { widthPx: 1000, aspect: '4:3', refreshHz: 90 },
  { widthPx: 1920, aspect: '16:9', refreshHz: 60 },
  { widthPx: 1600, aspect: '16:10', refreshHz: 100 },
  { widthPx: 1280, aspect: '5:4', refreshHz: 75 },
  { widthPx: 2288, aspect: '16:10', refreshHz: 61 },
  { widthPx: 512, aspect: '4:3', refreshHz: 123 },
  { widthPx: 1366 - 6, aspect: '16:9', refreshHz: 60 },
];

const baseOnly = (revision: number, ...slots: Descriptor[]): Edid => ({
  base: baseBlock({
    revision,
    ...(revision >= 4 && { input: { kind: 'digital', bitsPerColour: 8, interface: 'HDMI-a' } }),
    establishedBits: [255, 255, 128],
    standardTimings: sizes,
    descriptors: [timingSlot(16), ...slots, dummy, dummy, dummy].slice(0, 4),
  }),
  extensions: [],
});

const cvtCodes: Descriptor = {
  kind: 'cvtCodes',
  codes: [
    { lines: 1080, aspect: '16:9', preferredRateCode: 1, rateFlags: 31 },
    { lines: 1200, aspect: '16:10', preferredRateCode: 0, rateFlags: 17 },
    { lines: 768, aspect: '15:9', preferredRateCode: 1, rateFlags: 8 },
    { lines: 600, aspect: '4:3', preferredRateCode: 2, rateFlags: 6 },
  ],
};

const inCtaSlots: Edid = {
  base: baseBlock({ revision: 4, input: { kind: 'digital', bitsPerColour: 8, interface: 'HDMI-a' } }),
  extensions: [
    ctaExtension([], {
      timings: [
        timingSlot(4),
        cvtCodes,
        { kind: 'standardTimings', timings: sizes.slice(0, 6) },
        { kind: 'establishedTimingsIII', bits: [255, 0, 0, 0, 0, 0] },
      ],
    }),
  ],
};

const section = (version: 1 | 2, tag: number, flags: number, payload: readonly number[]): Edid => {
  const extension: DisplayIdExtension = {
    kind: 'displayId',
    version,
    revision: version === 1 ? 3 : 0,
    productTypeCode: 3,
    extensionCount: 0,
    blocks: [{ kind: 'unknown', tag, flags, payload: Uint8Array.from(payload) }],
  };
  return { base: baseBlock({ revision: 3 }), extensions: [extension] };
};

const inCtaBlock = (extendedTag: number, ...payload: number[]): Edid => ({
  base: baseBlock({ revision: 3 }),
  extensions: [
    ctaExtension([{ kind: 'unknown', tag: 7, extendedTag, payload: Uint8Array.from(payload) }], {
      timings: [],
    }),
  ],
});

const interlaced = (type: DetailedTimingType, blankLines: number): Edid => {
  const horizontal = { active: 1920, blank: 280, frontPorch: 88, sync: 40, positiveSync: true };
  const vertical = { active: 1080, blank: blankLines, frontPorch: 4, sync: 10, positiveSync: true };
  const extension: DisplayIdExtension = {
    kind: 'displayId',
    version: type === 'VII' ? 2 : 1,
    revision: 0,
    productTypeCode: 3,
    extensionCount: 0,
    blocks: [
      {
        kind: 'timings',
        type,
        flags: 0,
        timings: [
          {
            pixelClockKHz: 74_250,
            preferred: true,
            interlaced: true,
            stereoCode: 0,
            aspectCode: type === 'I' || type === 'VII' ? 4 : null,
            horizontal,
            vertical,
            imageSize: null,
          },
        ],
      },
    ],
  };
  return { base: baseBlock({ revision: 3 }), extensions: [extension] };
};

const everyBit = (bytes: number): number[] => new Array<number>(bytes).fill(255);
const hd60 = [0x7f, 0x07, 0x37, 0x04, 59];
const uhd144 = [0xff, 0x0e, 0x6f, 0x08, 143];

const cases: [string, Edid][] = [
  ['established and standard timings of 1.3', baseOnly(3, range('defaultGtf'))],
  ['those of 1.4 without range limits', baseOnly(4)],
  ['those of 1.4 with the default GTF', baseOnly(4, range('defaultGtf'))],
  [
    'every established timing III',
    baseOnly(4, { kind: 'establishedTimingsIII', bits: [...everyBit(5), 0xf0] }),
  ],
  ['three-byte codes', baseOnly(4, cvtCodes)],
  ['all of these in the slots of a CTA-861 extension', inCtaSlots],
  ['DMT codes of type IV', section(1, 0x06, 0, [4, 9, 0x52, 0x58])],
  ['CTA-861 codes of type IV', section(1, 0x06, 0x40, [1, 16, 97, 219])],
  ['HDMI codes of type IV', section(1, 0x06, 0x80, [1, 2, 3, 4])],
  ['every bit of the DMT list', section(1, 0x07, 0, everyBit(10))],
  ['every bit of the CTA-861 list', section(1, 0x08, 0, everyBit(8))],
  ['short timings of type III', section(1, 0x05, 0, [0x84, 239, 59, 0x14, 159, 74, 0x05, 209, 59])],
  ['short timings of type V', section(1, 0x11, 0, [0x80, 0, ...hd60, 0, 0, ...uhd144])],
  ['codes of one byte of type VIII', section(2, 0x23, 0, [4, 9])],
  ['codes of two bytes of type VIII', section(2, 0x23, 0x48, [16, 0, 97, 0])],
  ...(['I', 'II', 'VI', 'VII'] as const).flatMap((type) =>
    [44, 45].map((lines): [string, Edid] => [
      `an interlaced one of type ${type} with ${lines} blank lines`,
      interlaced(type, lines),
    ]),
  ),
  [
    'a timing of type VII in a data block of CTA-861',
    inCtaBlock(
      0x22,
      2,
      ...[0xff, 0xff, 1, 0x88, 0x7f, 7, 0x17, 1, 0x57, 0x80, 0x2b, 0, 0x37, 4, 0x2c, 0, 3, 0x80, 4, 0],
    ),
  ],
  ['codes of type VIII in a data block of CTA-861', inCtaBlock(0x23, 0x21, 4, 9)],
  ['codes of two bytes there', inCtaBlock(0x23, 0x09, 16, 0, 0x52, 0)],
  ['codes of another list there, which mean nothing', inCtaBlock(0x23, 0x41, 16, 97)],
  ['formulas of type X in a data block of CTA-861', inCtaBlock(0x2a, 0, 0x80, ...hd60, 2, ...uhd144)],
  ['formulas with a long rate there', inCtaBlock(0x2a, 0x10, 3, ...hd60, 1, 1, ...uhd144, 0)],
  ['formulas of type IX', section(2, 0x24, 0, [0, ...hd60, 1, ...hd60, 2, ...hd60, 2, ...uhd144])],
];

describe('timings that an EDID names', () => {
  it.each(cases)('are those of edid-decode: %s', (_, tree) => {
    const output = referenceOutput(encodeEdid(tree)) ?? '';
    const theirs = formatsFromReference(output);
    expect(theirs.length).toBeGreaterThan(1);
    expect(formatsOf(tree)).toEqual(theirs);
  });

  it('are made by CVT where the range limits of 1.4 say so: what it prints for such sources', () => {
    const tree = baseOnly(4, range('cvt'));
    const output = referenceOutput(encodeEdid(tree)) ?? '';
    const others = output.split('\n').filter((line) => !line.endsWith('(EDID 1.3 source)'));
    expect(output.split('\n').length - others.length).toBeGreaterThan(3);
    expect(formatsOf(tree)).toEqual(formatsFromReference(others.join('\n')));
  });
});

describe('what else a section says of its panel', () => {
  const tile = [0x82, 0x21, 0x10, 0, 0xff, 0x0e, 0x6f, 0x08, 0, 0, 0, 0, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9];
  it.each([
    [1, 0x12],
    [2, 0x28],
  ] as const)('are its tiles: version %i', (version, tag) => {
    const tree = section(version, tag, 0, tile);
    const output = referenceOutput(encodeEdid(tree)) ?? '';
    const found =
      /horizontal tiles: (\d+) .*vertical tiles: (\d+)\s+Tile location: (\d+), (\d+)\s+Tile resolution: (\d+)x(\d+)/.exec(
        output,
      );
    const [columns, rows, column, row, widthPx, heightPx] = (found ?? []).slice(1).map(Number);
    expect(columns).toBe(3);
    expect(sinkCapabilities(tree).tiling).toEqual({ columns, rows, column, row, widthPx, heightPx });
  });

  it('are the rates that it follows', () => {
    const dynamic = section(2, 0x25, 1, [0x10, 0x20, 0, 0x10, 0x80, 9, 48, 44, 0x81]);
    const text = referenceOutput(encodeEdid(dynamic)) ?? '';
    const figure = (name: string) => Number(new RegExp(`${name}: (\\d+)`).exec(text)?.[1]);
    expect(sinkCapabilities(dynamic).refreshRange).toEqual({
      minHz: figure('Minimum Vertical Refresh Rate'),
      maxHz: figure('Maximum Vertical Refresh Rate'),
      minPixelClockKHz: figure('Minimum Pixel Clock'),
      maxPixelClockKHz: figure('Maximum Pixel Clock'),
      seamless: text.includes('Timing Support: Yes'),
    });
    const limits = section(1, 0x09, 0, [1, 2, 0, 9, 80, 1, 30, 200, 50, 0, 24, 144, 10, 0, 0x80]);
    const [, least, most] =
      /Pixel Clock: ([\d.]+)-([\d.]+) MHz/.exec(referenceOutput(encodeEdid(limits)) ?? '') ?? [];
    expect(sinkCapabilities(limits).refreshRange).toMatchObject({
      minHz: 24,
      maxHz: 144,
      minPixelClockKHz: Math.round(Number(least) * 1000),
      maxPixelClockKHz: Math.round(Number(most) * 1000),
    });
  });
});
