import { lowerA, lowerZ, nine, upperA, upperZ, zero } from './ascii.ts';
import { utf8Of } from './bytes.ts';

/**
 * Finds many words in a line in one pass: the automaton of Aho and Corasick (1975, Communications of the ACM 18(6)).
 * Letters count without case; whatever is neither an ASCII letter nor a digit parts words, however much of it.
 */
export type WordFinder = {
  /** Next state at `(state << 6) | symbol`; `symbols` gives each byte its symbol. */
  next: Uint16Array;
  symbols: Uint8Array;
  start: number;
  /** States from here on end at least one word: those at `ends[state - firstEnding]`. */
  firstEnding: number;
  ends: readonly Uint16Array[];
};

/** The symbol of what parts words; letters are 1..26, digits 27..36. */
export const parting = 0;
const symbolBits = 6;
const symbolCount = 37;
const mostStates = 65_535;

export const symbols = Uint8Array.from({ length: 256 }, (_, byte) => {
  if (byte >= lowerA && byte <= lowerZ) return byte - lowerA + 1;
  if (byte >= upperA && byte <= upperZ) return byte - upperA + 1;
  return byte >= zero && byte <= nine ? byte - zero + 27 : parting;
});

type Node = {
  children: Map<number, Node>;
  symbol: number;
  fail: Node | null;
  words: number[];
  state: number;
};

/**
 * @param words as `patternOf` makes them; a word's index is its number in `ends`
 * @returns null where they need more than 65,535 states
 */
export function buildWordFinder(words: readonly (readonly number[])[]): WordFinder | null {
  const root = node(parting);
  for (const [index, word] of words.entries()) {
    let at = root;
    for (const symbol of word) {
      let child = at.children.get(symbol);
      if (child === undefined) {
        child = node(symbol);
        at.children.set(symbol, child);
      }
      at = child;
    }
    at.words.push(index);
  }
  const nodes = linkFailures(root);
  if (nodes.length > mostStates) return null;
  const ordered = [...nodes.filter((n) => n.words.length === 0), ...nodes.filter((n) => n.words.length > 0)];
  for (const [state, n] of ordered.entries()) n.state = state;
  return {
    next: tableOf(nodes, root),
    symbols,
    start: (root.children.get(parting) ?? root).state,
    firstEnding: ordered.findIndex((n) => n.words.length > 0) >>> 0,
    ends: ordered.filter((n) => n.words.length > 0).map((n) => Uint16Array.from(n.words)),
  };
}

/** A word or phrase as symbols between partings; `*` at its end leaves it open: `connect*` finds `connected`. */
export function patternOf(word: string): number[] {
  const open = word.endsWith('*');
  const pattern = [parting];
  for (const byte of utf8Of(open ? word.slice(0, -1) : word)) {
    const symbol = symbols[byte] as number;
    if (symbol !== parting || pattern.at(-1) !== parting) pattern.push(symbol);
  }
  if (!open && pattern.at(-1) !== parting) pattern.push(parting);
  return pattern;
}

function node(symbol: number): Node {
  return { children: new Map(), symbol, fail: null, words: [], state: 0 };
}

/** Links each node to that of its longest proper ending, breadth first, and returns them in that order. */
function linkFailures(root: Node): Node[] {
  const order = [root];
  for (const at of order) {
    for (const [symbol, child] of at.children) {
      let fail = at.fail;
      while (fail !== null && !fail.children.has(symbol)) fail = fail.fail;
      child.fail = fail?.children.get(symbol) ?? root;
      child.words.push(...child.fail.words);
      order.push(child);
    }
  }
  return order;
}

/** Rows in breadth-first order, so that a row not yet a node's own is its failure's, already filled. */
function tableOf(nodes: readonly Node[], root: Node): Uint16Array {
  const table = new Uint16Array(nodes.length << symbolBits);
  for (const at of nodes) {
    for (let symbol = 0; symbol < symbolCount; symbol += 1) {
      const child = at.children.get(symbol);
      const beyond =
        at === root ? root.state : (table[((at.fail as Node).state << symbolBits) | symbol] as number);
      table[(at.state << symbolBits) | symbol] = child?.state ?? beyond;
    }
    if (at !== root && at.symbol === parting) table[at.state << symbolBits] = at.state;
  }
  return table;
}
