import { closeBracket, comma, dot, openBracket, semicolon, space } from './ascii.ts';
import { digitsAt, fractionMs, type Stamp, skipDigits } from './stamp.ts';

/** Reads `[   12.345678]`, seconds since boot, at `at`. Form of the kernel's own console; from memory. */
export function readBootSeconds(bytes: Uint8Array, at: number, end: number, stamp: Stamp): boolean {
  if (bytes[at] !== openBracket) return false;
  let index = at + 1;
  while (index < end && index < at + 12 && bytes[index] === space) index += 1;
  const wholeEnd = skipDigits(bytes, index, end, 10);
  if (wholeEnd === index || bytes[wholeEnd] !== dot) return false;
  const fractionEnd = skipDigits(bytes, wholeEnd + 1, end, 9);
  if (fractionEnd === wholeEnd + 1 || fractionEnd >= end || bytes[fractionEnd] !== closeBracket) return false;
  const seconds = digitsAt(bytes, index, wholeEnd - index, end);
  // So many seconds are since 1970: no device has run for twenty years.
  if (seconds >= 631_152_000) return false;
  return placed(stamp, seconds * 1000 + fractionMs(bytes, wholeEnd + 1, fractionEnd), fractionEnd + 1);
}

/**
 * Reads `priority,sequence,microseconds,flags;` at `at`. Source: the Linux kernel's Documentation/ABI/testing/dev-kmsg,
 * which lets more fields follow before the semicolon.
 */
export function readKernelRecord(bytes: Uint8Array, at: number, end: number, stamp: Stamp): boolean {
  const priorityEnd = skipDigits(bytes, at, end, 4);
  if (priorityEnd === at || bytes[priorityEnd] !== comma) return false;
  const sequenceEnd = skipDigits(bytes, priorityEnd + 1, end, 20);
  if (sequenceEnd === priorityEnd + 1 || bytes[sequenceEnd] !== comma) return false;
  const timeEnd = skipDigits(bytes, sequenceEnd + 1, end, 15);
  if (timeEnd === sequenceEnd + 1 || bytes[timeEnd] !== comma) return false;
  const limit = Math.min(end, timeEnd + 80);
  for (let index = timeEnd + 1; index < limit; index += 1) {
    if (bytes[index] !== semicolon) continue;
    const micros = digitsAt(bytes, sequenceEnd + 1, timeEnd - sequenceEnd - 1, end);
    return placed(stamp, micros / 1000, index + 1);
  }
  return false;
}

function placed(stamp: Stamp, ms: number, end: number): true {
  stamp.format = 'kernel';
  stamp.base = 'boot';
  stamp.ms = ms;
  stamp.end = end;
  return true;
}
