import fc from 'fast-check';
import type { AudioDescriptor } from '../../../shared/signal/edid/cta/audio.ts';
import type { DataBlock } from '../../../shared/signal/edid/cta/data-blocks.ts';
import type { HdmiBlock } from '../../../shared/signal/edid/cta/hdmi.ts';
import type { HdmiForumBlock } from '../../../shared/signal/edid/cta/hdmi-forum.ts';
import type { VideoFormats } from '../../../shared/signal/edid/cta/video-formats.ts';
import { byte, bytesOf, flags, int } from './arbitrary-parts.ts';

/** Random data blocks of CTA-861 that are well formed. */

const plainAudio: fc.Arbitrary<AudioDescriptor> = fc.record({
  formatCode: int(1, 14),
  extendedCode: fc.constant(null),
  channels: int(1, 8),
  rateBits: int(0, 127),
  detail: byte,
  spare: fc.constant(0),
});

const extendedAudio: fc.Arbitrary<AudioDescriptor> = fc
  .constantFrom(4, 5, 6, 7, 8, 10, 11, 12, 13, 14, 15)
  .chain((code) =>
    fc.record({
      formatCode: fc.constant(15),
      extendedCode: fc.constant(code),
      channels:
        code === 11
          ? fc.constant(null)
          : [12, 14].includes(code)
            ? fc.constant(1)
            : int(1, code === 13 ? 32 : 8),
      rateBits: int(0, 127),
      detail: int(0, 7),
      spare: code === 11 ? int(0, 7) : fc.constant(0),
    }),
  );

const vic = fc.oneof({ weight: 9, arbitrary: int(1, 127) }, int(193, 219));
const format = fc
  .record({ vic, native: fc.boolean() })
  .map((entry) => ({ ...entry, native: entry.native && entry.vic <= 64 }));

const latency = fc.record({ videoCode: byte, audioCode: byte });

const hdmiVideo = fc.record({
  threeDPresent: fc.boolean(),
  threeDMultiCode: fc.constant(0),
  imageSizeCode: int(0, 3),
  hdmiVics: fc.array(int(1, 4), { maxLength: 4 }),
  threeD: fc.constant(new Uint8Array()),
});

const address = fc
  .array(int(0, 15), { minLength: 4, maxLength: 4 })
  .map((digits) => digits.map((digit) => digit.toString(16)).join('.'));

const hdmi: fc.Arbitrary<HdmiBlock> = fc.record({
  physicalAddress: address,
  capabilities: flags('supportsAi', 'dc48', 'dc36', 'dc30', 'dcY444', 'dviDual'),
  maxTmdsClockMHz: byte.map((value) => value * 5),
  details: fc.option(
    fc
      .record({
        contentTypes: flags('graphics', 'photo', 'cinema', 'game'),
        latency: fc.option(latency),
        interlacedLatency: fc.option(latency),
        video: fc.option(hdmiVideo),
      })
      .map((details) => ({ ...details, interlacedLatency: details.latency && details.interlacedLatency })),
  ),
  rest: fc.constant(new Uint8Array()),
});

const dsc = fc.record({
  dsc12a: fc.boolean(),
  native420: fc.boolean(),
  qmsTfrMax: fc.boolean(),
  qmsTfrMin: fc.boolean(),
  allBpp: fc.boolean(),
  bpc16: fc.boolean(),
  bpc12: fc.boolean(),
  bpc10: fc.boolean(),
  maxFrlCode: int(0, 6),
  maxSlicesCode: int(0, 7),
  chunkCode: int(0, 63),
});

const forumHead = {
  version: fc.constant(1),
  maxTmdsCharacterRateMHz: byte.map((value) => value * 5),
  flags: flags(
    'scdcPresent',
    'readRequest',
    'cableStatus',
    'colourContentBpc',
    'scramblingBelow340',
    'independentView',
    'dualView',
    'threeDOsdDisparity',
  ),
  maxFrlCode: int(0, 8),
  deepColour420: flags('uhdVic', 'dc48', 'dc36', 'dc30'),
};
const features = flags(
  'fapaEndExtended',
  'qms',
  'mDelta',
  'cinemaVrr',
  'negativeMvrr',
  'fastVactive',
  'allm',
  'fapaInBlanking',
);
const noRest = fc.constant(new Uint8Array());

/** Of the lengths in use: up to the deep colours, the features, the refresh rates or the compression. */
const forum: fc.Arbitrary<HdmiForumBlock> = fc.oneof(
  fc.record({
    ...forumHead,
    features: fc.option(features),
    vrrMinHz: fc.constant(null),
    vrrMaxHz: fc.constant(null),
    dsc: fc.constant(null),
    rest: noRest,
  }),
  fc.record({
    ...forumHead,
    features,
    vrrMinHz: int(0, 63),
    vrrMaxHz: int(0, 1023),
    dsc: fc.option(dsc),
    rest: noRest,
  }),
);

const hdrStatic = fc
  .record({
    eotfBits: int(0, 63),
    metadataTypeBits: fc.constant(1),
    luminances: fc.array(byte, { maxLength: 3 }),
  })
  .map(({ luminances: [max = null, average = null, min = null], ...rest }) => ({
    ...rest,
    maxLuminanceCode: max,
    maxFrameAverageCode: average,
    minLuminanceCode: min,
  }));

const allocation = int(0, (1 << 21) - 1);

const location = fc.record({
  channel: int(0, 31),
  active: fc.boolean(),
  speakerId: int(0, 31),
  coordinates: fc.option(fc.record({ x: int(-128, 127), y: int(-128, 127), z: int(-128, 127) })),
});

const of = <K extends DataBlock['kind'], T>(kind: K, field: string, arbitrary: fc.Arbitrary<T>) =>
  arbitrary.map((value) => ({ kind, [field]: value }) as unknown as DataBlock);

const videoBlock = of('video', 'formats', fc.array(format, { minLength: 1, maxLength: 16 }));
const audioBlock = of(
  'audio',
  'descriptors',
  fc.array(fc.oneof({ weight: 3, arbitrary: plainAudio }, extendedAudio), { minLength: 1, maxLength: 5 }),
);
const forumBlock: fc.Arbitrary<DataBlock> = fc.record({
  kind: fc.constant('hdmiForum' as const),
  carrier: fc.constantFrom('vendorBlock' as const, 'sinkCapabilityBlock' as const),
  forum,
});
const videoFormats: fc.Arbitrary<VideoFormats> = int(1, 4).chain((bytesEach) =>
  fc.record({
    in420: fc.boolean(),
    fractional: fc.boolean(),
    bytesEach: fc.constant(bytesEach),
    descriptors: fc.array(
      fc.record({
        rid: int(0, 40),
        at24: fc.boolean(),
        at48: bytesEach > 2 ? fc.boolean() : fc.constant(false),
        at144: bytesEach > 1 ? fc.boolean() : fc.constant(false),
        by25: fc.boolean(),
        by30: bytesEach > 1 ? fc.boolean() : fc.constant(true),
        factorBits: bytesEach > 1 ? int(0, 63) : fc.constant(3),
      }),
      { maxLength: 4 },
    ),
  }),
);

const vendorBlock: fc.Arbitrary<DataBlock> = fc.record({
  kind: fc.constant('vendor' as const),
  scope: fc.constantFrom('general' as const, 'video' as const, 'audio' as const),
  oui: fc.constantFrom('02-00-00', '02-A1-B2', '06-00-01'),
  payload: bytesOf(1, 12),
});

/** All but what edid-decode stops at: a video format block. */
export const referenceDataBlock: fc.Arbitrary<DataBlock> = fc.oneof(
  { weight: 6, arbitrary: videoBlock },
  { weight: 4, arbitrary: audioBlock },
  { weight: 3, arbitrary: of('speakers', 'allocation', allocation) },
  { weight: 4, arbitrary: of('hdmi', 'hdmi', hdmi) },
  { weight: 4, arbitrary: forumBlock },
  { weight: 2, arbitrary: vendorBlock },
  {
    weight: 2,
    arbitrary: of(
      'videoCapability',
      'capability',
      fc.record({
        selectableYccRange: fc.boolean(),
        selectableRgbRange: fc.boolean(),
        preferredOverscan: int(0, 3),
        itOverscan: int(0, 3),
        ceOverscan: int(0, 3),
      }),
    ),
  },
  { weight: 3, arbitrary: of('colorimetry', 'bits', int(0, 65_535)) },
  { weight: 3, arbitrary: of('hdrStatic', 'hdr', hdrStatic) },
  of(
    'hdrDynamic',
    'types',
    fc.array(fc.record({ type: int(1, 4), support: bytesOf(1, 3) }), { minLength: 1, maxLength: 3 }),
  ),
  of('formatPreference', 'references', fc.array(int(1, 127), { minLength: 1, maxLength: 4 })),
  { weight: 3, arbitrary: of('ycbcr420Video', 'formats', fc.array(format, { minLength: 1, maxLength: 4 })) },
  { weight: 3, arbitrary: of('ycbcr420Map', 'map', bytesOf(0, 3)) },
  of(
    'room',
    'room',
    fc.record({
      displayPlaced: fc.boolean(),
      speakerCount: fc.option(int(1, 32)),
      locationsGiven: fc.boolean(),
      allocation,
      extents: bytesOf(6, 6),
    }),
  ),
  of('speakerLocations', 'locations', fc.array(location, { minLength: 1, maxLength: 3 })),
  fc.record({
    kind: fc.constant('unknown' as const),
    tag: fc.constant(7),
    extendedTag: fc.constantFrom(2, 34, 100),
    payload: bytesOf(1, 10),
  }),
);

export const dataBlock: fc.Arbitrary<DataBlock> = fc.oneof(
  { weight: 40, arbitrary: referenceDataBlock },
  of('videoFormats', 'video', videoFormats),
);
