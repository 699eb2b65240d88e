import { textOf } from './bytes.ts';
import type { Stamp } from './stamp.ts';

/** Keys that hold the time of a JSON line, in order of preference: common practice, no source. */
const timeKeys = ['time', 'timestamp', '@timestamp', 'ts', 't', 'datetime', 'date', 'eventTime', '_time'];

const longestTime = 64;
const encoder = new TextEncoder();
/** Three bytes of UTF-8 hold one UTF-16 unit at most. */
const scratch = new Uint8Array(3 * longestTime);

type ReadText = (bytes: Uint8Array, start: number, end: number, stamp: Stamp) => boolean;

/**
 * Reads the time of a line that is one JSON object: text in any form that `readText` takes, or a number counted from
 * 1970 in s, ms, µs or ns, told by its size. The key that served last is tried first; so one reader a log.
 */
export function createJsonStampReader(readText: ReadText) {
  let lastKey = timeKeys[0] as string;
  return (bytes: Uint8Array, start: number, end: number, stamp: Stamp): boolean => {
    const fields = objectIn(textOf(bytes, start, end));
    if (fields === null) return false;
    if (!readValue(fields[lastKey], readText, stamp)) {
      const key = timeKeys.find((candidate) => readValue(fields[candidate], readText, stamp));
      if (key === undefined) return false;
      lastKey = key;
    }
    stamp.format = 'json';
    stamp.end = start;
    return true;
  };
}

function objectIn(text: string): Record<string, unknown> | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? (value as Record<string, unknown>)
      : null;
  } catch {
    return null;
  }
}

function readValue(value: unknown, readText: ReadText, stamp: Stamp): boolean {
  if (typeof value === 'number') return readEpoch(value, stamp);
  if (typeof value !== 'string' || value.length < 9 || value.length > longestTime) return false;
  if (/^\d{9,19}(\.\d+)?$/.test(value)) return readEpoch(Number(value), stamp);
  return readText(scratch, 0, encoder.encodeInto(value, scratch).written, stamp);
}

/** 1e8 s is 1973, so that what counts seconds since boot or holds something else is left alone. */
function readEpoch(value: number, stamp: Stamp): boolean {
  if (!(value >= 1e8 && value < 1e19)) return false;
  stamp.base = 'utc';
  if (value < 1e11) stamp.ms = value * 1000;
  else if (value < 1e14) stamp.ms = value;
  else if (value < 1e17) stamp.ms = value / 1000;
  else stamp.ms = value / 1e6;
  return true;
}
