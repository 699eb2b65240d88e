import { literalLike } from './cursor.ts';

/** What one word of a search may stand as in a search text: parts of it, as patterns of LIKE; any of them will do. */
export type WordForms = readonly string[];

/** Assumed: more words than this nobody says; the others are left out. */
const mostWords = 8;
/** From this length on a slip of the finger leaves a word recognisable, and a pattern finds little else; assumed. */
const shortestWithTypo = 4;
/** Longer words are looked for as they are typed, since each letter costs four patterns; assumed. */
const longestWithTypo = 24;

/** A telephone number's digits; a bracketed zero is dialled only within the country. */
export const digitsOf = (text: string): string => text.replaceAll(/\(0\)/g, '').replaceAll(/\D/g, '');

/**
 * The words of a search as people say it, each of which has to be found. Digits that follow a plus or a zero are one
 * telephone number, with or without its country code.
 *
 * @param typos also takes words with one letter wrong, left out, too many, or in its neighbour's place
 */
export function searchWords(query: string, { typos }: { typos: boolean }): WordForms[] {
  return runsOf(query.toLowerCase().split(/[\s,;]+/))
    .slice(0, mostWords)
    .map((word) => [
      ...formsOf(word).map(literalLike),
      ...(typos && isOfLetters(word) ? withOneSlip(word) : []),
    ]);
}

const isNumeric = (word: string): boolean => /^[+()\d\s./-]+$/.test(word) && /\d/.test(word);
const isOfLetters = (word: string): boolean =>
  !isNumeric(word) && word.length >= shortestWithTypo && word.length <= longestWithTypo;

function runsOf(words: readonly string[]): string[] {
  const runs: string[] = [];
  let isOpen = false;
  const said = words.filter((word) => word !== '');
  // A lone bracket beside a number says nothing; signs alone are looked for as they are.
  const meant = said.filter((word) => /[\p{L}\p{N}]/u.test(word));
  for (const word of meant.length > 0 ? meant : said) {
    const last = runs.at(-1);
    if (isOpen && isNumeric(word) && last !== undefined) runs[runs.length - 1] = `${last} ${word}`;
    else runs.push(word);
    isOpen = isNumeric(word) && (isOpen || /^[+0(]/.test(word));
  }
  return runs;
}

/** Shorter numbers are a house's, a ticket's, or part of a word; assumed. */
const shortestNumber = 3;
/** Digits that are left of a number without its country's code, at least; assumed. */
const shortestNational = 6;
/** A country's code has one to three digits (ITU-T E.164, 6.2.1). */
const countryCodes = [1, 2, 3];

function formsOf(word: string): string[] {
  const digits = digitsOf(word);
  if (!isNumeric(word) || digits.length < shortestNumber) return [word];
  const international = /^\s*(\+|00)/.test(word) ? digits.replace(/^00/, '') : null;
  const national =
    international === null
      ? [digits.replace(/^0/, '')]
      : countryCodes.map((length) => international.slice(length).replace(/^0/, ''));
  const bare = [digits, ...(international === null ? [] : [international]), ...national];
  return [...new Set([word, ...bare.filter((form) => form === digits || form.length >= shortestNational)])];
}

/** Every way in which one slip may have made this of the word that was meant, as patterns. */
function withOneSlip(word: string): string[] {
  // By code points: half of a letter that UTF-16 writes in two is nothing that a database takes.
  const letters = [...word];
  const part = (from: number, to?: number): string => literalLike(letters.slice(from, to).join(''));
  const slips = letters.flatMap((letter, at) => {
    const [before, after] = [part(0, at), part(at + 1)];
    const next = letters[at + 1];
    const turned = next === undefined ? [] : [before + literalLike(next + letter) + part(at + 2)];
    const missing = at === 0 ? [] : [`${before}_${literalLike(letter)}${after}`];
    return [`${before}_${after}`, before + after, ...missing, ...turned];
  });
  return [...new Set(slips)];
}
