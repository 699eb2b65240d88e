import {
  backslash,
  colon,
  comma,
  dot,
  hyphen,
  lowerA,
  lowerZ,
  plus,
  quote,
  space,
  tab,
  upperE,
} from './ascii.ts';
import { textOf, utf8Of } from './bytes.ts';
import { isDigit, type Stamp } from './stamp.ts';

/** Keys that hold the time of a JSON line: common practice, no source. */
const timeKeys = ['time', 'timestamp', '@timestamp', 'ts', 't', 'datetime', 'date', 'eventTime', '_time'];
const timeKeyBytes = timeKeys.map(utf8Of);

type ReadText = (bytes: Uint8Array, start: number, end: number, stamp: Stamp) => boolean;

const longestTime = 64;
/** Members looked at before the whole line is parsed: assumed; loggers put the time first, or nearly so. */
const mostMembers = 12;

/**
 * Reads the time of a line that begins as a JSON object: the first member under one of the usual keys that holds text
 * in any form that `readText` takes, or a number counted from 1970 in s, ms, µs or ns, told by its size.
 */
export function readJson(
  bytes: Uint8Array,
  start: number,
  end: number,
  readText: ReadText,
  stamp: Stamp,
): boolean {
  if (
    !readLeading(bytes, start, end, readText, stamp) &&
    !readWhole(textOf(bytes, start, end), readText, stamp)
  )
    return false;
  stamp.format = 'json';
  stamp.end = start;
  return true;
}

/** Walks the members up to the first that isn't plain, so that most lines need not be parsed as a whole. */
function readLeading(
  bytes: Uint8Array,
  start: number,
  end: number,
  readText: ReadText,
  stamp: Stamp,
): boolean {
  let at = start + 1;
  for (let member = 0; member < mostMembers && at > 0; member += 1) {
    const keyAt = skipBlanks(bytes, at, end) + 1;
    const keyEnd = plainTextEnd(bytes, keyAt, end);
    const colonAt = skipBlanks(bytes, keyEnd + 1, end);
    if (keyEnd < 0 || colonAt >= end || bytes[colonAt] !== colon) return false;
    const valueAt = skipBlanks(bytes, colonAt + 1, end);
    const isText = bytes[valueAt] === quote;
    const valueEnd = isText ? plainTextEnd(bytes, valueAt + 1, end) : bareEnd(bytes, valueAt, end);
    if (isTimeKey(bytes, keyAt, keyEnd) && readValue(bytes, valueAt, valueEnd, readText, stamp)) return true;
    at = nextMember(bytes, isText ? valueEnd + 1 : valueEnd, end);
  }
  return false;
}

/** Index after the comma that follows a value's end; 0 where there is none, or no value. */
function nextMember(bytes: Uint8Array, valueEnd: number, end: number): number {
  const at = valueEnd > 0 ? skipBlanks(bytes, valueEnd, end) : end;
  return at < end && bytes[at] === comma ? at + 1 : 0;
}

/** Reads a value whose end is known: text, `end` being its closing quote, or a number. */
function readValue(bytes: Uint8Array, at: number, end: number, readText: ReadText, stamp: Stamp): boolean {
  if (end < 0) return false;
  if (bytes[at] === quote) return readTextValue(bytes, at + 1, end, readText, stamp);
  return readEpoch(Number(textOf(bytes, at, end)), stamp);
}

function readWhole(text: string, readText: ReadText, stamp: Stamp): boolean {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return false;
  }
  if (typeof value !== 'object' || value === null) return false;
  return Object.entries(value).some(([key, time]) => {
    if (!timeKeys.includes(key)) return false;
    if (typeof time === 'number') return readEpoch(time, stamp);
    if (typeof time !== 'string' || time.length > longestTime) return false;
    const encoded = utf8Of(time);
    return readTextValue(encoded, 0, encoded.length, readText, stamp);
  });
}

function readTextValue(
  bytes: Uint8Array,
  start: number,
  end: number,
  readText: ReadText,
  stamp: Stamp,
): boolean {
  if (end === start || end - start > longestTime) return false;
  return readText(bytes, start, end, stamp) || readEpoch(Number(textOf(bytes, start, end)), stamp);
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

/** End of the text that begins at `at`, behind its opening quote; -1 where it has escapes or doesn't end. */
function plainTextEnd(bytes: Uint8Array, at: number, end: number): number {
  if (at > end || bytes[at - 1] !== quote) return -1;
  for (let index = at; index < end; index += 1) {
    if (bytes[index] === quote) return index;
    if (bytes[index] === backslash) return -1;
  }
  return -1;
}

/** End of the number or word that begins at `at`; -1 for what is nested. */
function bareEnd(bytes: Uint8Array, at: number, end: number): number {
  for (let index = at; index < end; index += 1) {
    const byte = bytes[index] as number;
    const isBare = isDigit(byte) || (byte >= lowerA && byte <= lowerZ) || byte === plus || byte === hyphen;
    if (!isBare && byte !== dot && byte !== upperE) return index > at ? index : -1;
  }
  return -1;
}

function skipBlanks(bytes: Uint8Array, at: number, end: number): number {
  let index = at;
  while (index < end && (bytes[index] === space || bytes[index] === tab)) index += 1;
  return index;
}

function isTimeKey(bytes: Uint8Array, start: number, end: number): boolean {
  return timeKeyBytes.some(
    (key) => key.length === end - start && key.every((byte, index) => bytes[start + index] === byte),
  );
}
