import { type Message, message } from '../message/index.ts';
import { type RecognitionRow, recognitionRows } from './recognition-table.ts';
import { buildWordFinder, parting, patternOf, type WordFinder } from './word-finder.ts';

/** A recognition table made ready; the only maker is `compileRecognition`. */
export type Recognition = {
  kinds: readonly string[];
  finder: WordFinder;
  wordCount: number;
  /** For each word the rows in whose first group it stands: a line without any such word is of no kind. */
  rowsOfTopic: readonly Uint16Array[];
  /** In order of precedence; `further` are the groups after the first. */
  rows: readonly { kind: string; further: readonly Uint16Array[]; none: Uint16Array }[];
};

export type RecognitionResult = { ok: true; recognition: Recognition } | { ok: false; why: Message };

const mostRows = 500;
const mostWordsInRow = 200;
const longestWord = 60;

/**
 * Makes a recognition table ready. An organisation's rows come first, so that they can overrule ours; of the rows
 * that fit a line the first counts.
 *
 * @returns a refusal, naming the row, for a row that is malformed or doesn't find its own example
 */
export function compileRecognition(extraRows: readonly RecognitionRow[] = []): RecognitionResult {
  if (extraRows.length > mostRows)
    return { ok: false, why: message('recognitionRowsTooMany', { most: mostRows }) };
  for (const [index, row] of extraRows.entries()) {
    const why = rowFault(row);
    if (why !== null)
      return { ok: false, why: message('recognitionRowMisfit', { row: index + 1, kind: row.kind, why }) };
  }
  const rows = [...extraRows, ...recognitionRows];
  const recognition = compile(rows);
  if (recognition === null) return { ok: false, why: message('recognitionWordsTooMany') };
  return { ok: true, recognition };
}

let ownTable: Recognition | null = null;

/** Our own table alone, compiled once. */
export function builtInRecognition(): Recognition {
  ownTable ??= compile(recognitionRows);
  if (ownTable === null) throw new Error('The recognition table has outgrown its word finder.');
  return ownTable;
}

/** A matcher for the lines of one log; it remembers nothing from line to line. */
export type Matcher = {
  /**
   * The first row that fits the line between `start` and `end`, as an index into `rows`; -1 for none.
   */
  match(bytes: Uint8Array, start: number, end: number): number;
  /** The next row after `row` that fits the line matched last; -1 for none. */
  matchAfter(row: number): number;
};

export function createMatcher({ finder, wordCount, rowsOfTopic, rows }: Recognition): Matcher {
  const { next, symbols, start: startState, firstEnding, ends } = finder;
  const wordSeenIn = new Uint32Array(wordCount);
  const topicSeenIn = new Uint32Array(rows.length);
  let line = 0;
  let topicSeen = false;

  const note = (state: number): void => {
    for (const word of ends[state - firstEnding] as Uint16Array) {
      wordSeenIn[word] = line;
      const topical = rowsOfTopic[word] as Uint16Array;
      for (const row of topical) topicSeenIn[row] = line;
      if (topical.length > 0) topicSeen = true;
    }
  };
  const anySeen = (words: Uint16Array): boolean => {
    for (const word of words) if (wordSeenIn[word] === line) return true;
    return false;
  };
  const matchAfter = (row: number): number => {
    for (let index = row + 1; index < rows.length; index += 1) {
      if (topicSeenIn[index] !== line) continue;
      const { further, none } = rows[index] as Recognition['rows'][number];
      if (further.every(anySeen) && !anySeen(none)) return index;
    }
    return -1;
  };
  return {
    match(bytes, start, end) {
      line += 1;
      topicSeen = false;
      let state = startState;
      for (let index = start; index < end; index += 1) {
        state = next[(state << 6) | (symbols[bytes[index] as number] as number)] as number;
        if (state >= firstEnding) note(state);
      }
      state = next[(state << 6) | parting] as number;
      if (state >= firstEnding) note(state);
      return topicSeen ? matchAfter(-1) : -1;
    },
    matchAfter,
  };
}

function compile(rows: readonly RecognitionRow[]): Recognition | null {
  const numbers = new Map<string, number>();
  const patterns: number[][] = [];
  const numbersOf = (words: readonly string[]): Uint16Array =>
    Uint16Array.from(words, (word) => {
      const pattern = patternOf(word);
      const key = pattern.join();
      const known = numbers.get(key);
      if (known !== undefined) return known;
      numbers.set(key, patterns.length);
      patterns.push(pattern);
      return patterns.length - 1;
    });
  const topics = rows.map(({ all }) => numbersOf(all[0] ?? []));
  const compiled = rows.map(({ kind, all, none = [] }) => ({
    kind,
    further: all.slice(1).map(numbersOf),
    none: numbersOf(none),
  }));
  const finder = patterns.length > 65_535 ? null : buildWordFinder(patterns);
  if (finder === null) return null;
  const topicRows: number[][] = patterns.map(() => []);
  for (const [row, words] of topics.entries()) for (const word of new Set(words)) topicRows[word]?.push(row);
  return {
    kinds: [...new Set(rows.map((row) => row.kind))],
    finder,
    wordCount: patterns.length,
    rowsOfTopic: topicRows.map((numbers) => Uint16Array.from(numbers)),
    rows: compiled,
  };
}

function rowFault(row: RecognitionRow): Message | null {
  if (!/^[a-z][A-Za-z0-9]{0,39}$/.test(row.kind)) return message('rowKindIsNoName');
  if (row.all.length === 0 || row.all.some((group) => group.length === 0)) return message('rowGroupEmpty');
  const words = [...row.all.flat(), ...(row.none ?? [])];
  if (words.length > mostWordsInRow) return message('rowWordsTooMany', { most: mostWordsInRow });
  const unusable = words.find((word) => word.length > longestWord || !/[A-Za-z0-9]/.test(word));
  if (unusable !== undefined) return message('rowWordUnusable', { word: unusable });
  const alone = compile([row]);
  const example = new TextEncoder().encode(row.example);
  const finds = alone !== null && createMatcher(alone).match(example, 0, example.length) === 0;
  return finds ? null : message('rowMissesExample');
}
