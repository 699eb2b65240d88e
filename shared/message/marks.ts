import { type Erasure, withErasuresApart } from '../contract/erased-text.ts';

/*
 * What a person typed travels inside a rendered sentence between marks, so that a screen can show it as theirs and no
 * text can pass for the program's. The marks are noncharacters, which Unicode keeps free for use inside a program
 * (The Unicode Standard, section 23.7); where a text holds one itself, it is escaped and comes back.
 */
const startText = '\uFDD0';
const startName = '\uFDD1';
const end = '\uFDD2';
const escapeMark = '\uFDD3';

const marksIn = /[\uFDD0-\uFDD3]/gu;
const escaped = (typed: string): string =>
  typed.replace(marksIn, (mark) => `${escapeMark}${mark.charCodeAt(0) - 0xfdd0}`);
const unescaped = (typed: string): string =>
  typed.replace(/\uFDD3([0-3])/gu, (_, which: string) => String.fromCharCode(0xfdd0 + Number(which)));

/** Marks a text that a person wrote. */
export const markText = (typed: string): string => `${startText}${escaped(typed)}${end}`;
/** The same of a text of which something may be erased: of that, the program's words for when it was. */
export function markTyped(typed: string, words: (erasure: Erasure) => string): string {
  if (typed === '') return markText(typed);
  return withErasuresApart(typed)
    .map((piece) => (typeof piece === 'string' ? markText(piece) : words(piece)))
    .join('');
}
/** Marks a name that a person gave. */
export const markName = (typed: string): string => `${startName}${escaped(typed)}${end}`;

/** A piece of a rendered sentence: the program's own words, a person's text, or a name somebody gave. */
export type Part = { readonly by: 'program' | 'person' | 'name'; readonly text: string };

/** A rendered sentence in its parts, in order. */
export function partsOf(rendered: string): Part[] {
  const parts: Part[] = [];
  const pattern = /([\uFDD0\uFDD1])([^\uFDD2]*)\uFDD2/gu;
  let last = 0;
  for (const found of rendered.matchAll(pattern)) {
    if (found.index > last) parts.push({ by: 'program', text: rendered.slice(last, found.index) });
    parts.push({ by: found[1] === startText ? 'person' : 'name', text: unescaped(found[2] ?? '') });
    last = found.index + found[0].length;
  }
  if (last < rendered.length) parts.push({ by: 'program', text: rendered.slice(last) });
  return parts;
}

/**
 * A rendered sentence as plain text.
 *
 * @param quotes put around what a person wrote; names stand bare, since sentences quote labels themselves
 */
export const plainText = (rendered: string, [open, close]: readonly [string, string]): string =>
  partsOf(rendered)
    .map(({ by, text }) => (by === 'person' ? `${open}${text}${close}` : text))
    .join('');
