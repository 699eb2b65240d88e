import { type Message, message } from '../message/index.ts';
import type { RecognitionRow, Turn } from './recognition-row.ts';
import { recognitionRows } from './recognition-table.ts';
import { ourWords } from './recognition-words.ts';
import { turnsIn } from './turn.ts';
import { buildWordFinder, parting, patternOf, type WordFinder } from './word-finder.ts';

/**
 * A recognition table made ready; the only maker is `compileRecognition`. Words that rows ask for together are a group,
 * and what is kept of a line is which groups it has a word of: rows share most of theirs.
 */
export type Recognition = {
  kinds: readonly string[];
  finder: WordFinder;
  /** For each state of the finder that ends words, from its first on: the groups that those are in. */
  groupsAt: readonly Uint16Array[];
  groupCount: number;
  /** For each of the same the rows in whose first group they stand: a line without any such word is of no kind. */
  rowsAt: readonly Uint16Array[];
  /** In order of precedence. */
  rows: readonly CompiledRow[];
  /** The group of what the signal chain is made of, by which a line that names another trade is ours all the same. */
  ours: number;
};

/** Groups are numbers; `null` where the row has none. */
type CompiledRow = {
  kind: string;
  turn: Turn | undefined;
  /** The groups after the first. */
  further: readonly number[];
  none: number | null;
  unlessOurs: number | null;
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

export function createMatcher({ finder, groupsAt, groupCount, rowsAt, rows, ours }: Recognition): Matcher {
  const { next, symbols, start: startState, firstEnding } = finder;
  const groupSeenIn = new Uint32Array(groupCount);
  const topicSeenIn = new Uint32Array(rows.length);
  let line = 0;
  let topicSeen = false;
  let matched: { bytes: Uint8Array; start: number; end: number } = {
    bytes: new Uint8Array(0),
    start: 0,
    end: 0,
  };
  let turns: ReadonlySet<Turn> | null = null;

  const note = (state: number): void => {
    const groups = groupsAt[state - firstEnding] as Uint16Array;
    for (let index = 0; index < groups.length; index += 1) groupSeenIn[groups[index] as number] = line;
    const topical = rowsAt[state - firstEnding] as Uint16Array;
    for (let index = 0; index < topical.length; index += 1) topicSeenIn[topical[index] as number] = line;
    if (topical.length > 0) topicSeen = true;
  };
  const seen = (group: number): boolean => groupSeenIn[group] === line;
  const turned = (turn: Turn): boolean => {
    turns ??= turnsIn(matched.bytes, matched.start, matched.end);
    return turns.has(turn);
  };
  const fits = ({ further, none, unlessOurs, turn }: CompiledRow): boolean =>
    further.every(seen) &&
    (none === null || !seen(none)) &&
    (unlessOurs === null || !seen(unlessOurs) || seen(ours)) &&
    (turn === undefined || turned(turn));
  const matchAfter = (row: number): number => {
    for (let index = row + 1; index < rows.length; index += 1) {
      if (topicSeenIn[index] === line && fits(rows[index] as CompiledRow)) return index;
    }
    return -1;
  };
  return {
    match(bytes, start, end) {
      line += 1;
      topicSeen = false;
      turns = null;
      matched = { bytes, start, end };
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
  const groups: number[][] = [];
  // Many rows share their words; each is made into a pattern once.
  const numberOf = once((word: string): number => {
    const pattern = patternOf(word);
    const key = pattern.join();
    const known = numbers.get(key) ?? patterns.length;
    if (known === patterns.length) patterns.push(pattern);
    numbers.set(key, known);
    return known;
  });
  const groupByWords = new Map<string, number>();
  const groupOf = (words: readonly string[]): number => {
    const members = [...new Set(words.map(numberOf))];
    const key = members.join();
    const known = groupByWords.get(key);
    if (known !== undefined) return known;
    groupByWords.set(key, groups.length);
    groups.push(members);
    return groups.length - 1;
  };
  const groupOrNone = (words: readonly string[] = []) => (words.length === 0 ? null : groupOf(words));
  const topics = rows.map(({ all }) => (all[0] ?? []).map(numberOf));
  const compiled = rows.map(({ kind, all, none, unlessOurs, turn }) => ({
    kind,
    turn,
    further: all.slice(1).map(groupOf),
    none: groupOrNone(none),
    unlessOurs: groupOrNone(unlessOurs),
  }));
  const ours = groupOf(ourWords);
  const finder = patterns.length > 65_535 ? null : buildWordFinder(patterns);
  if (finder === null) return null;
  return {
    kinds: [...new Set(rows.map((row) => row.kind))],
    finder,
    groupsAt: listsAt(finder, listsOf(groups, patterns.length)),
    groupCount: groups.length,
    rowsAt: listsAt(finder, listsOf(topics, patterns.length)),
    rows: compiled,
    ours,
  };
}

/** For each number below `count`, which of the lists have it. */
function listsOf(lists: readonly (readonly number[])[], count: number): number[][] {
  const found: number[][] = Array.from({ length: count }, () => []);
  for (const [index, list] of lists.entries()) for (const member of new Set(list)) found[member]?.push(index);
  return found;
}

/** What is listed for the words that each state ends, once. */
const listsAt = ({ ends }: WordFinder, listsOfWords: readonly (readonly number[])[]): Uint16Array[] =>
  ends.map((words) => Uint16Array.from(new Set([...words].flatMap((word) => listsOfWords[word] ?? []))));

/** The same function, asked once for each of what it is asked for. */
function once<From, To>(of: (from: From) => To): (from: From) => To {
  const known = new Map<From, To>();
  return (from) => {
    const before = known.get(from);
    if (before !== undefined) return before;
    const made = of(from);
    known.set(from, made);
    return made;
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
