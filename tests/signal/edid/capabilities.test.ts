import { describe, expect, it } from 'vitest';
import { decodeEdid, type Edid, encodeEdid, sinkCapabilities } from '../../../shared/signal/edid/index.ts';
import { refreshHz } from '../../../shared/signal/timings/index.ts';
import {
  baseBlock,
  ctaExtension,
  forumBlock,
  hdmiBlock,
  hdrBlock,
  videoBlock,
  wallDisplay,
} from './build-edid.ts';

const displayOf = (...blocks: Parameters<typeof ctaExtension>[0]): Edid => ({
  base: baseBlock({
    descriptors: [{ kind: 'dummy' }, { kind: 'dummy' }, { kind: 'dummy' }, { kind: 'dummy' }],
  }),
  extensions: [ctaExtension(blocks)],
});

describe('what a sink accepts', () => {
  it('is read off an EDID with everything', () => {
    const sink = sinkCapabilities(wallDisplay);
    expect(sink).toMatchObject({
      hdmi: true,
      maxTmdsCharacterRateMHz: 600,
      tmdsRateStated: true,
      frl: { lanes: 4, gbpsPerLane: 10 },
      depths: { rgb: [8, 10, 12], ycbcr444: [8, 10, 12], ycbcr422: [8, 10, 12], ycbcr420: [8, 10, 12] },
      eotfs: ['sdr', 'pq', 'hlg'],
      colorimetry: ['BT2020cYCC', 'BT2020YCC', 'BT2020RGB'],
      vendorVideoOuis: ['02-A1-B2'],
      scdc: true,
      allm: true,
      vrr: { minHz: 48, maxHz: 120 },
      physicalAddress: '1.0.0.0',
    });
    expect(sink.compression).toEqual({
      maxRate: { lanes: 4, gbpsPerLane: 10 },
      maxSlices: 8,
      maxSliceClockMHz: 340,
      maxLineBytes: 8192,
      allTargets: false,
      native420: true,
      bitsPerComponent: [10, 12],
    });
    // 50 × 2^(115/32), 50 × 2^(96/32) and 603.6 × (28/255)² / 100, by CTA-861-H section 7.5.13.
    expect(sink.luminance.max).toBeCloseTo(603.67, 1);
    expect(sink.luminance.maxFrameAverage).toBe(400);
    expect(sink.luminance.min).toBeCloseTo(0.0728, 4);
  });

  it.each([
    [
      'one byte: 24 Hz, and 25, 30, 50 and 60 Hz by default',
      [0x80, 0xc4],
      ['24', '25', '30', '50', '60'],
      'too',
    ],
    ['two bytes: once and eight times 30 Hz, 144 Hz', [0x01, 0x0b, 0xc9], ['30', '144', '240'], 'no'],
    ['three bytes: 48 Hz and nothing else', [0x02, 0x0b, 0x00, 0x01], ['48'], 'no'],
    ['a code without a meaning', [0x00, 0x3f], [], 'no'],
    ['half a descriptor at its end', [0x01, 0x0b], [], 'no'],
  ])('lists the rates of a video format block: %s', (_, payload, rates, in420) => {
    const bytes = encodeEdid(
      displayOf({ kind: 'unknown', tag: 6, extendedTag: null, payload: Uint8Array.from(payload) }),
    );
    const { edid } = decodeEdid(bytes);
    const formats = edid ? sinkCapabilities(edid).formats : [];
    const listed = formats.filter(({ source }) => source.kind === 'rid');
    expect(listed.map(({ timing }) => refreshHz(timing).toFixed(0))).toEqual(rates);
    for (const format of listed) expect(format.in420).toBe(in420);
    expect(edid && encodeEdid(edid)).toEqual(bytes);
  });

  it('lists formats with how they take 4:2:0', () => {
    const sink = sinkCapabilities(wallDisplay);
    const vics = sink.formats.flatMap(({ source, in420 }) =>
      source.kind === 'vic' ? [[source.vic, in420]] : [],
    );
    expect(vics).toEqual([
      [16, 'no'],
      [31, 'no'],
      [97, 'too'],
      [96, 'too'],
      [118, 'too'],
      [117, 'too'],
      [93, 'no'],
      [4, 'no'],
    ]);
    expect(sink.formats[0]?.source).toEqual({ kind: 'detailed', block: 'base' });
  });

  it('is RGB of 8 bits at 165 MHz for a DVI display', () => {
    const dvi: Edid = {
      base: baseBlock({ revision: 4, descriptors: displayOf().base.descriptors }),
      extensions: [],
    };
    expect(sinkCapabilities(dvi)).toMatchObject({
      hdmi: false,
      maxTmdsCharacterRateMHz: 165,
      tmdsRateStated: false,
      depths: { rgb: [8], ycbcr444: [], ycbcr422: [], ycbcr420: [] },
      audio: [],
    });
  });

  it('takes the rate of the fastest format listed where none is stated', () => {
    const silent = displayOf(videoBlock(95), hdmiBlock({ capabilities: null, maxTmdsClockMHz: null }));
    expect(sinkCapabilities(silent)).toMatchObject({ maxTmdsCharacterRateMHz: 297, tmdsRateStated: false });
  });

  it('takes the HDMI Forum rate over the other only above 340 MHz', () => {
    const rate = (maxTmdsCharacterRateMHz: number) =>
      sinkCapabilities(displayOf(hdmiBlock(), forumBlock({ maxTmdsCharacterRateMHz })))
        .maxTmdsCharacterRateMHz;
    expect(rate(0)).toBe(300);
    expect(rate(340)).toBe(300);
    expect(rate(345)).toBe(345);
  });

  // HDMI 2.1 table 10-5 ends at code 6, 48 Gbit/s; later standards count on (from memory).
  it('counts a code of a later fixed rate as 48 Gbit/s at least, and says so', () => {
    for (const [maxFrlCode, gbpsPerLane, notes] of [
      [6, 12, 0],
      [7, 12, 1],
      [15, 12, 1],
    ] as const) {
      const shown = displayOf(hdmiBlock(), forumBlock({ maxFrlCode }));
      const { edid, problems } = decodeEdid(encodeEdid(shown));
      expect(edid && sinkCapabilities(edid).frl).toEqual({ lanes: 4, gbpsPerLane });
      const said = problems.filter(({ text }) => text.code === 'edid/frlRateUnknown');
      expect(said.map(({ severity }) => severity)).toEqual(Array(notes).fill('note'));
    }
  });

  it('says so too where it is compression that a later fixed rate is for', () => {
    const forum = forumBlock();
    const dsc = forum.kind === 'hdmiForum' ? forum.forum.dsc : null;
    for (const dsc12a of [true, false]) {
      const shown = displayOf(hdmiBlock(), forumBlock({ dsc: dsc && { ...dsc, dsc12a, maxFrlCode: 9 } }));
      const { edid, problems } = decodeEdid(encodeEdid(shown));
      const compression = edid && sinkCapabilities(edid).compression;
      expect(compression?.maxRate).toEqual(dsc12a ? { lanes: 4, gbpsPerLane: 12 } : undefined);
      const said = problems.filter(({ text }) => text.code === 'edid/frlRateUnknown');
      expect(said).toHaveLength(dsc12a ? 1 : 0);
    }
  });

  it('leaves 4:4:4 at 8 bits where deep colour is said for RGB alone', () => {
    const flags = { supportsAi: false, dc48: false, dc36: true, dc30: true, dcY444: false, dviDual: false };
    expect(sinkCapabilities(displayOf(hdmiBlock({ capabilities: flags }))).depths).toEqual({
      rgb: [8, 10, 12],
      ycbcr444: [8],
      ycbcr422: [8, 10, 12],
      ycbcr420: [],
    });
  });

  it('says nothing of luminances written as 0', () => {
    const silent = { ...hdrBlock };
    if (silent.kind === 'hdrStatic') silent.hdr = { ...silent.hdr, maxLuminanceCode: 0, minLuminanceCode: 0 };
    expect(sinkCapabilities(displayOf(hdmiBlock(), silent)).luminance).toEqual({
      max: null,
      maxFrameAverage: 400,
      min: null,
    });
  });

  it('finds the rasters of established and standard timings in DMT', () => {
    const old: Edid = {
      base: baseBlock({
        establishedBits: [0x21, 0, 0],
        standardTimings: [
          { widthPx: 1920, aspect: '16:10', refreshHz: 60 },
          { widthPx: 1600, aspect: '4:3', refreshHz: 60 },
          null,
          null,
          null,
          null,
          null,
          null,
        ],
        descriptors: displayOf().base.descriptors,
      }),
      extensions: [],
    };
    // VESA DMT 1.0 rev. 13: ids 45h, 33h, 04h and 09h.
    expect(sinkCapabilities(old).formats.map(({ timing }) => timing.pixelClockKHz)).toEqual([
      193_250, 162_000, 25_175, 40_000,
    ]);
  });

  it('takes timings from DisplayID', () => {
    const tiled: Edid = {
      base: baseBlock(),
      extensions: [
        {
          kind: 'displayId',
          version: 2,
          revision: 0,
          productTypeCode: 2,
          extensionCount: 0,
          blocks: [
            {
              kind: 'timings',
              type: 'VII',
              flags: 0,
              timings: [
                {
                  pixelClockKHz: 1_075_804,
                  preferred: true,
                  interlaced: false,
                  stereoCode: 0,
                  aspectCode: 4,
                  horizontal: { active: 3840, blank: 160, frontPorch: 48, sync: 32, positiveSync: true },
                  vertical: { active: 2160, blank: 81, frontPorch: 3, sync: 5, positiveSync: false },
                  imageSize: null,
                },
              ],
            },
          ],
        },
      ],
    };
    const format = sinkCapabilities(tiled).formats.find(({ source }) => source.kind === 'displayId');
    expect(format?.timing).toMatchObject({ widthPx: 3840, heightPx: 2160, pixelClockKHz: 1_075_804 });
    expect(format?.timing.vertical).toMatchObject({ frontPorch: 3, sync: 5, backPorch: 73 });
  });
});
