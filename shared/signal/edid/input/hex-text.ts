import { type Message, message } from '../../../message/index.ts';
import { edidHeader } from '../base/base-block.ts';
import { blockSize, concatBytes, indexOfBytes } from '../bytes.ts';
import { type HexLine, readHexLine } from './hex-line.ts';

/** Bytes found in a text and what was noticed on the way. */
export type FoundInText = { bytes: Uint8Array; notes: Message[] };

type DumpLine = HexLine & {
  /** Words other than hexadecimal ones stood between the line before and this one. */
  interrupted: boolean;
  /** A line with `*` before: lines like the one before were left out. */
  repeats: boolean;
};

/** Where a decoder's readable part begins; what looks like bytes after that is not of the dump. */
const readablePart = /^\s*(-{8,}|Block 0, )/;
const onlyOffset = /^\s*([0-9a-f]{4,16}):?\s*$/i;

type Collected = { lines: DumpLine[]; endOffset: string | null };

function dumpLines(text: string): Collected {
  const lines: DumpLine[] = [];
  let [interrupted, repeats] = [false, false];
  let endOffset: string | null = null;
  for (const line of text.split(/\r\n|\r|\n/)) {
    if (line.trim() === '') continue;
    if (lines.length > 0 && readablePart.test(line)) break;
    if (line.trim() === '*') {
      repeats = true;
      continue;
    }
    const alone = onlyOffset.exec(line)?.[1] ?? null;
    if (alone !== null && lines.at(-1)?.offset?.length === alone.length) {
      endOffset = alone;
      continue;
    }
    const read = readHexLine(line);
    if (!read) {
      interrupted = true;
      continue;
    }
    lines.push({ bytes: read.bytes, offset: read.offset, words: read.words, interrupted, repeats });
    [interrupted, repeats] = [false, false];
  }
  return { lines, endOffset: repeats ? endOffset : null };
}

/** The base in which the offsets count the bytes of the lines: 16, 8 or 10; null where they don't. */
function offsetBase(lines: readonly DumpLine[]): number | null {
  const first = lines.findIndex(
    ({ offset }, i) => offset !== null && lines[i + 1]?.offset != null && !lines[i + 1]?.repeats,
  );
  const [line, next] = [lines[first], lines[first + 1]];
  if (!line?.offset || !next?.offset) return null;
  const [from, to, length] = [line.offset, next.offset, line.bytes.length];
  return [16, 8, 10].find((base) => difference(from, to, base) === length) ?? null;
}

const difference = (from: string, to: string, base: number): number =>
  Number.parseInt(to, base) - Number.parseInt(from, base);

/** The bytes that a `*` stands for: the line before over and over, up to the next offset. */
function leftOut(line: DumpLine, nextOffset: string | null, base: number | null): number[] {
  if (line.offset === null || nextOffset === null || base === null) return [];
  const missing = difference(line.offset, nextOffset, base) - line.bytes.length;
  if (!(missing > 0 && missing <= blockSize * 256)) return [];
  return Array.from({ length: missing }, (_, i) => line.bytes[i % line.bytes.length] ?? 0);
}

type Piece = { bytes: number[]; interrupted: boolean };

function piecesOf({ lines, endOffset }: Collected): Piece[] {
  const base = offsetBase(lines);
  return lines.map((line, i) => {
    const next = lines[i + 1];
    const filled = next?.repeats || (!next && endOffset !== null);
    const more = filled ? leftOut(line, next?.offset ?? endOffset, base) : [];
    return { bytes: more.length > 0 ? [...line.bytes, ...more] : line.bytes, interrupted: line.interrupted };
  });
}

const swapPairs = (bytes: readonly number[]): number[] => bytes.map((_, i) => bytes[i ^ 1] ?? bytes[i] ?? 0);

const beginsEdid = (bytes: readonly number[]): boolean => edidHeader.every((value, i) => bytes[i] === value);

/**
 * Where in `plain`, the bytes of all pieces, the EDID that begins at `start` ends: before another EDID, or before more
 * bytes that follow other words once everything the base block declares is there.
 */
function endOf(pieces: readonly Piece[], plain: Uint8Array, start: number): number {
  const declaredEnd = start + blockSize * (1 + (plain[start + 126] ?? 0));
  let at = 0;
  for (const piece of pieces) {
    const wholeBlocks = at >= start + blockSize && (at - start) % blockSize === 0;
    if (wholeBlocks && (beginsEdid(piece.bytes) || (piece.interrupted && at >= declaredEnd))) return at;
    at += piece.bytes.length;
  }
  return plain.length;
}

/**
 * The bytes of the first EDID in a text: bare digits, dumps with offsets (`xxd`, `hexdump`, `od`, with words of either
 * byte order and with repeated lines left out), arrays of a program, a registry export, decoder output that begins
 * with a dump, or any of these in a log with time stamps. Null where the text holds no dump of a block's size.
 */
export function bytesFromText(text: string): FoundInText | null {
  const collected = dumpLines(text);
  const pieces = piecesOf(collected);
  const plain = joined(pieces);
  const at = indexOfBytes(plain, edidHeader);
  if (at >= 0) return cut(pieces, plain, at, []);
  if (pieces.length > 0 && collected.lines.every((line) => line.words)) {
    const swapped = pieces.map((piece) => ({ ...piece, bytes: swapPairs(piece.bytes) }));
    const turned = joined(swapped);
    const turnedAt = indexOfBytes(turned, edidHeader);
    if (turnedAt >= 0) return cut(swapped, turned, turnedAt, [message('edid/lowByteFirst')]);
  }
  return plain.length >= blockSize ? cut(pieces, plain, 0, []) : null;
}

const joined = (pieces: readonly Piece[]): Uint8Array => concatBytes(pieces.map((piece) => piece.bytes));

function cut(pieces: readonly Piece[], plain: Uint8Array, start: number, notes: Message[]): FoundInText {
  const end = endOf(pieces, plain, start);
  const more = end < plain.length ? [message('edid/moreBytesFollow')] : [];
  return { bytes: plain.slice(start, end), notes: [...notes, ...more] };
}
