import { carriageReturn, lineFeed } from './ascii.ts';
import { joined, utf8Of } from './bytes.ts';

/** One line inside `bytes`: from `start` up to `end`, line end and carriage return taken off. Valid during the call. */
export type LineSink = (bytes: Uint8Array, start: number, end: number, cut: boolean) => void;

export type TextEncoding = 'utf-8' | 'utf-16le' | 'utf-16be';

export type LineReader = {
  /** Takes the next piece of the file; pieces may end anywhere, inside a character too. */
  push(chunk: Uint8Array | string): void;
  /** Hands out the last line, if the file doesn't end in a line end. Nothing may be pushed after it. */
  finish(): void;
  /** Told by the byte order mark; UTF-8 where there is none. */
  encoding(): TextEncoding;
  /** Bytes pushed so far; text counts as UTF-8. */
  bytes(): number;
};

/** Longest part of a line that is looked at, in bytes of UTF-8: assumed; a stamp and a message take far less. */
export const defaultMaxLineBytes = 16_384;

const piece = 65_536;

/**
 * Cuts a stream of bytes or text into lines. UTF-8, or UTF-16 where the file begins with its byte order mark
 * (Unicode 16, 23.8); lines end in LF or CR LF. Lines are handed out as UTF-8 bytes, so that those of no interest
 * need never be decoded. Nothing in the input makes it throw.
 *
 * @param maxLineBytes a longer line is handed out cut to this length, with `cut` true
 */
export function createLineReader(onLine: LineSink, maxLineBytes = defaultMaxLineBytes): LineReader {
  const splitter = createSplitter(onLine, maxLineBytes);
  let head: Uint8Array | null = new Uint8Array(0);
  let encoding: TextEncoding = 'utf-8';
  let utf16: InstanceType<typeof TextDecoder> | null = null;
  let highSurrogate = '';
  let total = 0;

  const pushDecided = (bytes: Uint8Array): void => {
    if (utf16 === null) splitter.push(bytes);
    else pushText(utf16.decode(bytes, { stream: true }), (encoded) => splitter.push(encoded));
  };
  const decide = (start: Uint8Array): void => {
    head = null;
    encoding = encodingOf(start);
    if (encoding !== 'utf-8') utf16 = new TextDecoder(encoding);
    pushDecided(startsWithUtf8Mark(start) ? start.subarray(3) : start);
  };
  const pushBytes = (bytes: Uint8Array): void => {
    if (head === null) {
      pushDecided(bytes);
      return;
    }
    const start = joined(head, bytes);
    if (start.length < 3) head = start;
    else decide(start);
  };
  const takeBytes = (bytes: Uint8Array): void => {
    total += bytes.length;
    pushBytes(bytes);
  };
  const pushText = (text: string, take: (encoded: Uint8Array) => void): void => {
    const whole = highSurrogate + text;
    const splitsPair = /[\uD800-\uDBFF]$/.test(whole);
    highSurrogate = splitsPair ? whole.slice(-1) : '';
    const end = splitsPair ? whole.length - 1 : whole.length;
    for (let from = 0; from < end; ) {
      let to = Math.min(end, from + piece);
      if (to < end && /[\uD800-\uDBFF]/.test(whole.charAt(to - 1))) to += 1;
      take(utf8Of(whole.slice(from, to)));
      from = to;
    }
  };

  return {
    push: (chunk) => (typeof chunk === 'string' ? pushText(chunk, takeBytes) : takeBytes(chunk)),
    finish: () => {
      if (head !== null) decide(head);
      const rest = (utf16?.decode() ?? '') + highSurrogate;
      if (rest !== '') splitter.push(utf8Of(rest));
      splitter.finish();
    },
    encoding: () => encoding,
    bytes: () => total,
  };
}

function createSplitter(onLine: LineSink, maxLineBytes: number) {
  const pending = new Uint8Array(maxLineBytes);
  let pendingLength = 0;
  let overflowed = false;
  let open = false;

  const emit = (bytes: Uint8Array, start: number, end: number, cut: boolean): void => {
    let to = end;
    if (!cut) while (to > start && bytes[to - 1] === carriageReturn) to -= 1;
    onLine(bytes, start, to, cut);
  };
  const keep = (bytes: Uint8Array, start: number, end: number): void => {
    const room = Math.min(end - start, maxLineBytes - pendingLength);
    pending.set(bytes.subarray(start, start + room), pendingLength);
    pendingLength += room;
    if (room < end - start) overflowed = true;
    open = true;
  };
  const closePending = (): void => {
    emit(pending, 0, pendingLength, overflowed);
    pendingLength = 0;
    overflowed = false;
    open = false;
  };

  return {
    push(bytes: Uint8Array): void {
      let start = 0;
      if (open) {
        const end = bytes.indexOf(lineFeed);
        keep(bytes, 0, end < 0 ? bytes.length : end);
        if (end < 0) return;
        closePending();
        start = end + 1;
      }
      for (let end = bytes.indexOf(lineFeed, start); end >= 0; end = bytes.indexOf(lineFeed, start)) {
        const cut = end - start > maxLineBytes;
        emit(bytes, start, cut ? start + maxLineBytes : end, cut);
        start = end + 1;
      }
      if (start < bytes.length) keep(bytes, start, bytes.length);
    },
    finish(): void {
      if (open) closePending();
    },
  };
}

function encodingOf(start: Uint8Array): TextEncoding {
  if (start[0] === 0xff && start[1] === 0xfe) return 'utf-16le';
  if (start[0] === 0xfe && start[1] === 0xff) return 'utf-16be';
  return 'utf-8';
}

function startsWithUtf8Mark(start: Uint8Array): boolean {
  return start[0] === 0xef && start[1] === 0xbb && start[2] === 0xbf;
}
