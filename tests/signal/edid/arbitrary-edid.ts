import fc from 'fast-check';
import type { BaseBlock, Manufacture, ScreenSize } from '../../../shared/signal/edid/base/base-block.ts';
import type { DigitalInterface, VideoInput } from '../../../shared/signal/edid/base/video-input.ts';
import { type CtaExtension, ctaSpaceLeft } from '../../../shared/signal/edid/cta/extension.ts';
import type { Edid, ExtensionBlock } from '../../../shared/signal/edid/index.ts';
import { dataBlock, referenceDataBlock } from './arbitrary-data-blocks.ts';
import { descriptor, standardTiming } from './arbitrary-descriptors.ts';
import { displayIdExtension } from './arbitrary-displayid.ts';
import { byte, bytesOf, fitting, flags, int, letters, listOf } from './arbitrary-parts.ts';

/** Random EDIDs that are well formed: encoding and decoding them gives them back. */

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
    standardTimings: listOf(standardTiming, 8),
    descriptors: listOf(descriptor, 4),
  });

export const baseBlock: fc.Arbitrary<BaseBlock> = fc
  .constantFrom(3, 4, 4, 4)
  .chain((revision) => baseOfRevision(revision));

const ctaExtensionOf = (block: typeof dataBlock): fc.Arbitrary<CtaExtension> =>
  fc
    .record({
      head: flags('underscan', 'basicAudio', 'ycbcr444', 'ycbcr422'),
      nativeTimings: int(0, 15),
      blocks: fc.array(block, { maxLength: 14 }),
      timings: fc.array(descriptor, { maxLength: 3 }),
    })
    .map(({ head, nativeTimings, blocks, timings }) => {
      const dataBlocks = fitting(blocks, (taken) => ctaSpaceLeft({ dataBlocks: taken, timings: [] }) >= 0);
      const slots = fitting(timings, (taken) => ctaSpaceLeft({ dataBlocks, timings: taken }) >= 0);
      return { kind: 'cta', revision: 3, ...head, nativeTimings, dataBlocks, timings: slots };
    });

export const ctaExtension = ctaExtensionOf(dataBlock);

const otherExtension: fc.Arbitrary<ExtensionBlock> = fc.record({
  kind: fc.constant('other' as const),
  tag: fc.constantFrom(0x40, 0x50, 0x60),
  content: bytesOf(126, 126),
});

const edidOf = (block: typeof dataBlock): fc.Arbitrary<Edid> =>
  fc.record({
    base: baseBlock,
    extensions: fc.array(
      fc.oneof(
        { weight: 8, arbitrary: ctaExtensionOf(block) },
        { weight: 2, arbitrary: displayIdExtension },
        { weight: 1, arbitrary: otherExtension },
      ),
      { maxLength: 3 },
    ),
  });

/** A whole EDID: base block alone or with extensions, most of them CTA-861. */
export const edid = edidOf(dataBlock);

/** One with nothing in it that edid-decode stops at. */
export const referenceEdid = edidOf(referenceDataBlock);
