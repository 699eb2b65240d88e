import { dot, greaterThan, hyphen, lessThan, openBrace, openBracket, space } from './ascii.ts';
import { utf8Of } from './bytes.ts';
import { emptyStamp, isDigit, type LogFormat, type Stamp, type StampBase, skipDigits } from './stamp.ts';
import { readCtime, readMonthDay } from './stamp-calendar.ts';
import { createDateReader, type DateReader } from './stamp-date.ts';
import { readIso } from './stamp-iso.ts';
import { readJson } from './stamp-json.ts';
import { readBootSeconds, readKernelRecord } from './stamp-kernel.ts';

export type StampReader = (bytes: Uint8Array, start: number, end: number, stamp: Stamp) => boolean;

/** How far into a line an ISO stamp may begin, behind a level or a name: assumed. */
const deepestStamp = 48;

/**
 * A reader of the stamp at the head of a line, whichever of `logFormats` it has; files may mix them. A line's first
 * bytes tell the format; where they don't (a level or a name before the stamp), the place that held the stamp last
 * is tried first. So one reader a log.
 */
export function createStampReader(dates: DateReader = createDateReader(null)): StampReader {
  let lastDepth = 0;
  return (bytes, start, end, stamp) => {
    const first = bytes[start] as number;
    if (first === openBrace) return readJson(bytes, start, end, readPlain, stamp);
    if (readPlain(bytes, start, end, stamp) || dates.read(bytes, start, end, stamp)) return true;
    if (lastDepth > 0 && readIsoAt(bytes, start + lastDepth, end, stamp)) return true;
    const limit = Math.min(end - 13, start + deepestStamp);
    for (let at = start + 1; at <= limit; at += 1) {
      if (!mayBeginIso(bytes, at) || !readIsoAt(bytes, at, end, stamp)) continue;
      lastDepth = at - start;
      return true;
    }
    return false;
  };
}

/**
 * What a single line, or a time copied out of one, says about when it was written.
 *
 * @returns null where no stamp is found; `ms` counts from what `base` says
 */
export function readStamp(line: string): { format: LogFormat; base: StampBase; ms: number } | null {
  const bytes = utf8Of(line.trim().slice(0, 1000));
  const stamp = emptyStamp();
  if (bytes.length === 0 || !createStampReader()(bytes, 0, bytes.length, stamp)) return null;
  return { format: stamp.format, base: stamp.base, ms: stamp.ms };
}

function readPlain(bytes: Uint8Array, start: number, end: number, stamp: Stamp): boolean {
  const first = bytes[start] as number;
  if (first === lessThan) return readPrioritised(bytes, start, end, stamp);
  if (first === openBracket) return readBracketed(bytes, start, end, stamp);
  if (isDigit(first))
    return readIsoAt(bytes, start, end, stamp) || readKernelRecord(bytes, start, end, stamp);
  return readMonthDay(bytes, start, end, stamp) || readCtime(bytes, start, end, stamp);
}

/** After `<priority>`: RFC 5424, 6; RFC 3164, 4.1; an ISO stamp as newer senders put it; or a kernel's own form. */
function readPrioritised(bytes: Uint8Array, start: number, end: number, stamp: Stamp): boolean {
  const digitsEnd = skipDigits(bytes, start + 1, end, 3);
  if (digitsEnd === start + 1 || bytes[digitsEnd] !== greaterThan) return false;
  const at = digitsEnd + 1;
  const versionEnd = skipDigits(bytes, at, end, 3);
  if (versionEnd > at && bytes[versionEnd] === space) {
    if (!readIso(bytes, versionEnd + 1, end, stamp)) return false;
    stamp.format = 'rfc5424';
    return true;
  }
  return (
    readMonthDay(bytes, at, end, stamp) ||
    readIsoAt(bytes, at, end, stamp) ||
    readBracketed(bytes, at, end, stamp)
  );
}

function readBracketed(bytes: Uint8Array, at: number, end: number, stamp: Stamp): boolean {
  if (bytes[at] !== openBracket) return false;
  return (
    readBootSeconds(bytes, at, end, stamp) ||
    readIsoAt(bytes, at + 1, end, stamp) ||
    readCtime(bytes, at + 1, end, stamp)
  );
}

function readIsoAt(bytes: Uint8Array, at: number, end: number, stamp: Stamp): boolean {
  if (at + 13 > end || !readIso(bytes, at, end, stamp)) return false;
  stamp.format = 'iso';
  return true;
}

/** A digit that begins a number: cheap enough to ask of every byte. */
function mayBeginIso(bytes: Uint8Array, at: number): boolean {
  const before = bytes[at - 1] as number;
  const byte = bytes[at] as number;
  return isDigit(byte) && !isDigit(before) && before !== hyphen && before !== dot;
}
