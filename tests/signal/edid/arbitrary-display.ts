import fc from 'fast-check';
import type { BaseBlock } from '../../../shared/signal/edid/base/base-block.ts';
import type { Descriptor } from '../../../shared/signal/edid/base/descriptors.ts';
import type { DataBlock } from '../../../shared/signal/edid/cta/data-blocks.ts';
import { type CtaExtension, ctaSpaceLeft } from '../../../shared/signal/edid/cta/extension.ts';
import type { DisplayIdExtension } from '../../../shared/signal/edid/displayid/extension.ts';
import type { DisplayIdTiming } from '../../../shared/signal/edid/displayid/timings.ts';
import type { Edid } from '../../../shared/signal/edid/index.ts';
import { detailedOfRaster } from '../../../shared/signal/edid/raster.ts';
import {
  blankingTotal,
  ctaTimings,
  cvtTiming,
  dmtTimings,
  lineRateKHz,
  refreshHz,
  type Timing,
} from '../../../shared/signal/timings/index.ts';
import { referenceDataBlock } from './arbitrary-data-blocks.ts';
import { byte, fitting, flags, int, letters, listOf } from './arbitrary-parts.ts';
import { baseBlock, forumBlock, hdmiBlock } from './build-edid.ts';

/**
 * Random EDIDs of displays that could be sold: sizes, rates and limits in one block go with those in the others, which
 * random fields (`edid`) don't. Timings are those of the standards' lists.
 */

const vicsOf = (fits: (timing: Timing) => boolean): number[] =>
  [...ctaTimings].flatMap(([vic, timing]) => (fits(timing) ? [vic] : []));
const inSlots = vicsOf((timing) => detailedOfRaster(timing) !== null && !timing.interlaced);
const upTo8k = vicsOf((timing) => timing.widthPx <= 7680);
const fast = vicsOf((timing) => timing.widthPx === 3840 && timing.pixelClockKHz > 590_000);

const rasters = [
  ...inSlots.map((vic) => ctaTimings.get(vic)),
  ...[...dmtTimings.values()].filter((timing) => detailedOfRaster(timing) !== null),
  ...[60, 75, 100].map((rate) =>
    cvtTiming({ widthPx: 2560, heightPx: 1440, refreshHz: rate, blanking: 'reduced1' }),
  ),
].filter((timing) => timing !== undefined);

type Size = { widthCm: number; heightCm: number };

const size: fc.Arbitrary<Size> = fc
  .tuple(int(40, 220), fc.constantFrom(9 / 16, 10 / 16, 27 / 64))
  .map(([widthCm, ratio]) => ({ widthCm, heightCm: Math.round(widthCm * ratio) }));

function slotOf(timing: Timing, { widthCm, heightCm }: Size): Descriptor {
  const detailed = detailedOfRaster(timing, { width: widthCm * 10, height: heightCm * 10 });
  if (!detailed) throw new Error('Chosen so that it fits.');
  return { kind: 'timing', timing: detailed };
}

/** Limits that every timing of the lists keeps to. */
const rangeOf = (timings: readonly Timing[]): Descriptor => ({
  kind: 'rangeLimits',
  limits: {
    minVerticalHz: 23,
    maxVerticalHz: Math.min(255, Math.ceil(Math.max(120, ...timings.map(refreshHz)))),
    minHorizontalKHz: 15,
    maxHorizontalKHz: Math.min(255, Math.ceil(Math.max(160, ...timings.map(lineRateKHz)))),
    maxPixelClockMHz:
      Math.ceil(Math.max(340_000, ...timings.map(({ pixelClockKHz }) => pixelClockKHz)) / 10_000) * 10,
    timing: { kind: 'defaultGtf' },
  },
});

const standard = fc.option(
  fc.record({
    widthPx: fc.constantFrom(1024, 1152, 1280, 1440, 1600, 1680, 1920),
    aspect: fc.constantFrom('16:10' as const, '4:3' as const, '5:4' as const, '16:9' as const),
    refreshHz: fc.constantFrom(60, 70, 75, 85),
  }),
);

const baseOf = (screen: Size): fc.Arbitrary<BaseBlock> =>
  fc
    .record({
      timings: fc.uniqueArray(fc.constantFrom(...rasters), { minLength: 1, maxLength: 2 }),
      name: letters(8),
      established: fc.tuple(byte, byte, fc.constant(0)),
      standardTimings: listOf(standard, 8),
      revision: fc.constantFrom(3, 4),
      serialNumber: int(0, 0xffff),
      withRange: fc.boolean(),
    })
    .map(({ timings, name, established, withRange, revision, ...rest }) => {
      const others: Descriptor[] = [
        { kind: 'text', role: 'productName', text: name },
        ...(withRange || revision === 3 ? [rangeOf(timings)] : []),
        { kind: 'dummy' },
        { kind: 'dummy' },
      ];
      return baseBlock({
        ...rest,
        revision,
        ...(revision >= 4 && { input: { kind: 'digital', bitsPerColour: 10, interface: 'HDMI-a' } }),
        screen: { kind: 'size', ...screen },
        establishedBits: [established[0] | 0x20, established[1], 0],
        descriptors: [...timings.map((timing) => slotOf(timing, screen)), ...others].slice(0, 4),
      });
    });

const wantedKinds: ReadonlySet<DataBlock['kind']> = new Set([
  'audio',
  'colorimetry',
  'hdrStatic',
  'hdrDynamic',
  'vendor',
  'room',
  'speakers',
  'speakerLocations',
]);
/** One block of each kind, as a display has them. */
const others = fc
  .array(referenceDataBlock, { minLength: 6, maxLength: 24 })
  .map((blocks) =>
    blocks.filter(({ kind }, i) => wantedKinds.has(kind) && blocks.findIndex((b) => b.kind === kind) === i),
  );

const hdmiBlocks = fc.constantFrom<{ tmds: number; frl: number | null }>(
  { tmds: 165, frl: null },
  { tmds: 225, frl: null },
  { tmds: 300, frl: null },
  { tmds: 300, frl: 0 },
  { tmds: 600, frl: 0 },
  { tmds: 600, frl: 3 },
  { tmds: 600, frl: 5 },
  { tmds: 600, frl: 6 },
);

const capability: DataBlock = {
  kind: 'videoCapability',
  capability: {
    selectableYccRange: true,
    selectableRgbRange: true,
    preferredOverscan: 2,
    itOverscan: 2,
    ceOverscan: 2,
  },
};

function rateBlocks({ tmds, frl }: { tmds: number; frl: number | null }, vrrMaxHz: number): DataBlock[] {
  const hdmi = hdmiBlock({ maxTmdsClockMHz: Math.min(tmds, 300) });
  if (frl === null) return [hdmi];
  return [
    hdmi,
    forumBlock({
      maxTmdsCharacterRateMHz: tmds > 340 ? tmds : 0,
      maxFrlCode: frl,
      vrrMaxHz,
      ...(frl === 0 && { dsc: null }),
    }),
  ];
}

const ctaOf = (screen: Size): fc.Arbitrary<CtaExtension> =>
  fc
    .record({
      head: flags('basicAudio', 'ycbcr444', 'ycbcr422'),
      vics: fc.uniqueArray(fc.constantFrom(...upTo8k), { minLength: 2, maxLength: 20 }),
      native: fc.boolean(),
      only420: fc.uniqueArray(fc.constantFrom(...fast), { maxLength: 3 }),
      mapped: fc.boolean(),
      rates: hdmiBlocks,
      vrrMaxHz: int(100, 480),
      others,
      slots: fc.uniqueArray(fc.constantFrom(...inSlots), { maxLength: 3 }),
    })
    .map(({ head, vics, native, only420, mapped, rates, vrrMaxHz, others: rest, slots }) => {
      const only = only420.filter((vic) => !vics.includes(vic));
      const blocks: DataBlock[] = [
        {
          kind: 'video',
          formats: vics.map((vic, i) => ({
            vic,
            native: native && i === 0 && vic <= 64 && !ctaTimings.get(vic)?.interlaced,
          })),
        },
        ...rateBlocks(rates, vrrMaxHz),
        ...(only.length > 0
          ? [{ kind: 'ycbcr420Video' as const, formats: only.map((vic) => ({ vic, native: false })) }]
          : []),
        ...(mapped ? [{ kind: 'ycbcr420Map' as const, map: Uint8Array.of(0b101) }] : []),
        capability,
        ...rest,
      ];
      const dataBlocks = fitting(blocks, (taken) => ctaSpaceLeft({ dataBlocks: taken, timings: [] }) >= 0);
      const timings = fitting(
        slots.flatMap((vic) => {
          const timing = ctaTimings.get(vic);
          return timing ? [slotOf(timing, screen)] : [];
        }),
        (taken) => ctaSpaceLeft({ dataBlocks, timings: taken }) >= 0,
      );
      return { kind: 'cta', revision: 3, underscan: true, ...head, nativeTimings: 1, dataBlocks, timings };
    });

function displayIdTiming(timing: Timing, preferred: boolean): DisplayIdTiming {
  const { horizontal: h, vertical: v } = timing;
  const span = (active: number, b: typeof h) => ({
    active,
    blank: blankingTotal(b),
    frontPorch: b.frontPorch,
    sync: b.sync,
    positiveSync: b.positiveSync,
  });
  return {
    pixelClockKHz: timing.pixelClockKHz,
    preferred,
    interlaced: false,
    stereoCode: 0,
    aspectCode: 4,
    horizontal: span(timing.widthPx, h),
    vertical: span(timing.heightPx, v),
    imageSize: null,
  };
}

const displayId: fc.Arbitrary<DisplayIdExtension> = fc
  .record({
    version: fc.constantFrom(1, 2),
    timings: fc.uniqueArray(fc.constantFrom(...inSlots), { minLength: 1, maxLength: 3 }),
    serialNumber: int(0, 0xffff),
  })
  .map(({ version, timings, serialNumber }) => ({
    kind: 'displayId',
    version,
    revision: version === 1 ? 3 : 0,
    productTypeCode: 2 + version,
    extensionCount: 0,
    blocks: [
      {
        kind: 'product',
        tag: version === 1 ? 0 : 0x20,
        flags: 0,
        product: {
          vendorBytes: Uint8Array.of(0x51, 0x5a, 0x56),
          productCode: 1,
          serialNumber,
          week: 12,
          year: 2024,
          productId: 'LUMEN',
        },
      },
      {
        kind: 'timings',
        type: version === 1 ? 'I' : 'VII',
        flags: version === 1 ? 1 : 2,
        timings: timings.flatMap((vic, i) => {
          const timing = ctaTimings.get(vic);
          return timing ? [displayIdTiming(timing, i === 0)] : [];
        }),
      },
    ],
  }));

export const display: fc.Arbitrary<Edid> = size.chain((screen) =>
  fc
    .record({ base: baseOf(screen), cta: ctaOf(screen), panel: fc.option(displayId, { freq: 4 }) })
    .map(({ base, cta, panel }) => ({ base, extensions: panel ? [cta, panel] : [cta] })),
);
