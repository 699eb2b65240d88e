import { message } from '../../../message/index.ts';
import { type FrlRate, frlRates } from '../../format/index.ts';
import { bit, byteAt, flagByte } from '../bytes.ts';
import type { Report } from '../problems.ts';

/** Byte after the rate (HDMI 2.1 section 10.3.2, PB3). */
export type ForumFlags = {
  scdcPresent: boolean;
  readRequest: boolean;
  cableStatus: boolean;
  colourContentBpc: boolean;
  scramblingBelow340: boolean;
  independentView: boolean;
  dualView: boolean;
  threeDOsdDisparity: boolean;
};

/** Low half of PB4. */
export type ForumDeepColour420 = { uhdVic: boolean; dc48: boolean; dc36: boolean; dc30: boolean };

/** PB5. */
export type ForumFeatures = {
  fapaEndExtended: boolean;
  qms: boolean;
  mDelta: boolean;
  cinemaVrr: boolean;
  negativeMvrr: boolean;
  fastVactive: boolean;
  allm: boolean;
  fapaInBlanking: boolean;
};

/** PB8 to PB10 (HDMI 2.1 section 10.3.2, table 10-6). `maxFrlCode` counts as the link's own code. */
export type ForumDsc = {
  dsc12a: boolean;
  native420: boolean;
  qmsTfrMax: boolean;
  qmsTfrMin: boolean;
  allBpp: boolean;
  bpc16: boolean;
  bpc12: boolean;
  bpc10: boolean;
  maxFrlCode: number;
  maxSlicesCode: number;
  /** Bytes in a line of chunks: (value + 1) KiB. */
  chunkCode: number;
};

/**
 * HDMI Forum sink capabilities, in a vendor block (OUI C4-5D-D8) or in their own block (extended tag 79h), both of the
 * same content (HDMI 2.1 sections 10.3.2 and 10.3.6). What a short block lacks is null.
 */
export type HdmiForumBlock = {
  version: number;
  /** In steps of 5 MHz as written; 0 where nothing above 340 MHz is supported. */
  maxTmdsCharacterRateMHz: number | null;
  flags: ForumFlags | null;
  /** Max_FRL_Rate as written, 0..15; see `frlRateOf`. */
  maxFrlCode: number | null;
  deepColour420: ForumDeepColour420 | null;
  features: ForumFeatures | null;
  /** 0 where not stated. */
  vrrMinHz: number | null;
  vrrMaxHz: number | null;
  dsc: ForumDsc | null;
  rest: Uint8Array;
};

/**
 * The highest fixed rate link a Max_FRL_Rate code stands for, 1 to 6 from the slowest up; null for none (0). A code past
 * the table stands for a later standard's rate: whoever has one does at least the fastest here (HDMI 2.1 table 10-5;
 * that rates keep growing with the code is assumed).
 */
export const frlRateOf = (code: number | null): FrlRate | null =>
  frlRates[Math.min(code ?? 0, frlRates.length) - 1] ?? null;

function decodeDsc(payload: Uint8Array): ForumDsc {
  const flags = byteAt(payload, 7);
  return {
    dsc12a: bit(flags, 7),
    native420: bit(flags, 6),
    qmsTfrMax: bit(flags, 5),
    qmsTfrMin: bit(flags, 4),
    allBpp: bit(flags, 3),
    bpc16: bit(flags, 2),
    bpc12: bit(flags, 1),
    bpc10: bit(flags, 0),
    maxFrlCode: byteAt(payload, 8) >> 4,
    maxSlicesCode: byteAt(payload, 8) & 15,
    chunkCode: byteAt(payload, 9) & 63,
  };
}

function decodeFlags(value: number): ForumFlags {
  return {
    scdcPresent: bit(value, 7),
    readRequest: bit(value, 6),
    cableStatus: bit(value, 5),
    colourContentBpc: bit(value, 4),
    scramblingBelow340: bit(value, 3),
    independentView: bit(value, 2),
    dualView: bit(value, 1),
    threeDOsdDisparity: bit(value, 0),
  };
}

function decodeFeatures(value: number): ForumFeatures {
  return {
    fapaEndExtended: bit(value, 7),
    qms: bit(value, 6),
    mDelta: bit(value, 5),
    cinemaVrr: bit(value, 4),
    negativeMvrr: bit(value, 3),
    fastVactive: bit(value, 2),
    allm: bit(value, 1),
    fapaInBlanking: bit(value, 0),
  };
}

const decodeDeepColour = (value: number): ForumDeepColour420 => ({
  uhdVic: bit(value, 3),
  dc48: bit(value, 2),
  dc36: bit(value, 1),
  dc30: bit(value, 0),
});

/** Notes a code past the table, see `frlRateOf`. */
function reportLaterRate(code: number | null, at: number, report: Report): void {
  if ((code ?? 0) > frlRates.length)
    report('note', at, message('edid/frlRateUnknown', { code: String(code) }));
}

/** Reads what follows the OUI or, in the block of its own, the two reserved bytes. */
export function decodeHdmiForum(payload: Uint8Array, report: Report): HdmiForumBlock {
  if (payload.length < 4) report('error', 0, message('edid/forumBlockTooShort'));
  const [version = 0, rate, flags, frl, features, vrr, vrrLow, dsc] = payload;
  const maxFrlCode = frl === undefined ? null : frl >> 4;
  const compression = dsc === undefined ? null : decodeDsc(payload);
  reportLaterRate(maxFrlCode, 3, report);
  if (compression?.dsc12a) reportLaterRate(compression.maxFrlCode, 8, report);
  return {
    version,
    maxTmdsCharacterRateMHz: rate === undefined ? null : rate * 5,
    flags: flags === undefined ? null : decodeFlags(flags),
    maxFrlCode,
    deepColour420: frl === undefined ? null : decodeDeepColour(frl),
    features: features === undefined ? null : decodeFeatures(features),
    vrrMinHz: vrr === undefined ? null : vrr & 63,
    vrrMaxHz: vrr === undefined || vrrLow === undefined ? null : (vrr >> 6) * 256 + vrrLow,
    dsc: compression,
    rest: payload.slice(10),
  };
}

const encodeFlags = (flags: ForumFlags): number =>
  flagByte(
    flags.scdcPresent,
    flags.readRequest,
    flags.cableStatus,
    flags.colourContentBpc,
    flags.scramblingBelow340,
    flags.independentView,
    flags.dualView,
    flags.threeDOsdDisparity,
  );

const encodeFeatures = (features: ForumFeatures): number =>
  flagByte(
    features.fapaEndExtended,
    features.qms,
    features.mDelta,
    features.cinemaVrr,
    features.negativeMvrr,
    features.fastVactive,
    features.allm,
    features.fapaInBlanking,
  );

const encodeDsc = (dsc: ForumDsc): number[] => [
  flagByte(
    dsc.dsc12a,
    dsc.native420,
    dsc.qmsTfrMax,
    dsc.qmsTfrMin,
    dsc.allBpp,
    dsc.bpc16,
    dsc.bpc12,
    dsc.bpc10,
  ),
  dsc.maxFrlCode * 16 + dsc.maxSlicesCode,
  dsc.chunkCode,
];

/** What follows the OUI or the two reserved bytes; stops at the first part that is null. */
export function encodeHdmiForum(block: HdmiForumBlock): number[] {
  const {
    maxTmdsCharacterRateMHz,
    flags,
    maxFrlCode,
    deepColour420: deep,
    features,
    vrrMinHz,
    vrrMaxHz,
  } = block;
  const bytes = [block.version];
  if (maxTmdsCharacterRateMHz === null) return bytes;
  bytes.push(maxTmdsCharacterRateMHz / 5);
  if (!flags) return bytes;
  bytes.push(encodeFlags(flags));
  if (maxFrlCode === null || !deep) return bytes;
  bytes.push(maxFrlCode * 16 + flagByte(deep.uhdVic, deep.dc48, deep.dc36, deep.dc30));
  if (!features) return bytes;
  bytes.push(encodeFeatures(features));
  if (vrrMinHz === null) return bytes;
  bytes.push(vrrMinHz + ((vrrMaxHz ?? 0) >> 8) * 64);
  if (vrrMaxHz === null) return bytes;
  bytes.push(vrrMaxHz & 255);
  return block.dsc ? [...bytes, ...encodeDsc(block.dsc), ...block.rest] : bytes;
}
