/** One thing to be written into a box, most important first. */
export type Words = { text: string; isBold?: boolean };
/** One line as it is written; `size` in CSS pixels as seen, `y` of its base line from the box's upper edge, `width` at most, in pixels. */
export type WrittenLine = {
  text: string;
  size: number;
  y: number;
  width: number;
  isBold: boolean;
  isFirst: boolean;
};

/** Letters are never smaller than this as they are seen, CSS pixels; assumed. */
export const smallestLetters = 9.5;
const largestLetters = 14;
/** What comes beside a name does so only while the name keeps this size. */
const roomyLetters = 11;
const lineHeight = 1.18;
const lesser = 0.86;

/**
 * Widths in em of the widest of the usual system letters (DejaVu Sans Bold, measured, rounded up), so that what fits by
 * them fits in any.
 */
const classes: readonly (readonly [letters: RegExp, em: number])[] = [
  [/[ .,:;'|!ijlI]/, 0.4],
  [/[rft()[\]/-]/, 0.51],
  [/[cszJ]/, 0.61],
  [/[0-9abdeghknopquvxyäöüß]/, 0.72],
  [/[MWmw@%—→]/, 1.11],
  [/[\u2e80-\uffff]/, 1.1],
];
const widthOf = (letter: string): number => classes.find(([letters]) => letters.test(letter))?.[1] ?? 0.86;
const emOf = (text: string): number => [...text].reduce((sum, letter) => sum + widthOf(letter), 0);

/** Lines no wider than so many em, broken at spaces and after hyphens and slashes; null where a word is wider. */
function wrapped(text: string, widthEm: number): string[] | null {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/(?<=[\s/-])/)) {
    if (emOf(word.trimEnd()) > widthEm) return null;
    if (emOf((line + word).trimEnd()) <= widthEm) line += word;
    else {
      lines.push(line.trimEnd());
      line = word;
    }
  }
  return [...lines, line.trimEnd()].filter((each) => each !== '');
}

/**
 * As much of `words` as has room in a box of that size on the screen, in full: nothing is cut. Empty where not even the
 * first fits. Letters as large as they can be up to 14 px; more things before larger letters.
 */
export function written(words: readonly Words[], widthPx: number, heightPx: number): WrittenLine[] {
  for (let count = words.length; count > 0; count -= 1) {
    const least = count === 1 ? smallestLetters : roomyLetters;
    for (let size = largestLetters; size >= least; size -= 0.5) {
      const lines = linesAt(words.slice(0, count), widthPx, size);
      const height =
        lines?.reduce((sum, line) => sum + line.size * lineHeight, 0) ?? Number.POSITIVE_INFINITY;
      if (lines !== null && height <= heightPx) return stacked(lines, (heightPx - height) / 2);
    }
  }
  return [];
}

type Unplaced = Omit<WrittenLine, 'y'>;
function linesAt(words: readonly Words[], widthPx: number, size: number): Unplaced[] | null {
  const lines: Unplaced[] = [];
  for (const [at, { text, isBold = false }] of words.entries()) {
    const own = at === 0 ? size : Math.max(smallestLetters, size * lesser);
    const found = wrapped(text, widthPx / own);
    if (found === null) return null;
    lines.push(
      ...found.map((line) => ({ text: line, size: own, width: emOf(line) * own, isBold, isFirst: at === 0 })),
    );
  }
  return lines;
}

function stacked(lines: readonly Unplaced[], top: number): WrittenLine[] {
  let y = top;
  return lines.map((line) => {
    // the base line lies about four fifths down
    const base = y + line.size * lineHeight * 0.78;
    y += line.size * lineHeight;
    return { ...line, y: base };
  });
}

/** The smallest scale at which `text` has room in a box of so many units; up to `most`. */
export function scaleFor(text: string, box: { width: number; height: number }, most: number): number {
  let [low, high] = [0, most];
  for (let step = 0; step < 12; step += 1) {
    const middle = (low + high) / 2;
    if (written([{ text, isBold: true }], box.width * middle, box.height * middle).length > 0) high = middle;
    else low = middle;
  }
  return high;
}
