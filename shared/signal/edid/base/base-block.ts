import { message } from '../../../message/index.ts';
import { bit, blockSize, byteAt, checksumOf, flagByte, littleEndian, writeLittleEndian } from '../bytes.ts';
import { type Exact, readFrom } from '../exact.ts';
import type { Report } from '../problems.ts';
import { checkDescriptor, type Descriptor, decodeDescriptor, encodeDescriptor } from './descriptors.ts';
import { descriptorSize } from './detailed-timing.ts';
import { decodeStandardTimings, encodeStandardTimings, type StandardTiming } from './standard-timings.ts';
import { decodeVideoInput, encodeVideoInput, type VideoInput } from './video-input.ts';

/** The eight bytes every EDID begins with (E-EDID A.2 section 3.3). */
export const edidHeader: readonly number[] = [0x00, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0x00];

export const startsWithHeader = (bytes: Uint8Array): boolean =>
  edidHeader.every((value, i) => bytes[i] === value);

/** Bytes 16 and 17 (E-EDID A.2 section 3.4.4). `week` as written, 1..254; null where it is 0. */
export type Manufacture =
  | { kind: 'made'; week: number | null; year: number }
  | { kind: 'modelYear'; year: number };

/** Bytes 21 and 22 (E-EDID A.2 section 3.6.2). An aspect ratio is written as a code, see `aspectRatioOf`. */
export type ScreenSize =
  | { kind: 'undefined' }
  | { kind: 'size'; widthCm: number; heightCm: number }
  | { kind: 'aspect'; orientation: 'landscape' | 'portrait'; code: number };

/** CIE 1931 coordinates in steps of 1/1024 (E-EDID A.2 section 3.7). */
export type Chromaticity = { x: number; y: number };

/** The 128 bytes of block 0 (VESA E-EDID A.2 section 3, EDID 1.4; earlier revisions are read by the same layout). */
export type BaseBlock = Exact & {
  version: number;
  revision: number;
  /** Three letters; codes outside A..Z show as `@`, `[`, `\`, `]`, `^` or `_`. */
  manufacturer: string;
  productCode: number;
  /** 32 bits; 0 where the field isn't used (E-EDID A.2 section 3.4.3). */
  serialNumber: number;
  manufacture: Manufacture;
  input: VideoInput;
  screen: ScreenSize;
  /** Null where it is stated elsewhere. */
  gamma: number | null;
  powerStates: { standby: boolean; suspend: boolean; activeOff: boolean };
  /** Bits 4 and 3 of byte 24: digital inputs, formats beside RGB 4:4:4 (bit 0 4:4:4, bit 1 4:2:2); analog, display type. */
  colourTypeCode: number;
  srgbDefault: boolean;
  /** EDID 1.4: the first timing is native and preferred; before, it is merely preferred (E-EDID A.2 section 3.6.4). */
  firstTimingNative: boolean;
  /** EDID 1.4: any rate within the limits; before, the default GTF is supported. */
  continuousFrequency: boolean;
  chromaticity: { red: Chromaticity; green: Chromaticity; blue: Chromaticity; white: Chromaticity };
  /** Bytes 35 to 37, see `establishedTimings`. */
  establishedBits: readonly [number, number, number];
  /** Eight codes. */
  standardTimings: readonly (StandardTiming | null)[];
  /** Four slots of 18 bytes. */
  descriptors: readonly Descriptor[];
};

const firstStandardTiming = 38;
const firstDescriptor = 54;
const slotStarts = [0, 1, 2, 3].map((i) => firstDescriptor + descriptorSize * i);
const firstYear = 1990;

/** Width over height of a screen whose size is unknown (E-EDID A.2 table 3.12). */
export const aspectRatioOf = (screen: Extract<ScreenSize, { kind: 'aspect' }>): number =>
  screen.orientation === 'landscape' ? (screen.code + 99) / 100 : 100 / (screen.code + 99);

function decodeManufacturer(high: number, low: number): string {
  const value = high * 256 + low;
  return String.fromCharCode(64 + ((value >> 10) & 31), 64 + ((value >> 5) & 31), 64 + (value & 31));
}

function encodeManufacturer(letters: string): [number, number] {
  let value = 0;
  for (let i = 0; i < 3; i++) value = value * 32 + (letters.charCodeAt(i) & 31);
  return [value >> 8, value & 255];
}

function decodeManufacture(week: number, year: number): Manufacture {
  if (week === 255) return { kind: 'modelYear', year: firstYear + year };
  return { kind: 'made', week: week === 0 ? null : week, year: firstYear + year };
}

function decodeScreen(width: number, height: number): ScreenSize {
  if (width > 0 && height > 0) return { kind: 'size', widthCm: width, heightCm: height };
  if (width > 0) return { kind: 'aspect', orientation: 'landscape', code: width };
  if (height > 0) return { kind: 'aspect', orientation: 'portrait', code: height };
  return { kind: 'undefined' };
}

function encodeScreen(screen: ScreenSize): [number, number] {
  switch (screen.kind) {
    case 'undefined':
      return [0, 0];
    case 'size':
      return [screen.widthCm, screen.heightCm];
    case 'aspect':
      return screen.orientation === 'landscape' ? [screen.code, 0] : [0, screen.code];
  }
}

/** Bytes 25 to 34: two low bits of each coordinate first, then the eight high ones. */
function decodeChromaticity(bytes: Uint8Array): BaseBlock['chromaticity'] {
  return {
    red: decodePoint(bytes, 0),
    green: decodePoint(bytes, 2),
    blue: decodePoint(bytes, 4),
    white: decodePoint(bytes, 6),
  };
}

const decodePoint = (bytes: Uint8Array, index: number): Chromaticity => ({
  x: decodeCoordinate(bytes, index),
  y: decodeCoordinate(bytes, index + 1),
});

/** The eight coordinates count from 0. */
function decodeCoordinate(bytes: Uint8Array, index: number): number {
  const low = byteAt(bytes, 25) * 256 + byteAt(bytes, 26);
  return (byteAt(bytes, 27 + index) * 4 + ((low >> (14 - 2 * index)) & 3)) / 1024;
}

function encodeChromaticity({ red, green, blue, white }: BaseBlock['chromaticity']): Uint8Array {
  const bytes = new Uint8Array(10);
  let low = 0;
  [red.x, red.y, green.x, green.y, blue.x, blue.y, white.x, white.y].forEach((coordinate, i) => {
    const value = Math.round(coordinate * 1024);
    low = low * 4 + (value & 3);
    bytes[2 + i] = value >> 2;
  });
  bytes.set([low >> 8, low & 255]);
  return bytes;
}

function checkHeader(bytes: Uint8Array, report: Report): void {
  const wrong = edidHeader.findIndex((value, i) => bytes[i] !== value);
  if (wrong >= 0) report('error', wrong, message('edid/headerDamaged'));
}

function checkVersion(version: number, revision: number, report: Report): void {
  if (version !== 1)
    report('error', 18, message('edid/versionUnknown', { version: `${version}.${revision}` }));
  else if (revision > 4) report('note', 19, message('edid/versionNewer', { version: `1.${revision}` }));
}

/** Reads the base block; `bytes` is 128 long. Problems go to `report`; nothing throws. */
export function decodeBaseBlock(bytes: Uint8Array, report: Report): BaseBlock {
  checkHeader(bytes, report);
  checkVersion(byteAt(bytes, 18), byteAt(bytes, 19), report);
  const features = byteAt(bytes, 24);
  const slots = slotStarts.map((from) => bytes.subarray(from, from + descriptorSize));
  const block: BaseBlock = {
    version: byteAt(bytes, 18),
    revision: byteAt(bytes, 19),
    manufacturer: decodeManufacturer(byteAt(bytes, 8), byteAt(bytes, 9)),
    productCode: littleEndian(bytes, 10, 2),
    serialNumber: littleEndian(bytes, 12, 4),
    manufacture: decodeManufacture(byteAt(bytes, 16), byteAt(bytes, 17)),
    input: decodeVideoInput(byteAt(bytes, 20), byteAt(bytes, 19)),
    screen: decodeScreen(byteAt(bytes, 21), byteAt(bytes, 22)),
    gamma: byteAt(bytes, 23) === 255 ? null : (byteAt(bytes, 23) + 100) / 100,
    powerStates: { standby: bit(features, 7), suspend: bit(features, 6), activeOff: bit(features, 5) },
    colourTypeCode: (features >> 3) & 3,
    srgbDefault: bit(features, 2),
    firstTimingNative: bit(features, 1),
    continuousFrequency: bit(features, 0),
    chromaticity: decodeChromaticity(bytes),
    establishedBits: [byteAt(bytes, 35), byteAt(bytes, 36), byteAt(bytes, 37)],
    standardTimings: decodeStandardTimings(bytes, firstStandardTiming, 8),
    descriptors: slots.map(decodeDescriptor),
  };
  block.descriptors.forEach((descriptor, i) => {
    checkDescriptor(descriptor, slotStarts[i] ?? 0, report);
  });
  return readFrom(block, withoutCounts(bytes));
}

/** The block without what encoding always works out anew: header, extension count and checksum. */
function withoutCounts(bytes: Uint8Array): Uint8Array {
  return bytes.subarray(edidHeader.length, blockSize - 2);
}

/** The 128 bytes of a base block with right header, extension count and checksum. */
export function encodeBaseBlock(block: BaseBlock, extensionCount: number): Uint8Array {
  const bytes = new Uint8Array(blockSize);
  bytes.set(edidHeader);
  bytes.set(block.exactBytes ?? encodeFields(block), edidHeader.length);
  bytes[126] = Math.min(extensionCount, 255);
  bytes[127] = checksumOf(bytes, 0, 127);
  return bytes;
}

/** Bytes 8 to 125. */
function encodeFields(block: BaseBlock): Uint8Array {
  const { manufacture, powerStates, descriptors } = block;
  const week = manufacture.kind === 'modelYear' ? 255 : (manufacture.week ?? 0);
  const bytes = new Uint8Array(blockSize);
  bytes.set(encodeManufacturer(block.manufacturer), 8);
  writeLittleEndian(bytes, 10, { value: block.productCode, count: 2 });
  writeLittleEndian(bytes, 12, { value: block.serialNumber, count: 4 });
  bytes[16] = week;
  bytes[17] = manufacture.year - firstYear;
  bytes[18] = block.version;
  bytes[19] = block.revision;
  bytes[20] = encodeVideoInput(block.input);
  bytes.set(encodeScreen(block.screen), 21);
  bytes[23] = block.gamma === null ? 255 : Math.round(block.gamma * 100) - 100;
  bytes[24] =
    flagByte(powerStates.standby, powerStates.suspend, powerStates.activeOff) * 32 +
    block.colourTypeCode * 8 +
    flagByte(block.srgbDefault, block.firstTimingNative, block.continuousFrequency);
  bytes.set(encodeChromaticity(block.chromaticity), 25);
  bytes.set(block.establishedBits, 35);
  bytes.set(encodeStandardTimings(block.standardTimings), firstStandardTiming);
  slotStarts.forEach((from, i) => {
    const slot = descriptors[i];
    if (slot !== undefined) bytes.set(encodeDescriptor(slot), from);
  });
  return withoutCounts(bytes);
}
