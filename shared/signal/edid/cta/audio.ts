import { message } from '../../../message/index.ts';
import { bit, byteAt } from '../bytes.ts';
import type { Report } from '../problems.ts';

/**
 * One short audio descriptor (CTA-861-H section 7.5.2, tables 59 to 65). Format code 15 is followed by an extended
 * code. The bits a format leaves to itself stay in `detail`.
 */
export type AudioDescriptor = {
  formatCode: number;
  /** Null unless `formatCode` is 15. */
  extendedCode: number | null;
  /** Most channels, from 1; null where the format has no such field. */
  channels: number | null;
  /** Bit 0 32 kHz, 44.1, 48, 88.2, 96, 176.4, bit 6 192 kHz. */
  rateBits: number;
  /** The third byte: sample sizes (L-PCM), highest bit rate in 8 kbit/s (codes 2 to 8), else as the format says. */
  detail: number;
  /** Bits that neither channels nor rates use: bits 7 of both bytes as bits 7 and 6, and a level in bits 2 to 0. */
  spare: number;
};

/** Lowest first, kHz; the order of `rateBits`. */
const ratesKHz = [32, 44.1, 48, 88.2, 96, 176.4, 192] as const;

/** Names of CTA-861-H table 60, as the reference program writes them so that both can be compared. */
const formatNames: readonly (string | null)[] = [
  null,
  'Linear PCM',
  'AC-3',
  'MPEG 1 (Layers 1 & 2)',
  'MPEG 1 Layer 3 (MP3)',
  'MPEG2 (multichannel)',
  'AAC LC',
  'DTS',
  'ATRAC',
  'One Bit Audio',
  'Enhanced AC-3 (DD+)',
  'DTS-HD',
  'MAT (MLP)',
  'DST',
  'WMA Pro',
];

/** CTA-861-H table 65 (extended codes), named likewise. */
const extendedNames: Readonly<Record<number, string>> = {
  1: 'HE AAC (Obsolete)',
  2: 'HE AAC v2 (Obsolete)',
  3: 'MPEG Surround (Obsolete)',
  4: 'MPEG-4 HE AAC',
  5: 'MPEG-4 HE AAC v2',
  6: 'MPEG-4 AAC LC',
  7: 'DRA',
  8: 'MPEG-4 HE AAC + MPEG Surround',
  10: 'MPEG-4 AAC LC + MPEG Surround',
  11: 'MPEG-H 3D Audio',
  12: 'AC-4',
  13: 'L-PCM 3D Audio',
  14: 'Auro-Cx',
  15: 'MPEG-D USAC',
};

const extended = 15;
const lpcm = 1;
const lpcm3D = 13;
const mpegH3D = 11;
const ac4 = 12;
const code14 = 14;

/**
 * True where the channel bits say nothing: MPEG-H 3D has a level there; AC-4 and code 14 have them fixed at 0, which
 * read plainly is one channel, and anything else says nothing.
 */
function hidesChannels(extendedCode: number | null, bits: number): boolean {
  if (extendedCode === mpegH3D) return true;
  return (extendedCode === ac4 || extendedCode === code14) && bits > 0;
}

/** Names the format of a descriptor. */
export function audioFormatName(descriptor: Pick<AudioDescriptor, 'formatCode' | 'extendedCode'>): string {
  const { formatCode, extendedCode } = descriptor;
  if (formatCode !== extended) return formatNames[formatCode] ?? 'Reserved (0x00)';
  const code = extendedCode ?? 0;
  return extendedNames[code] ?? `Unknown Audio Ext Format (0x${code.toString(16).padStart(2, '0')})`;
}

/** Sample rates in kHz, highest first. */
export const audioRatesKHz = (descriptor: Pick<AudioDescriptor, 'rateBits'>): number[] =>
  ratesKHz.filter((_, i) => bit(descriptor.rateBits, i)).reverse();

/** Sample sizes in bits of L-PCM (CTA-861-H table 61); empty for other formats. */
export function sampleSizes(descriptor: AudioDescriptor): number[] {
  const plain = descriptor.formatCode === lpcm;
  const threeD = descriptor.formatCode === extended && descriptor.extendedCode === lpcm3D;
  if (!plain && !threeD) return [];
  return [16, 20, 24].filter((_, i) => bit(descriptor.detail, i));
}

/** L-PCM 3D spreads five channel bits over both bytes (CTA-861-H table 67): MC3 and MC4 are their bits 7. */
function decodeOne(a: number, b: number, c: number): AudioDescriptor {
  const formatCode = (a >> 3) & 15;
  const extendedCode = formatCode === extended ? c >> 3 : null;
  const bits = a & 7;
  const threeD = extendedCode === lpcm3D;
  const hidden = hidesChannels(extendedCode, bits);
  return {
    formatCode,
    extendedCode,
    channels: hidden ? null : bits + 1 + (threeD ? (a >> 7) * 8 + (b >> 7) * 16 : 0),
    rateBits: b & 127,
    detail: extendedCode === null ? c : c & 7,
    spare: threeD ? 0 : (a & 128) + (b & 128) / 2 + (hidden ? bits : 0),
  };
}

function encodeOne(descriptor: AudioDescriptor): [number, number, number] {
  const { formatCode, extendedCode, spare } = descriptor;
  const third = extendedCode === null ? descriptor.detail : extendedCode * 8 + descriptor.detail;
  const channels = (descriptor.channels ?? (spare & 7) + 1) - 1;
  if (extendedCode === lpcm3D) {
    return [
      ((channels >> 3) & 1) * 128 + formatCode * 8 + (channels & 7),
      (channels >> 4) * 128 + descriptor.rateBits,
      third,
    ];
  }
  return [(spare & 128) + formatCode * 8 + channels, (spare & 64) * 2 + descriptor.rateBits, third];
}

/** Reads descriptors of three bytes. A block that doesn't hold whole ones is reported, and none of it is believed. */
export function decodeAudio(payload: Uint8Array, report: Report): AudioDescriptor[] {
  const descriptors: AudioDescriptor[] = [];
  if (payload.length % 3 !== 0) {
    report('error', 0, message('edid/audioNotWhole', { bytes: payload.length }));
    return descriptors;
  }
  for (let i = 0; i + 2 < payload.length; i += 3)
    descriptors.push(decodeOne(byteAt(payload, i), byteAt(payload, i + 1), byteAt(payload, i + 2)));
  return descriptors;
}

export function encodeAudio(descriptors: readonly AudioDescriptor[]): Uint8Array {
  const bytes = new Uint8Array(descriptors.length * 3);
  for (const [i, descriptor] of descriptors.entries()) bytes.set(encodeOne(descriptor), i * 3);
  return bytes;
}
