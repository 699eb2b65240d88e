import fc from 'fast-check';
import {
  type DisplayIdBlock,
  type DisplayIdExtension,
  displayIdSpaceLeft,
} from '../../../shared/signal/edid/displayid/extension.ts';
import type { DisplayIdTiming } from '../../../shared/signal/edid/displayid/timings.ts';
import { byte, bytesOf, fitting, int, printable } from './arbitrary-parts.ts';

/** Random DisplayID extensions that are well formed. */

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
