import { describe, expect, it } from 'vitest';
import {
  compareEdids,
  decodeEdid,
  type Edid,
  type EdidLimits,
  encodeEdid,
  limitEdid,
  type SinkCapabilities,
  type SinkFormat,
  sinkCapabilities,
  summarise,
} from '../../../shared/signal/edid/index.ts';
import {
  audioBlock,
  baseBlock,
  ctaExtension,
  forumBlock,
  hdmiBlock,
  plainDisplay,
  timingSlot,
  videoBlock,
  wallDisplay,
} from './build-edid.ts';
import { limitedAsSeen } from './limited-as-seen.ts';

const nineGbit: EdidLimits = { maxTmdsCharacterRateMHz: 300, dropFrl: true };

const vicsOf = (sink: SinkCapabilities, in420?: SinkFormat['in420']): number[] =>
  sink.formats.flatMap(({ source, in420: how }) =>
    source.kind === 'vic' && (in420 === undefined || how === in420) ? [source.vic] : [],
  );

describe('limiting to 300 MHz (9 Gbit/s)', () => {
  const sink = sinkCapabilities(limitedAsSeen(wallDisplay, nineGbit));

  it('admits 300 MHz in the HDMI block and nothing above in the HDMI Forum block', () => {
    expect(sink.maxTmdsCharacterRateMHz).toBe(300);
    const summary = summarise(decodeEdid(encodeEdid(limitEdid(wallDisplay, nineGbit))));
    expect(summary.cta?.hdmi?.maxTmdsClockMHz).toBe(300);
    expect(summary.cta?.hdmiForum).toMatchObject({
      maxTmdsCharacterRateMHz: null,
      scdc: false,
      frl: null,
      dsc: false,
    });
  });

  it('keeps what fits, moves 2160p50 and 60 to 4:2:0 alone, and drops 2160p100 and 120', () => {
    expect(vicsOf(sink, 'no').toSorted((a, b) => a - b)).toEqual([4, 16, 31, 93]);
    expect(vicsOf(sink, 'only').toSorted((a, b) => a - b)).toEqual([96, 97]);
    expect(vicsOf(sink, 'too')).toEqual([]);
  });

  it('begins with a timing that fits', () => {
    expect(sink.formats[0]).toMatchObject({
      source: { kind: 'detailed', block: 'base' },
      timing: { widthPx: 1920, heightPx: 1080, pixelClockKHz: 148_500 },
    });
  });

  it('drops 2160p60 altogether where 4:2:0 goes too', () => {
    const without = sinkCapabilities(limitedAsSeen(wallDisplay, { ...nineGbit, drop420: true }));
    expect(vicsOf(without).toSorted((a, b) => a - b)).toEqual([4, 16, 31, 93]);
    expect(without.depths.ycbcr420).toEqual([]);
  });

  it('puts a timing first that the sink lists when none in the base block fits', () => {
    const display: Edid = {
      base: baseBlock({
        descriptors: [timingSlot(97), timingSlot(97), { kind: 'dummy' }, { kind: 'dummy' }],
      }),
      extensions: [
        ctaExtension([videoBlock(4, 16, 97), hdmiBlock(), forumBlock({ maxFrlCode: 0, dsc: null })]),
      ],
    };
    expect(sinkCapabilities(limitedAsSeen(display, nineGbit)).formats[0]?.timing).toMatchObject({
      widthPx: 1920,
      heightPx: 1080,
      pixelClockKHz: 148_500,
    });
  });

  it('leaves formats alone while a fixed rate link carries them', () => {
    const stillFrl = sinkCapabilities(limitedAsSeen(wallDisplay, { maxTmdsCharacterRateMHz: 600 }));
    expect(stillFrl.maxTmdsCharacterRateMHz).toBe(600);
    expect(stillFrl.frl).toEqual({ lanes: 4, gbpsPerLane: 10 });
    expect(vicsOf(stillFrl)).toEqual(vicsOf(sinkCapabilities(wallDisplay)));
  });

  it.each([
    [300, undefined, null],
    [594, undefined, null],
    [300, 9, null],
    [594, 40, { lanes: 3, gbpsPerLane: 3 }],
    [600, 24, { lanes: 4, gbpsPerLane: 6 }],
  ])('takes fixed rates with it that no such sink has: %i MHz, %s Gbit/s', (rate, maxFrlGbps, frl) => {
    const limits = { maxTmdsCharacterRateMHz: rate, ...(maxFrlGbps !== undefined && { maxFrlGbps }) };
    expect(sinkCapabilities(limitedAsSeen(wallDisplay, limits)).frl).toEqual(frl);
  });

  it('keeps the positions that a capability map counts by', () => {
    const display: Edid = {
      base: baseBlock({
        descriptors: [timingSlot(16), { kind: 'dummy' }, { kind: 'dummy' }, { kind: 'dummy' }],
      }),
      extensions: [
        ctaExtension([
          videoBlock(118, 97, 16, 95),
          hdmiBlock(),
          { kind: 'ycbcr420Map', map: Uint8Array.of(0b1111) },
        ]),
      ],
    };
    const limited = sinkCapabilities(limitedAsSeen(display, { maxTmdsCharacterRateMHz: 300 }));
    expect(vicsOf(limited, 'too')).toEqual([16, 95]);
    expect(vicsOf(limited, 'only')).toEqual([97]);
  });

  it('brings range limits down, wherever they are, and drops preferences for what is gone', () => {
    const [limits] = wallDisplay.base.descriptors.slice(3);
    if (!limits) throw new Error('The display has no range limits.');
    const display: Edid = {
      base: wallDisplay.base,
      extensions: [
        ctaExtension(
          [videoBlock(16, 97), hdmiBlock(), { kind: 'formatPreference', references: [97, 16, 129] }],
          { timings: [limits] },
        ),
      ],
    };
    const limited = limitedAsSeen(display, { maxTmdsCharacterRateMHz: 300 });
    const [cta] = limited.extensions;
    const slots = [...limited.base.descriptors, ...(cta?.kind === 'cta' ? cta.timings : [])];
    const clocks = slots.flatMap((slot) =>
      slot.kind === 'rangeLimits' ? [slot.limits.maxPixelClockMHz] : [],
    );
    expect(clocks).toEqual([300, 300]);
    expect(cta?.kind === 'cta' && cta.dataBlocks.at(-1)).toMatchObject({
      kind: 'formatPreference',
      references: [16],
    });
  });

  it('states a rate where the sink stated none and the limit is lower', () => {
    const silent: Edid = {
      base: baseBlock({
        descriptors: [timingSlot(4), { kind: 'dummy' }, { kind: 'dummy' }, { kind: 'dummy' }],
      }),
      extensions: [
        ctaExtension([videoBlock(4, 16), hdmiBlock({ capabilities: null, maxTmdsClockMHz: null })]),
      ],
    };
    const limited = sinkCapabilities(limitedAsSeen(silent, { maxTmdsCharacterRateMHz: 100 }));
    expect(limited).toMatchObject({ maxTmdsCharacterRateMHz: 100, tmdsRateStated: true });
    expect(vicsOf(limited)).toEqual([4]);
  });
});

describe('dropping', () => {
  it('the fixed rate link leaves what 600 MHz carries', () => {
    const sink = sinkCapabilities(limitedAsSeen(wallDisplay, { dropFrl: true }));
    expect(sink.frl).toBeNull();
    expect(sink.compression).toBeNull();
    expect(sink.maxTmdsCharacterRateMHz).toBe(600);
    expect(vicsOf(sink, 'only').toSorted((a, b) => a - b)).toEqual([117, 118]);
    expect(vicsOf(sink)).toContain(97);
  });

  it('4:2:0 leaves the formats in their other encodings', () => {
    const sink = sinkCapabilities(limitedAsSeen(wallDisplay, { drop420: true }));
    expect(vicsOf(sink, 'no')).toEqual(vicsOf(sinkCapabilities(wallDisplay)));
    expect(sink.depths.ycbcr420).toEqual([]);
  });

  it('HDR leaves SDR, and no dynamic system of a vendor', () => {
    const sink = sinkCapabilities(limitedAsSeen(wallDisplay, { dropHdr: true }));
    expect(sink).toMatchObject({ eotfs: [], vendorVideoOuis: [], dynamicMetadataTypes: [] });
    expect(sink.colorimetry).toContain('BT2020RGB');
  });

  it('everything but stereo leaves two channels of L-PCM at the rates they had', () => {
    const sink = sinkCapabilities(limitedAsSeen(wallDisplay, { stereoOnly: true }));
    expect(sink.audio).toEqual([
      { format: 'Linear PCM', channels: 2, ratesKHz: [48, 44.1, 32], sampleSizes: [16, 20, 24] },
    ]);
    expect(sink.speakers).toEqual(['FL/FR']);
    expect(sink.basicAudio).toBe(true);
  });

  it('nothing changes nothing', () => {
    expect(encodeEdid(limitEdid(wallDisplay, {}))).toEqual(encodeEdid(wallDisplay));
    expect(compareEdids(plainDisplay, limitEdid(plainDisplay, {}), 'overTime')).toEqual([]);
    expect(encodeEdid(limitEdid(plainDisplay, { dropFrl: true }))).toEqual(encodeEdid(plainDisplay));
  });

  it('a video timing extension keeps the block map right', () => {
    const display: Edid = {
      base: baseBlock({
        descriptors: [timingSlot(16), { kind: 'dummy' }, { kind: 'dummy' }, { kind: 'dummy' }],
      }),
      extensions: [
        { kind: 'blockMap', tags: [0x10, 0x02, ...new Array<number>(124).fill(0)] },
        { kind: 'other', tag: 0x10, content: new Uint8Array(126) },
        ctaExtension([videoBlock(16), audioBlock, hdmiBlock()]),
      ],
    };
    const limited = limitedAsSeen(display, { maxTmdsCharacterRateMHz: 300 });
    expect(limited.extensions.map(({ kind }) => kind)).toEqual(['blockMap', 'cta']);
    expect(limited.extensions[0]).toEqual({ kind: 'blockMap', tags: [2, ...new Array<number>(125).fill(0)] });
  });
});
