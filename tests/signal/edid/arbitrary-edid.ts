import fc from 'fast-check';
import type { BaseBlock, Manufacture, ScreenSize } from '../../../shared/signal/edid/base/base-block.ts';
import type { Descriptor } from '../../../shared/signal/edid/base/descriptors.ts';
import type { DetailedTiming, TimingSync } from '../../../shared/signal/edid/base/detailed-timing.ts';
import type { RangeLimits, RangeTiming } from '../../../shared/signal/edid/base/range-limits.ts';
import type { StandardTiming } from '../../../shared/signal/edid/base/standard-timings.ts';
import type { DigitalInterface, VideoInput } from '../../../shared/signal/edid/base/video-input.ts';
import { type CtaExtension, ctaSpaceLeft } from '../../../shared/signal/edid/cta/extension.ts';
import {
  type DisplayIdBlock,
  type DisplayIdExtension,
  displayIdSpaceLeft,
} from '../../../shared/signal/edid/displayid/extension.ts';
import type { DisplayIdTiming } from '../../../shared/signal/edid/displayid/timings.ts';
import type { Edid, ExtensionBlock } from '../../../shared/signal/edid/index.ts';
import { dataBlock } from './arbitrary-data-blocks.ts';
import { byte, bytesOf, flags, int, letters, printable } from './arbitrary-parts.ts';

/** Random EDIDs that are well formed: encoding and decoding them gives them back. */

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

const standardTiming: fc.Arbitrary<StandardTiming | null> = fc.option(
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

const list = <T>(item: fc.Arbitrary<T>, length: number) =>
  fc.array(item, { minLength: length, maxLength: length });

const text = fc.record({
  kind: fc.constant('text' as const),
  role: fc.constantFrom('productName' as const, 'productSerial' as const, 'data' as const),
  text: printable(13),
});

export const descriptor: fc.Arbitrary<Descriptor> = fc.oneof(
  { weight: 4, arbitrary: detailedTiming.map((timing): Descriptor => ({ kind: 'timing', timing })) },
  { weight: 4, arbitrary: text },
  { weight: 2, arbitrary: range.map((limits): Descriptor => ({ kind: 'rangeLimits', limits })) },
  list(standardTiming, 6).map((timings): Descriptor => ({ kind: 'standardTimings', timings })),
  list(byte, 5).map((bits): Descriptor => ({ kind: 'establishedTimingsIII', bits: [...bits, 0] })),
  list(cvtCode, 4).map((codes): Descriptor => ({ kind: 'cvtCodes', codes })),
  fc.array(whitePoint, { maxLength: 2 }).map((points): Descriptor => ({ kind: 'whitePoints', points })),
  list(int(0, 65_535), 6).map(
    (values): Descriptor => ({ kind: 'colourManagement', coefficients: values.map((value) => value / 100) }),
  ),
  fc.constant<Descriptor>({ kind: 'dummy' }),
  fc.record({ kind: fc.constant('maker' as const), tag: int(1, 15), data: bytesOf(13, 13) }),
  fc.record({ kind: fc.constant('unknown' as const), tag: int(0x11, 0xf6), data: bytesOf(13, 13) }),
);

const manufacture: fc.Arbitrary<Manufacture> = fc.oneof(
  fc.record({
    kind: fc.constant('made' as const),
    week: fc.option(int(1, 254)),
    year: int(1990, 2245),
  }),
  fc.record({ kind: fc.constant('modelYear' as const), year: int(1990, 2245) }),
);

const screen: fc.Arbitrary<ScreenSize> = fc.oneof(
  fc.constant<ScreenSize>({ kind: 'undefined' }),
  fc.record({ kind: fc.constant('size' as const), widthCm: int(1, 255), heightCm: int(1, 255) }),
  fc.record({
    kind: fc.constant('aspect' as const),
    orientation: fc.constantFrom('landscape' as const, 'portrait' as const),
    code: int(1, 255),
  }),
);

const bitsPerColour: fc.Arbitrary<number | null> = fc.option(fc.constantFrom(6, 8, 10, 12, 14, 16));
const input14: fc.Arbitrary<VideoInput> = fc.record({
  kind: fc.constant('digital' as const),
  bitsPerColour,
  interface: fc.constantFrom<DigitalInterface>('undefined', 'DVI', 'HDMI-a', 'HDMI-b', 'MDDI', 'DisplayPort'),
});
const input13: fc.Arbitrary<VideoInput> = fc.record({
  kind: fc.constant('digitalBefore14' as const),
  dfp1Compatible: fc.boolean(),
});
const analog: fc.Arbitrary<VideoInput> = fc.record({
  kind: fc.constant('analog' as const),
  signalLevelCode: int(0, 3),
  blankToBlack: fc.boolean(),
  separateSync: fc.boolean(),
  compositeSync: fc.boolean(),
  syncOnGreen: fc.boolean(),
  serrations: fc.boolean(),
});

const point = fc.record({
  x: int(0, 1023).map((value) => value / 1024),
  y: int(0, 1023).map((value) => value / 1024),
});

const baseOfRevision = (revision: number): fc.Arbitrary<BaseBlock> =>
  fc.record({
    version: fc.constant(1),
    revision: fc.constant(revision),
    manufacturer: letters(3),
    productCode: int(0, 65_535),
    serialNumber: fc.oneof(fc.constant(0), int(0, 0xffffffff)),
    manufacture,
    input: fc.oneof(analog, revision < 4 ? input13 : input14),
    screen,
    gamma: fc.option(int(0, 254).map((value) => (value + 100) / 100)),
    powerStates: flags('standby', 'suspend', 'activeOff'),
    colourTypeCode: int(0, 3),
    srgbDefault: fc.boolean(),
    firstTimingNative: fc.boolean(),
    continuousFrequency: fc.boolean(),
    chromaticity: fc.record({ red: point, green: point, blue: point, white: point }),
    establishedBits: fc.tuple(byte, byte, byte),
    standardTimings: list(standardTiming, 8),
    descriptors: list(descriptor, 4),
  });

export const baseBlock: fc.Arbitrary<BaseBlock> = fc
  .constantFrom(3, 4, 4, 4)
  .chain((revision) => baseOfRevision(revision));

/** Takes as many items as there is room for. */
function fitting<T>(items: readonly T[], hasRoom: (taken: readonly T[]) => boolean): T[] {
  const taken: T[] = [];
  for (const item of items) if (hasRoom([...taken, item])) taken.push(item);
  return taken;
}

export const ctaExtension: fc.Arbitrary<CtaExtension> = fc
  .record({
    head: flags('underscan', 'basicAudio', 'ycbcr444', 'ycbcr422'),
    nativeTimings: int(0, 15),
    blocks: fc.array(dataBlock, { maxLength: 14 }),
    timings: fc.array(descriptor, { maxLength: 3 }),
  })
  .map(({ head, nativeTimings, blocks, timings }) => {
    const dataBlocks = fitting(blocks, (taken) => ctaSpaceLeft({ dataBlocks: taken, timings: [] }) >= 0);
    const slots = fitting(timings, (taken) => ctaSpaceLeft({ dataBlocks, timings: taken }) >= 0);
    return { kind: 'cta', revision: 3, ...head, nativeTimings, dataBlocks, timings: slots };
  });

const span = (most: number) =>
  fc.record({
    active: int(1, most),
    blank: int(1, most),
    frontPorch: int(1, Math.min(most, 32_768)),
    sync: int(1, most),
    positiveSync: fc.boolean(),
  });

const longTiming = (stepKHz: number): fc.Arbitrary<DisplayIdTiming> =>
  fc.record({
    pixelClockKHz: int(1, 0x1000000).map((value) => value * stepKHz),
    preferred: fc.boolean(),
    interlaced: fc.boolean(),
    stereoCode: int(0, 3),
    aspectCode: int(0, 15),
    horizontal: span(65_536),
    vertical: span(65_536),
    imageSize: fc.constant(null),
  });

const shortTiming: fc.Arbitrary<DisplayIdTiming> = fc.record({
  pixelClockKHz: int(1, 0x1000000).map((value) => value * 10),
  preferred: fc.boolean(),
  interlaced: fc.boolean(),
  stereoCode: int(0, 3),
  aspectCode: fc.constant(null),
  horizontal: fc.record({
    active: int(1, 512).map((cells) => cells * 8),
    blank: int(1, 128).map((cells) => cells * 8),
    frontPorch: int(1, 16).map((cells) => cells * 8),
    sync: int(1, 16).map((cells) => cells * 8),
    positiveSync: fc.boolean(),
  }),
  vertical: fc.record({
    active: int(1, 4096),
    blank: int(1, 256),
    frontPorch: int(1, 16),
    sync: int(1, 16),
    positiveSync: fc.boolean(),
  }),
  imageSize: fc.constant(null),
});

const middleTiming: fc.Arbitrary<DisplayIdTiming> = fc.record({
  pixelClockKHz: int(1, 0x400000),
  preferred: fc.boolean(),
  interlaced: fc.boolean(),
  stereoCode: int(0, 3),
  aspectCode: fc.constant(null),
  horizontal: fc.record({
    active: int(1, 16_384),
    blank: int(1, 4096),
    frontPorch: int(1, 4096),
    sync: int(1, 256),
    positiveSync: fc.boolean(),
  }),
  vertical: fc.record({
    active: int(1, 16_384),
    blank: int(1, 256),
    frontPorch: int(1, 256),
    sync: int(1, 16),
    positiveSync: fc.boolean(),
  }),
  imageSize: fc.option(bytesOf(3, 3)),
});

const timingsBlock = (type: 'I' | 'II' | 'VI' | 'VII', timing: fc.Arbitrary<DisplayIdTiming>) =>
  fc.record({
    kind: fc.constant('timings' as const),
    type: fc.constant(type),
    flags: byte,
    timings: fc.array(timing, { minLength: 1, maxLength: 3 }),
  });

const displayIdBlock: fc.Arbitrary<DisplayIdBlock> = fc.oneof(
  timingsBlock('I', longTiming(10)),
  timingsBlock('VII', longTiming(1)),
  timingsBlock('II', shortTiming),
  timingsBlock('VI', middleTiming),
  fc.record({
    kind: fc.constant('product' as const),
    tag: fc.constantFrom(0x00, 0x20),
    flags: byte,
    product: fc.record({
      vendorBytes: bytesOf(3, 3),
      productCode: int(0, 65_535),
      serialNumber: int(0, 0xffffffff),
      week: byte,
      year: int(2000, 2255),
      productId: printable(20),
    }),
  }),
  fc.record({
    kind: fc.constant('unknown' as const),
    tag: fc.constantFrom(0x01, 0x0c, 0x7e),
    flags: byte,
    payload: bytesOf(3, 20),
  }),
);

export const displayIdExtension: fc.Arbitrary<DisplayIdExtension> = fc
  .record({
    kind: fc.constant('displayId' as const),
    version: fc.constantFrom(1, 2),
    revision: int(0, 3),
    productTypeCode: int(0, 8),
    extensionCount: fc.constant(0),
    blocks: fc.array(displayIdBlock, { minLength: 1, maxLength: 4 }),
  })
  .map((extension) => ({
    ...extension,
    blocks: fitting(extension.blocks, (blocks) => displayIdSpaceLeft({ blocks }) >= 0),
  }));

const otherExtension: fc.Arbitrary<ExtensionBlock> = fc.record({
  kind: fc.constant('other' as const),
  tag: fc.constantFrom(0x40, 0x50, 0x60),
  content: bytesOf(126, 126),
});

/** A whole EDID: base block alone or with extensions, most of them CTA-861. */
export const edid: fc.Arbitrary<Edid> = fc.record({
  base: baseBlock,
  extensions: fc.array(
    fc.oneof(
      { weight: 8, arbitrary: ctaExtension },
      { weight: 2, arbitrary: displayIdExtension },
      { weight: 1, arbitrary: otherExtension },
    ),
    { maxLength: 3 },
  ),
});
