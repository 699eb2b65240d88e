import { message } from '../../../message/index.ts';
import { allZero, byteAt } from '../bytes.ts';
import { type Exact, readFrom } from '../exact.ts';
import type { Report } from '../problems.ts';
import {
  type DetailedTiming,
  decodeDetailedTiming,
  descriptorSize,
  encodeDetailedTiming,
  leastPixelClockKHz,
  syncOverruns,
} from './detailed-timing.ts';
import { decodeRangeLimits, encodeRangeLimits, type RangeLimits } from './range-limits.ts';
import { decodeStandardTimings, encodeStandardTimings, type StandardTiming } from './standard-timings.ts';

/** A CVT timing in three bytes (E-EDID A.2 section 3.10.3.8). `rateFlags`: bit 4 50 Hz … bit 1 85 Hz, bit 0 60 Hz reduced. */
export type CvtCode = {
  lines: number;
  aspect: '4:3' | '16:9' | '16:10' | '15:9';
  preferredRateCode: number;
  rateFlags: number;
};

/** A second white point (E-EDID A.2 section 3.10.3.5). `gamma` null where it isn't stated here. */
export type WhitePoint = { index: number; x: number; y: number; gamma: number | null };

/** What an 18-byte slot holds (E-EDID A.2 section 3.10). */
export type Descriptor = Exact &
  (
    | { kind: 'timing'; timing: DetailedTiming }
    /** A pixel clock too low to be one: filler, see `leastPixelClockKHz`. */
    | { kind: 'implausibleTiming'; timing: DetailedTiming }
    | { kind: 'text'; role: 'productName' | 'productSerial' | 'data'; text: string }
    | { kind: 'rangeLimits'; limits: RangeLimits }
    | { kind: 'standardTimings'; timings: readonly (StandardTiming | null)[] }
    /** Six bytes of bits, see `establishedTimingsIII`. */
    | { kind: 'establishedTimingsIII'; bits: readonly number[] }
    | { kind: 'cvtCodes'; codes: readonly (CvtCode | null)[] }
    | { kind: 'whitePoints'; points: readonly WhitePoint[] }
    /** Coefficients red a3, a2, green a3, a2, blue a3, a2 in hundredths (E-EDID A.2 section 3.10.3.7). */
    | { kind: 'colourManagement'; coefficients: readonly number[] }
    | { kind: 'dummy' }
    | { kind: 'empty' }
    /** Tags 00h to 0Fh belong to the maker (E-EDID A.2 section 3.10.3.12). `data` is 13 bytes. */
    | { kind: 'maker'; tag: number; data: Uint8Array }
    | { kind: 'unknown'; tag: number; data: Uint8Array }
  );

const textTags = { productName: 0xfc, productSerial: 0xff, data: 0xfe } as const;
const textLength = 13;
const lineFeed = 0x0a;

/** Text ends at the first byte that isn't printable ASCII (E-EDID A.2 section 3.10.3.1: line feed, then spaces). */
function decodeText(bytes: Uint8Array): string {
  let end = 5;
  while (end < descriptorSize && byteAt(bytes, end) >= 0x20 && byteAt(bytes, end) <= 0x7e) end += 1;
  return String.fromCharCode(...bytes.subarray(5, end));
}

function encodeText(text: string): Uint8Array {
  const codes = new Uint8Array(textLength).fill(0x20);
  if (text.length < textLength) codes[text.length] = lineFeed;
  for (let i = 0; i < Math.min(text.length, textLength); i++) codes[i] = text.charCodeAt(i);
  return codes;
}

const cvtAspects = ['4:3', '16:9', '16:10', '15:9'] as const;

function decodeCvtCodes(bytes: Uint8Array): (CvtCode | null)[] {
  return [6, 9, 12, 15].map((from) => {
    const [a, b, c] = [byteAt(bytes, from), byteAt(bytes, from + 1), byteAt(bytes, from + 2)];
    if (a === 0 && b === 0 && c === 0) return null;
    return {
      lines: (a + (b >> 4) * 256 + 1) * 2,
      aspect: cvtAspects[(b >> 2) & 3] ?? '4:3',
      preferredRateCode: (c >> 5) & 3,
      rateFlags: c & 31,
    };
  });
}

function encodeCvtCode(code: CvtCode | null): number[] {
  if (!code) return [0, 0, 0];
  const value = code.lines / 2 - 1;
  return [
    value & 255,
    (value >> 8) * 16 + cvtAspects.indexOf(code.aspect) * 4,
    code.preferredRateCode * 32 + code.rateFlags,
  ];
}

function decodeWhitePoints(bytes: Uint8Array): WhitePoint[] {
  const points: WhitePoint[] = [];
  for (const from of [5, 10]) {
    const at = (index: number) => byteAt(bytes, from + index);
    if (at(0) === 0) continue;
    points.push({
      index: at(0),
      x: (at(2) * 4 + ((at(1) >> 2) & 3)) / 1024,
      y: (at(3) * 4 + (at(1) & 3)) / 1024,
      gamma: at(4) === 255 ? null : (at(4) + 100) / 100,
    });
  }
  return points;
}

function encodeWhitePoints(points: readonly WhitePoint[]): number[] {
  const bytes = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0x0a, 0x20, 0x20];
  points.slice(0, 2).forEach((point, i) => {
    const [x, y] = [Math.round(point.x * 1024), Math.round(point.y * 1024)];
    const gamma = point.gamma === null ? 255 : Math.round(point.gamma * 100) - 100;
    bytes.splice(i * 5, 5, point.index, (x & 3) * 4 + (y & 3), x >> 2, y >> 2, gamma);
  });
  return bytes;
}

function decodeTagged(bytes: Uint8Array): Descriptor {
  const tag = byteAt(bytes, 3);
  switch (tag) {
    case textTags.productName:
      return { kind: 'text', role: 'productName', text: decodeText(bytes) };
    case textTags.productSerial:
      return { kind: 'text', role: 'productSerial', text: decodeText(bytes) };
    case textTags.data:
      return { kind: 'text', role: 'data', text: decodeText(bytes) };
    case 0xfd:
      return { kind: 'rangeLimits', limits: decodeRangeLimits(bytes) };
    case 0xfb:
      return { kind: 'whitePoints', points: decodeWhitePoints(bytes) };
    case 0xfa:
      return { kind: 'standardTimings', timings: decodeStandardTimings(bytes, 5, 6) };
    case 0xf9: {
      const coefficient = (i: number) => (byteAt(bytes, 6 + 2 * i) + byteAt(bytes, 7 + 2 * i) * 256) / 100;
      return { kind: 'colourManagement', coefficients: [0, 1, 2, 3, 4, 5].map(coefficient) };
    }
    case 0xf8:
      return { kind: 'cvtCodes', codes: decodeCvtCodes(bytes) };
    case 0xf7:
      return { kind: 'establishedTimingsIII', bits: [...bytes.subarray(6, 12)] };
    case 0x10:
      return { kind: 'dummy' };
    default:
      return { kind: tag < 0x10 ? 'maker' : 'unknown', tag, data: bytes.slice(5, descriptorSize) };
  }
}

/** A slot of a tag; `content` begins at its fifth byte, or at the one before where that isn't reserved. */
function tagged(tag: number, content: ArrayLike<number>, from: 4 | 5 = 5): Uint8Array {
  const bytes = new Uint8Array(descriptorSize);
  bytes[3] = tag;
  for (let i = 0; i < content.length; i++) bytes[from + i] = content[i] ?? 0;
  return bytes;
}

function encodeFields(descriptor: Descriptor): Uint8Array {
  switch (descriptor.kind) {
    case 'timing':
    case 'implausibleTiming':
      return encodeDetailedTiming(descriptor.timing);
    case 'text':
      return tagged(textTags[descriptor.role], encodeText(descriptor.text));
    case 'rangeLimits':
      return tagged(0xfd, encodeRangeLimits(descriptor.limits), 4);
    case 'whitePoints':
      return tagged(0xfb, encodeWhitePoints(descriptor.points));
    case 'standardTimings':
      return tagged(0xfa, [...encodeStandardTimings(descriptor.timings), 0x0a]);
    case 'colourManagement': {
      const words = descriptor.coefficients.map((value) => Math.round(value * 100));
      return tagged(0xf9, [3, ...words.flatMap((word) => [word & 255, word >> 8])]);
    }
    case 'cvtCodes':
      return tagged(0xf8, [1, ...descriptor.codes.flatMap(encodeCvtCode)]);
    case 'establishedTimingsIII':
      return tagged(0xf7, [10, ...descriptor.bits]);
    case 'dummy':
      return tagged(0x10, []);
    case 'empty':
      return new Uint8Array(descriptorSize);
    case 'maker':
    case 'unknown':
      return tagged(descriptor.tag, descriptor.data);
  }
}

/** The 18 bytes of a descriptor. */
export const encodeDescriptor = (descriptor: Descriptor): Uint8Array =>
  descriptor.exactBytes ?? encodeFields(descriptor);

/** Tells of a slot what a reader of its timing should know; `at` is where it begins in its block. */
export function checkDescriptor(slot: Descriptor, at: number, report: Report): void {
  if (slot.kind === 'implausibleTiming') report('warning', at, message('edid/timingTooSlow'));
  if (slot.kind === 'timing' && syncOverruns(slot.timing))
    report('warning', at, message('edid/syncOverrunsBlanking'));
}

/** Reads one 18-byte slot: a timing when its pixel clock isn't zero, else what its tag says. */
export function decodeDescriptor(bytes: Uint8Array): Descriptor {
  if (allZero(bytes)) return { kind: 'empty' };
  if (byteAt(bytes, 0) === 0 && byteAt(bytes, 1) === 0) return readFrom(decodeTagged(bytes), bytes);
  const timing = decodeDetailedTiming(bytes);
  return { kind: timing.pixelClockKHz < leastPixelClockKHz ? 'implausibleTiming' : 'timing', timing };
}
