import fc from 'fast-check';
import type { Descriptor } from '../../../shared/signal/edid/base/descriptors.ts';
import type { DetailedTiming, TimingSync } from '../../../shared/signal/edid/base/detailed-timing.ts';
import type { RangeLimits, RangeTiming } from '../../../shared/signal/edid/base/range-limits.ts';
import type { StandardTiming } from '../../../shared/signal/edid/base/standard-timings.ts';
import { byte, bytesOf, int, listOf, printable } from './arbitrary-parts.ts';

/** Random 18-byte slots that are well formed. */

const sync: fc.Arbitrary<TimingSync> = fc.oneof(
  fc.record({
    kind: fc.constantFrom('analogComposite' as const, 'bipolarAnalogComposite' as const),
    serrations: fc.boolean(),
    onAllColours: fc.boolean(),
  }),
  fc.record({
    kind: fc.constant('digitalComposite' as const),
    serrations: fc.boolean(),
    horizontalPositive: fc.boolean(),
  }),
  fc.record({
    kind: fc.constant('digitalSeparate' as const),
    verticalPositive: fc.boolean(),
    horizontalPositive: fc.boolean(),
  }),
);

/** At least one pixel and line, so that a refresh rate exists; no borders where interlaced, see the known differences. */
export const detailedTiming: fc.Arbitrary<DetailedTiming> = fc
  .record({
    pixelClockKHz: int(1000, 65_535).map((steps) => steps * 10),
    interlaced: fc.boolean(),
    horizontal: fc.record({
      activePx: int(1, 4095),
      blankPx: int(0, 4095),
      frontPorchPx: int(0, 1023),
      syncPx: int(0, 1023),
      borderPx: fc.oneof({ weight: 9, arbitrary: fc.constant(0) }, byte),
    }),
    vertical: fc.record({
      activeLines: int(1, 4095),
      blankLines: int(0, 4095),
      frontPorchLines: int(0, 63),
      syncLines: int(0, 63),
      borderLines: fc.oneof({ weight: 9, arbitrary: fc.constant(0) }, byte),
    }),
    imageMm: fc.record({ width: int(0, 4095), height: int(0, 4095) }),
    stereoCode: int(0, 7),
    sync,
  })
  .map((timing) =>
    timing.interlaced ? { ...timing, vertical: { ...timing.vertical, borderLines: 0 } } : timing,
  );

export const standardTiming: fc.Arbitrary<StandardTiming | null> = fc.option(
  fc.record({
    widthPx: int(2, 255).map((value) => (value + 31) * 8),
    aspect: fc.constantFrom('16:10' as const, '4:3' as const, '5:4' as const, '16:9' as const),
    refreshHz: int(60, 123),
  }),
);

const rangeTiming: fc.Arbitrary<RangeTiming> = fc.oneof(
  fc.constant<RangeTiming>({ kind: 'defaultGtf' }),
  fc.constant<RangeTiming>({ kind: 'rangeOnly' }),
  fc.record({
    kind: fc.constant('secondaryGtf' as const),
    startKHz: byte.map((value) => value * 2),
    c: byte.map((value) => value / 2),
    m: int(0, 65_535),
    k: byte,
    j: byte.map((value) => value / 2),
  }),
  fc.record({
    kind: fc.constant('cvt' as const),
    version: byte,
    clockSteps: int(0, 63),
    maxActivePx: int(0, 1023).map((value) => value * 8),
    aspectFlags: byte,
    preferredAspectCode: int(0, 7),
    standardBlanking: fc.boolean(),
    reducedBlanking: fc.boolean(),
    scalingFlags: byte,
    preferredRefreshHz: byte,
  }),
);

const range: fc.Arbitrary<RangeLimits> = fc.record({
  minVerticalHz: byte,
  maxVerticalHz: int(0, 510),
  minHorizontalKHz: byte,
  maxHorizontalKHz: int(0, 510),
  maxPixelClockMHz: byte.map((value) => value * 10),
  timing: rangeTiming,
});

const cvtCode = fc.option(
  fc.record({
    lines: int(0, 4095).map((value) => (value + 1) * 2),
    aspect: fc.constantFrom('4:3' as const, '16:9' as const, '16:10' as const, '15:9' as const),
    preferredRateCode: int(0, 3),
    rateFlags: int(1, 31),
  }),
);

const whitePoint = fc.record({
  index: int(1, 255),
  x: int(0, 1023).map((value) => value / 1024),
  y: int(0, 1023).map((value) => value / 1024),
  gamma: fc.option(int(0, 254).map((value) => (value + 100) / 100)),
});

const text = fc.record({
  kind: fc.constant('text' as const),
  role: fc.constantFrom('productName' as const, 'productSerial' as const, 'data' as const),
  text: printable(13),
});

export const descriptor: fc.Arbitrary<Descriptor> = fc.oneof(
  { weight: 4, arbitrary: detailedTiming.map((timing): Descriptor => ({ kind: 'timing', timing })) },
  { weight: 4, arbitrary: text },
  { weight: 2, arbitrary: range.map((limits): Descriptor => ({ kind: 'rangeLimits', limits })) },
  listOf(standardTiming, 6).map((timings): Descriptor => ({ kind: 'standardTimings', timings })),
  listOf(byte, 5).map((bits): Descriptor => ({ kind: 'establishedTimingsIII', bits: [...bits, 0] })),
  listOf(cvtCode, 4).map((codes): Descriptor => ({ kind: 'cvtCodes', codes })),
  fc.array(whitePoint, { maxLength: 2 }).map((points): Descriptor => ({ kind: 'whitePoints', points })),
  listOf(int(0, 65_535), 6).map(
    (values): Descriptor => ({ kind: 'colourManagement', coefficients: values.map((value) => value / 100) }),
  ),
  fc.constant<Descriptor>({ kind: 'dummy' }),
  fc.record({ kind: fc.constant('maker' as const), tag: int(1, 15), data: bytesOf(13, 13) }),
  fc.record({ kind: fc.constant('unknown' as const), tag: int(0x11, 0xf6), data: bytesOf(13, 13) }),
);
