import { describe, expect, it } from 'vitest';
import type { BaseBlock } from '../../../shared/signal/edid/base/base-block.ts';
import {
  decodeEdid,
  type Edid,
  encodeEdid,
  readableText,
  summarise,
} from '../../../shared/signal/edid/index.ts';
import {
  baseBlock,
  ctaExtension,
  forumBlock,
  hdmiBlock,
  plainDisplay,
  timingSlot,
  videoBlock,
  wallDisplay,
} from './build-edid.ts';

const summaryOf = (edid: Edid) => summarise(decodeEdid(encodeEdid(edid)));

/** Every path of the shape that the issue asks for; list items under `[]`. */
const shape = [
  'ok problems version manufacturer productCode serialNumber productName productSerial week year modelYear',
  'blockCount checksumsValid preferredTiming detailedTimings cta',
].flatMap((names) => names.split(' '));
const ctaShape = [
  'revision underscan basicAudio ycbcr444 ycbcr422 vics ycbcr420Vics ycbcr420CapabilityVics hdmi hdmiForum',
  'colorimetry hdrStatic audio',
].flatMap((names) => names.split(' '));

describe('the summary of an EDID', () => {
  it('has every field of its shape, absent ones as null or empty lists', () => {
    const full = summaryOf(wallDisplay);
    expect(Object.keys(full)).toEqual(shape);
    expect(Object.keys(full.cta ?? {})).toEqual(ctaShape);
    const none = summarise(decodeEdid(new Uint8Array()));
    expect(Object.keys(none)).toEqual(shape);
    const { ok, problems, blockCount, checksumsValid, detailedTimings, ...absent } = none;
    expect([ok, problems.length, blockCount, checksumsValid, detailedTimings]).toEqual([
      false,
      1,
      0,
      false,
      [],
    ]);
    expect(Object.values(absent).every((value) => value === null)).toBe(true);
  });

  it('gives the facts of a display', () => {
    expect(summaryOf(wallDisplay)).toMatchObject({
      ok: true,
      problems: [],
      version: '1.3',
      manufacturer: 'QZV',
      productCode: 0x1207,
      serialNumber: null,
      productName: 'LUMEN WALL 9',
      productSerial: null,
      week: 12,
      year: 2024,
      modelYear: null,
      blockCount: 2,
      checksumsValid: true,
      preferredTiming: {
        widthPx: 3840,
        heightPx: 2160,
        interlaced: false,
        refreshHz: 60,
        pixelClockKHz: 594_000,
      },
      cta: {
        revision: 3,
        vics: [16, 31, 97, 96, 118, 117, 93, 4].map((vic) => ({ vic, native: false })),
        ycbcr420Vics: [],
        ycbcr420CapabilityVics: [97, 96, 118, 117],
        hdmi: {
          physicalAddress: '1.0.0.0',
          maxTmdsClockMHz: 300,
          deepColor: { dc30: true, dc36: true, dc48: false, y444: true },
          hdmiVics: [],
        },
        hdmiForum: {
          version: 1,
          maxTmdsCharacterRateMHz: 600,
          scdc: true,
          deepColor420: { dc30: true, dc36: true, dc48: false },
          frl: { lanes: 4, gbpsPerLane: 10 },
          allm: true,
          vrrMinHz: 48,
          vrrMaxHz: 120,
          dsc: true,
        },
        colorimetry: ['BT2020cYCC', 'BT2020YCC', 'BT2020RGB'],
        hdrStatic: {
          eotfs: ['Traditional gamma - SDR luminance range', 'SMPTE ST2084', 'Hybrid Log-Gamma'],
          maxLuminanceCdM2: 603.666,
          maxFrameAverageCdM2: 400,
          minLuminanceCdM2: 0.073,
        },
      },
    });
  });

  it('counts the lines of the frame of an interlaced timing, and its fields a second', () => {
    const interlaced = { ...plainDisplay, base: baseBlock({ descriptors: [timingSlot(5), ...dummies] }) };
    expect(summaryOf(interlaced).preferredTiming).toEqual({
      widthPx: 1920,
      heightPx: 1080,
      interlaced: true,
      refreshHz: 60,
      pixelClockKHz: 74_250,
    });
  });

  it('joins the lists of several extensions in order, without what an earlier one had', () => {
    const cta = summaryOf({
      base: baseBlock(),
      extensions: [ctaExtension([videoBlock(-16, 4, 4)]), ctaExtension([videoBlock(97, 4, 16)])],
    }).cta;
    expect(cta?.vics).toEqual([
      { vic: 16, native: true },
      { vic: 4, native: false },
      { vic: 4, native: false },
      { vic: 97, native: false },
      { vic: 16, native: false },
    ]);
  });

  it('has a model year in place of a date of making', () => {
    const base = baseBlock({ manufacture: { kind: 'modelYear', year: 2023 } });
    expect(summaryOf({ base, extensions: [] })).toMatchObject({
      week: null,
      year: null,
      modelYear: 2023,
      cta: null,
    });
  });

  it.each([
    [0, null],
    [1, { lanes: 3, gbpsPerLane: 3 }],
    [2, { lanes: 3, gbpsPerLane: 6 }],
    [3, { lanes: 4, gbpsPerLane: 6 }],
    [4, { lanes: 4, gbpsPerLane: 8 }],
    [5, { lanes: 4, gbpsPerLane: 10 }],
    [6, { lanes: 4, gbpsPerLane: 12 }],
    [7, null],
  ])('reads FRL code %i (HDMI 2.1 table 10-5)', (maxFrlCode, frl) => {
    const edid = { base: baseBlock(), extensions: [ctaExtension([hdmiBlock(), forumBlock({ maxFrlCode })])] };
    expect(summaryOf(edid).cta?.hdmiForum?.frl).toEqual(frl);
  });
});

describe('the text of an EDID', () => {
  const text = readableText(decodeEdid(encodeEdid(wallDisplay)), ({ code }) => code);

  it.each([
    'Name                  LUMEN WALL 9',
    'Made                  2024, week 12',
    'TMDS                  600 MHz (18 Gbit/s)',
    'Fixed rate link       40 Gbit/s (4 lanes of 10)',
    'Transfer functions    SDR, PQ, HLG',
    '3840x2160p120          1188.000 MHz  VIC 118, 4:2:0 too',
    'Depths                RGB 8/10/12 bit, YCbCr 4:4:4 8/10/12 bit',
    'vendor block of OUI 02-A1-B2',
    '2 blocks, checksums right',
  ])('says %s', (part) => {
    expect(text).toContain(part);
  });

  it('tells rates and depths of TMDS only where the display is reached by it', () => {
    const analog = {
      kind: 'analog' as const,
      signalLevelCode: 0,
      blankToBlack: false,
      separateSync: true,
      compositeSync: false,
      syncOnGreen: false,
      serrations: false,
    };
    const port = (name: 'DVI' | 'DisplayPort') =>
      ({ kind: 'digital', bitsPerColour: 10, interface: name }) as const;
    const rows = (input: BaseBlock['input'], extensions: Edid['extensions'] = []) => {
      const edid = { base: baseBlock({ revision: 4, input }), extensions };
      const text = readableText(decodeEdid(encodeEdid(edid)), ({ code }) => code);
      return text.split('\n').filter((line) => /^ {2}(TMDS|Depths) /.test(line)).length;
    };
    expect(rows(analog)).toBe(0);
    expect(rows(port('DisplayPort'))).toBe(0);
    expect(rows(port('DVI'))).toBe(2);
    expect(rows(port('DisplayPort'), [ctaExtension([hdmiBlock()])])).toBe(2);
  });

  it('puts problems first', () => {
    const bytes = encodeEdid(wallDisplay);
    bytes[200] = 0;
    expect(
      readableText(decodeEdid(bytes), ({ code }) => code)
        .split('\n')
        .slice(0, 2),
    ).toEqual(['Problems', '  error, block 1, byte 127: edid/checksumWrong']);
  });
});

const dummies = [{ kind: 'dummy' as const }, { kind: 'dummy' as const }, { kind: 'dummy' as const }];
