import { message } from '../../../message/index.ts';
import { bit, byteAt, flagByte } from '../bytes.ts';
import type { Report } from '../problems.ts';

/** Two latencies as written: 0 unknown, 1..251 is (value - 1) * 2 ms, 255 not supported (HDMI 1.4b section 8.3.2). */
export type Latency = { videoCode: number; audioCode: number };

/** A latency in ms; null where it isn't known or there is nothing that could be late (codes 0, 252 up). */
export const latencyMs = (code: number): number | null => (code >= 1 && code <= 251 ? (code - 1) * 2 : null);

/** What follows byte 12 of the block (HDMI 1.4b section 8.3.2, HDMI_Video_present). `structures` is kept as read. */
export type HdmiVideo = {
  threeDPresent: boolean;
  threeDMultiCode: number;
  imageSizeCode: number;
  hdmiVics: readonly number[];
  threeD: Uint8Array;
};

export type HdmiCapabilities = {
  supportsAi: boolean;
  dc48: boolean;
  dc36: boolean;
  dc30: boolean;
  dcY444: boolean;
  dviDual: boolean;
};

export type HdmiDetails = {
  contentTypes: { graphics: boolean; photo: boolean; cinema: boolean; game: boolean };
  latency: Latency | null;
  interlacedLatency: Latency | null;
  video: HdmiVideo | null;
};

/** Vendor-specific data block with OUI 00-0C-03 (HDMI 1.4b section 8.3.2). What a short block lacks is null. */
export type HdmiBlock = {
  /** CEC physical address, four hexadecimal digits with dots. */
  physicalAddress: string | null;
  capabilities: HdmiCapabilities | null;
  /** In steps of 5 MHz as written; 0 where the sink doesn't say. */
  maxTmdsClockMHz: number | null;
  details: HdmiDetails | null;
  /** Bytes after the parts that the length fields announce. */
  rest: Uint8Array;
};

/** `offset` counts from the first byte after the OUI. */
function decodeVideo(payload: Uint8Array, from: number, report: Report): [HdmiVideo, number] {
  const flags = byteAt(payload, from);
  const lengths = byteAt(payload, from + 1);
  const vicsEnd = from + 2 + (lengths >> 5);
  const end = vicsEnd + (lengths & 31);
  if (end > payload.length) report('error', from + 1, message('edid/hdmiFormatsOverrun'));
  const video = {
    threeDPresent: bit(flags, 7),
    threeDMultiCode: (flags >> 5) & 3,
    imageSizeCode: (flags >> 3) & 3,
    hdmiVics: [...payload.subarray(from + 2, vicsEnd)],
    threeD: payload.slice(vicsEnd, end),
  };
  return [video, Math.min(end, payload.length)];
}

/** Null where the block ends before it. */
const latencyAt = (payload: Uint8Array, at: number): Latency | null =>
  at + 1 < payload.length ? { videoCode: byteAt(payload, at), audioCode: byteAt(payload, at + 1) } : null;

function decodeDetails(payload: Uint8Array, report: Report): [HdmiDetails, number] {
  const flags = byteAt(payload, 4);
  let at = 5;
  const progressive = bit(flags, 7) ? latencyAt(payload, at) : null;
  if (progressive) at += 2;
  const interlaced = bit(flags, 7) && bit(flags, 6) ? latencyAt(payload, at) : null;
  if (interlaced) at += 2;
  let video: HdmiVideo | null = null;
  if (bit(flags, 5) && at < payload.length) [video, at] = decodeVideo(payload, at, report);
  const details = {
    contentTypes: {
      graphics: bit(flags, 0),
      photo: bit(flags, 1),
      cinema: bit(flags, 2),
      game: bit(flags, 3),
    },
    latency: progressive,
    interlacedLatency: interlaced,
    video,
  };
  return [details, at];
}

const decodeCapabilities = (value: number): HdmiCapabilities => ({
  supportsAi: bit(value, 7),
  dc48: bit(value, 6),
  dc36: bit(value, 5),
  dc30: bit(value, 4),
  dcY444: bit(value, 3),
  dviDual: bit(value, 0),
});

/** Four digits of four bits: 1234h is 1.2.3.4. */
const decodeAddress = (high: number, low: number): string =>
  `${(high >> 4).toString(16)}.${(high & 15).toString(16)}.${(low >> 4).toString(16)}.${(low & 15).toString(16)}`;

/** Reads what follows the OUI. */
export function decodeHdmi(payload: Uint8Array, report: Report): HdmiBlock {
  const [high = 0, low, flags, clock] = payload;
  if (low === undefined) report('error', 0, message('edid/hdmiBlockTooShort'));
  const [details, end] = payload.length > 4 ? decodeDetails(payload, report) : [null, 4];
  return {
    physicalAddress: low === undefined ? null : decodeAddress(high, low),
    capabilities: flags === undefined ? null : decodeCapabilities(flags),
    maxTmdsClockMHz: clock === undefined ? null : clock * 5,
    details,
    rest: payload.slice(end),
  };
}

const latencyBytes = (latency: Latency | null): number[] =>
  latency ? [latency.videoCode, latency.audioCode] : [];

function encodeVideo(video: HdmiVideo | null): number[] {
  if (!video) return [];
  return [
    (video.threeDPresent ? 128 : 0) + video.threeDMultiCode * 32 + video.imageSizeCode * 8,
    video.hdmiVics.length * 32 + video.threeD.length,
    ...video.hdmiVics,
    ...video.threeD,
  ];
}

function encodeDetails(details: HdmiDetails): number[] {
  const { contentTypes: types, latency, interlacedLatency, video } = details;
  return [
    flagByte(latency !== null, interlacedLatency !== null, video !== null, false) * 16 +
      flagByte(types.game, types.cinema, types.photo, types.graphics),
    ...latencyBytes(latency),
    ...latencyBytes(interlacedLatency),
    ...encodeVideo(video),
  ];
}

/** What follows the OUI. */
export function encodeHdmi(block: HdmiBlock): number[] {
  if (block.physicalAddress === null) return [];
  const [a = 0, b = 0, c = 0, d = 0] = block.physicalAddress
    .split('.')
    .map((digit) => Number.parseInt(digit, 16));
  const bytes = [a * 16 + b, c * 16 + d];
  const flags = block.capabilities;
  if (!flags) return bytes;
  bytes.push(
    flagByte(flags.supportsAi, flags.dc48, flags.dc36, flags.dc30, flags.dcY444, false, false, flags.dviDual),
  );
  if (block.maxTmdsClockMHz === null) return bytes;
  bytes.push(block.maxTmdsClockMHz / 5);
  if (!block.details) return bytes;
  return [...bytes, ...encodeDetails(block.details), ...block.rest];
}
