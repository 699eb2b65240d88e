/** The bytes that one line of a hex dump holds. */
export type HexLine = {
  bytes: number[];
  /** What stands before the bytes and counts them, as written; null where there is none. */
  offset: string | null;
  /** Bytes came as words of four digits, which some dumps write with the low byte first. */
  words: boolean;
};

type Chunk = { text: string; gap: number; prefixed: boolean };

/** Fewest bytes beside other words on a line that are taken for a dump rather than for a sentence. */
const leastAmongWords = 4;
/** A dump separates its text column by at least this many spaces. */
const columnGap = 2;

const comment = /\/\*.*?(\*\/|$)|\/\/.*$/g;
const bytePrefix = /\\x|\b0x/gi;
/** Marks a byte that was written with a prefix, as in C. */
const mark = '\u0001';

/** Splits into words at spaces, commas and brackets, keeping how wide the gap before each was. */
function chunksOf(line: string): Chunk[] {
  const plain = line
    .replace(comment, ' ')
    .replace(/\bhex(\([0-9a-f]\))?:/gi, ' ')
    .replace(bytePrefix, ` ${mark}`);
  const chunks: Chunk[] = [];
  let gap = 0;
  for (const part of plain.split(/([\s,;()[\]{}<>"'=\\|]+)/)) {
    if (/^[\s,;()[\]{}<>"'=\\|]*$/.test(part)) {
      gap = part.includes('|') ? Number.POSITIVE_INFINITY : part.length;
      continue;
    }
    const prefixed = part.startsWith(mark);
    chunks.push({ text: prefixed ? part.slice(1) : part, gap, prefixed });
    gap = 0;
  }
  return chunks;
}

/** Bytes of one word, or null: pairs of digits, run together or joined by colons or hyphens (eight pairs at least). */
function bytesOfChunk({ text, prefixed }: Chunk): number[] | null {
  const digits = text.replace(/h$/i, '');
  if (prefixed && /^[0-9a-f]{1,2}$/i.test(digits)) return [Number.parseInt(digits, 16)];
  if (/^([0-9a-f]{2}[:-]){7,}[0-9a-f]{2}$/i.test(text)) return pairs(text.replace(/[:-]/g, ''));
  return digits.length % 2 === 0 && /^[0-9a-f]+$/i.test(digits) ? pairs(digits) : null;
}

function pairs(digits: string): number[] {
  const bytes: number[] = [];
  for (let i = 0; i < digits.length; i += 2) bytes.push(Number.parseInt(digits.slice(i, i + 2), 16));
  return bytes;
}

type Run = { chunks: Chunk[]; bytes: number[]; offset: string | null };

const offsetWord = /^[0-9a-f]{2,16}:$/i;
const bareOffset = /^([0-9a-f]{4,8}|[0-9]{9,16})$/i;

/** A number before bytes of two digits (`00000010  02 03`), or of seven digits before words (`0000010 ff00`). */
function isBareOffset(chunk: Chunk, next: Chunk | undefined): boolean {
  if (chunk.prefixed || !next || !bareOffset.test(chunk.text)) return false;
  if (/^[0-9a-f]{2}$/i.test(next.text)) return true;
  return chunk.text.length === 7 && /^[0-9a-f]{4}$/i.test(next.text);
}

/** The runs of hexadecimal words of a line. */
function runsOf(chunks: readonly Chunk[]): Run[] {
  const runs: Run[] = [];
  let open: Run | null = null;
  const begin = (offset: string | null): Run => {
    const run: Run = { chunks: [], bytes: [], offset };
    runs.push(run);
    return run;
  };
  for (const [i, chunk] of chunks.entries()) {
    const inBytes: boolean = open !== null && open.bytes.length > 0;
    if (offsetWord.test(chunk.text) || (!inBytes && isBareOffset(chunk, chunks[i + 1]))) {
      open = begin(chunk.text.replace(/:$/, ''));
      continue;
    }
    const bytes = bytesOfChunk(chunk);
    if (!bytes || (open && endsRun(open, chunk, chunks.length - i))) {
      open = null;
      continue;
    }
    open ??= begin(null);
    open.chunks.push(chunk);
    for (const value of bytes) open.bytes.push(value);
  }
  return runs.filter((run) => run.bytes.length > 0);
}

/** A wide gap ends the bytes, save the one in the middle of a line of sixteen. */
function endsRun(run: Run, chunk: Chunk, left: number): boolean {
  if (run.bytes.length === 0 || chunk.gap < columnGap) return false;
  if (chunk.gap === Number.POSITIVE_INFINITY) return true;
  return !chunk.prefixed && !(run.bytes.length === 8 && left >= 8) && run.offset !== null;
}

/** The commonest line: digits in pairs without anything between. */
const onlyPairs = /^\s*([0-9a-f]{2})+\s*$/i;

/** The columns' own heading in some dumps, which looks like eight bytes. */
const heading = /0123456789abcdef/i;

/** Reads one line; null where it holds no bytes of a dump. */
export function readHexLine(line: string): HexLine | null {
  if (onlyPairs.test(line))
    return { bytes: pairs(line.trim()), offset: null, words: line.trim().length === 4 };
  if (heading.test(line)) return null;
  const chunks = chunksOf(line);
  const runs = runsOf(chunks);
  const [first] = runs;
  if (!first) return null;
  const longest = runs.reduce((best, run) => (best.bytes.length >= run.bytes.length ? best : run), first);
  const wholeLine = longest.chunks.length + (longest.offset === null ? 0 : 1) === chunks.length;
  const isDump =
    wholeLine || longest.bytes.length >= leastAmongWords || longest.chunks.every(({ prefixed }) => prefixed);
  if (!isDump) return null;
  const words = longest.chunks.every(({ text }) => text.length === 4);
  return { bytes: longest.bytes, offset: longest.offset, words };
}
