import type { DataBlock } from '../../shared/signal/edid/cta/data-blocks.ts';
import { type Edid, encodeEdid } from '../../shared/signal/edid/index.ts';
import { baseBlock, ctaExtension, hdmiBlock, timingOfVic, videoBlock } from '../signal/edid/build-edid.ts';

/** Where we and the reference program differ, and why we stay with ours. The list must not grow. */
export type KnownDifference = {
  id: string;
  /** The field of the summary, with dots; nothing else may differ. A preferred timing stands for its list too. */
  field: string;
  why: string;
  /** An EDID that shows the difference, and no other. */
  bytes: () => Uint8Array;
  ours: unknown;
  reference: unknown;
};

const edidOf = (dataBlocks: readonly DataBlock[]): Edid => ({
  base: baseBlock({ descriptors: [{ kind: 'timing', timing: timingOfVic(16) }, dummy, dummy, dummy] }),
  extensions: [ctaExtension(dataBlocks, { nativeTimings: 0 })],
});

const dummy = { kind: 'dummy' } as const;

/** A block of that tag and content, whatever its kind would have it be. */
const raw = (tag: number, extendedTag: number | null, ...payload: number[]): DataBlock => ({
  kind: 'unknown',
  tag,
  extendedTag,
  payload: Uint8Array.from(payload),
});

/** Sets a byte of the first extension and mends its checksum. */
function withByte(bytes: Uint8Array, offset: number, value: number): Uint8Array {
  bytes[128 + offset] = value;
  const sum = bytes.subarray(128, 255).reduce((total, part) => total + part, 0);
  bytes[255] = (256 - (sum % 256)) % 256;
  return bytes;
}

const bordered = timingOfVic(5);
const rated = (refreshHz: number) => ({
  widthPx: 1920,
  heightPx: 1080,
  interlaced: true,
  refreshHz,
  pixelClockKHz: 74_250,
});

export const knownDifferences: readonly KnownDifference[] = [
  {
    id: 'interlaced-borders',
    field: 'preferredTiming',
    why:
      'An interlaced timing with vertical borders: blanking includes the borders (E-EDID A.2 table 3.21), so they change ' +
      'no rate; the reference program takes them off the lines of the field.',
    bytes: () =>
      encodeEdid({
        base: baseBlock({
          descriptors: [
            {
              kind: 'timing',
              timing: { ...bordered, vertical: { ...bordered.vertical, borderLines: 4 } },
            },
            dummy,
            dummy,
            dummy,
          ],
        }),
        extensions: [],
      }),
    ours: rated(60),
    reference: rated(60.865645),
  },
  {
    id: 'hdmi-vics-past-end',
    field: 'cta.hdmi.hdmiVics',
    why: 'An HDMI block that counts more formats than it holds: the reference reads on into the next block.',
    bytes: () =>
      encodeEdid(
        edidOf([raw(3, null, 0x03, 0x0c, 0x00, 0x10, 0x00, 0x80, 0x3c, 0x20, 0x00, 0x60, 1), videoBlock(16)]),
      ),
    ours: [1],
    reference: [1, 0x41, 0x10],
  },
  {
    id: 'hdmi-address-past-end',
    field: 'cta.hdmi.physicalAddress',
    why: 'An HDMI block that ends after half its address: the reference takes the other half from the next block.',
    bytes: () => encodeEdid(edidOf([raw(3, null, 0x03, 0x0c, 0x00, 0x10), videoBlock(16)])),
    ours: null,
    reference: '1.0.4.1',
  },
  {
    id: 'vrr-past-end',
    field: 'cta.hdmiForum.vrrMaxHz',
    why: 'An HDMI Forum block that ends after the lowest refresh rate: the reference takes the highest from the next block.',
    bytes: () =>
      encodeEdid(
        edidOf([
          hdmiBlock(),
          raw(3, null, 0xd8, 0x5d, 0xc4, 1, 0x78, 0x80, 0x00, 0x00, 0x70),
          videoBlock(16),
        ]),
      ),
    ours: null,
    reference: 0x141,
  },
  {
    id: 'map-names-nothing',
    field: 'cta.ycbcr420CapabilityVics',
    why: 'A capability map that names a reserved code of the video block: no format, yet the reference lists VIC 0.',
    bytes: () => encodeEdid(edidOf([raw(2, null, 16, 0, 97), raw(7, 15, 0b110)])),
    ours: [97],
    reference: [0, 97],
  },
  {
    id: 'data-past-block',
    field: 'cta.vics',
    why: 'Data blocks said to reach beyond their block: we stop at its end, the reference reads the next block as data.',
    bytes: () => {
      const content = Uint8Array.from([0x41, 4, ...new Array<number>(124).fill(0)]);
      const first = ctaExtension([videoBlock(16), { kind: 'filler', length: 121 }], { nativeTimings: 0 });
      const edid: Edid = { ...edidOf([]), extensions: [first, { kind: 'other', tag: 0x40, content }] };
      return withByte(withByte(encodeEdid(edid), 126, 0x01), 2, 180);
    },
    ours: [{ vic: 16, native: false }],
    reference: [
      { vic: 16, native: false },
      { vic: 4, native: false },
    ],
  },
];
