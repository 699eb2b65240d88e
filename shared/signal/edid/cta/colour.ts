import { message } from '../../../message/index.ts';
import { bit, byteAt } from '../bytes.ts';
import type { Report } from '../problems.ts';

/** Colorimetry (CTA-861-H section 7.5.5): the low bit of byte 3 first. `reserved` are bits 0 to 3 of byte 4. */
const colorimetryNames: readonly string[] = [
  'xvYCC601',
  'xvYCC709',
  'sYCC601',
  'opYCC601',
  'opRGB',
  'BT2020cYCC',
  'BT2020YCC',
  'BT2020RGB',
  'Reserved MD0',
  'Reserved MD1',
  'Reserved MD2',
  'Reserved MD3',
  'Default',
  'sRGB',
  'ICtCp',
  'ST2113RGB',
];

/** Names of the bits set, lowest first. */
export const namesOfColorimetry = (bits: number): string[] => colorimetryNames.filter((_, i) => bit(bits, i));

/** Electro-optical transfer functions (CTA-861-H section 7.5.13, table 94); bits 4 and 5 are reserved. */
const eotfNames: readonly string[] = [
  'Traditional gamma - SDR luminance range',
  'Traditional gamma - HDR luminance range',
  'SMPTE ST2084',
  'Hybrid Log-Gamma',
  'Unknown (4)',
  'Unknown (5)',
];

/** Names of the bits set, lowest first. */
export const namesOfEotfs = (bits: number): string[] => eotfNames.filter((_, i) => bit(bits, i));

/** HDR static metadata (CTA-861-H section 7.5.13). Luminances are codes; null where the block ends before them. */
export type HdrStatic = {
  eotfBits: number;
  metadataTypeBits: number;
  maxLuminanceCode: number | null;
  maxFrameAverageCode: number | null;
  minLuminanceCode: number | null;
};

/** Desired maximum or frame-average luminance in cd/m² of a code: 50 × 2^(code / 32). */
export const luminanceOf = (code: number): number => 50 * 2 ** (code / 32);

/** Desired minimum luminance in cd/m²: the maximum × (code / 255)² / 100. */
export const minLuminanceOf = (code: number, maxLuminanceCode: number): number =>
  (luminanceOf(maxLuminanceCode) * (code / 255) ** 2) / 100;

export function decodeHdrStatic(payload: Uint8Array, report: Report): HdrStatic {
  if (payload.length < 2) report('error', 0, message('edid/hdrStaticTooShort'));
  return {
    eotfBits: payload.length < 2 ? 0 : byteAt(payload, 0) & 63,
    metadataTypeBits: byteAt(payload, 1),
    maxLuminanceCode: payload[2] ?? null,
    maxFrameAverageCode: payload[3] ?? null,
    minLuminanceCode: payload[4] ?? null,
  };
}

export function encodeHdrStatic(hdr: HdrStatic): number[] {
  const codes = [hdr.maxLuminanceCode, hdr.maxFrameAverageCode, hdr.minLuminanceCode];
  const end = codes.indexOf(null);
  const present = (end < 0 ? codes : codes.slice(0, end)).map((code) => code ?? 0);
  return [hdr.eotfBits, hdr.metadataTypeBits, ...present];
}

/** One type of HDR dynamic metadata with its bytes of support flags (CTA-861-H section 7.5.14). */
export type HdrDynamicType = { type: number; support: Uint8Array };

export function decodeHdrDynamic(payload: Uint8Array, report: Report): HdrDynamicType[] {
  const types: HdrDynamicType[] = [];
  let at = 0;
  while (at < payload.length) {
    const length = byteAt(payload, at);
    if (length < 2 || at + length >= payload.length) {
      report('error', at, message('edid/hdrDynamicOverruns'));
      break;
    }
    types.push({
      type: byteAt(payload, at + 1) + byteAt(payload, at + 2) * 256,
      support: payload.slice(at + 3, at + 1 + length),
    });
    at += 1 + length;
  }
  return types;
}

export const encodeHdrDynamic = (types: readonly HdrDynamicType[]): number[] =>
  types.flatMap(({ type, support }) => [support.length + 2, type & 255, type >> 8, ...support]);

/** How overscan is treated; 0 stands for no data in PT, not supported in IT and CE (CTA-861-H table 77). */
export type OverscanCode = 0 | 1 | 2 | 3;

/** Video capability (CTA-861-H section 7.5.6). */
export type VideoCapability = {
  selectableYccRange: boolean;
  selectableRgbRange: boolean;
  preferredOverscan: OverscanCode;
  itOverscan: OverscanCode;
  ceOverscan: OverscanCode;
};

export function decodeVideoCapability(payload: Uint8Array): VideoCapability {
  const value = byteAt(payload, 0);
  return {
    selectableYccRange: bit(value, 7),
    selectableRgbRange: bit(value, 6),
    preferredOverscan: ((value >> 4) & 3) as OverscanCode,
    itOverscan: ((value >> 2) & 3) as OverscanCode,
    ceOverscan: (value & 3) as OverscanCode,
  };
}

export const encodeVideoCapability = (value: VideoCapability): number =>
  (value.selectableYccRange ? 128 : 0) +
  (value.selectableRgbRange ? 64 : 0) +
  value.preferredOverscan * 16 +
  value.itOverscan * 4 +
  value.ceOverscan;
