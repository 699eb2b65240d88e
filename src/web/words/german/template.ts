import { closedWords, sideWords } from './closed-words.ts';
import {
  formatPattern,
  germanFormat,
  germanMode,
  germanNumber,
  germanPercent,
  germanTimes,
  minutesPattern,
  modePattern,
  numberPattern,
  percentPattern,
  timesPattern,
} from './figures.ts';
import {
  barePattern,
  germanBare,
  germanBares,
  germanLabels,
  germanList,
  germanPlace,
  germanSocket,
  placePattern,
  quoted,
  quotedPattern,
  socketPattern,
} from './places.ts';

/**
 * One sentence, or part of one, of shared code and its German. The English holds `{name:kind}` where something differs
 * from case to case; the German holds `{name}` there, or `{name.dat}` for a place in the dative.
 */
export type Pair = readonly [english: string, german: string];

/** German of a text; null where it is not known. */
export type Translate = (text: string) => string | null;

type Kind = { pattern: string; german: (text: string, form: string, translate: Translate) => string | null };
const figure = (pattern: string, german: (text: string) => string): Kind => ({ pattern, german });

/** A kind that stands for one of a few words. */
const oneOf = (words: Readonly<Record<string, string>>): Kind =>
  figure(Object.keys(words).join('|'), (text) => words[text] ?? text);
const closedKinds = Object.fromEntries(
  Object.entries(closedWords).map(([kind, words]) => [kind, oneOf(words)]),
);

/** Several of them in a row. */
const rowOf = (kind: string): Kind => ({
  pattern: '.+?',
  german: (text) => germanList(text, (one) => closedWords[kind]?.[one] ?? null),
});

const kinds: Record<string, Kind> = {
  place: {
    pattern: placePattern,
    german: (text, form) => germanPlace(text, form === 'dat' ? 'dative' : 'plain'),
  },
  places: { pattern: '.+?', german: (text) => germanList(text, germanPlace) },
  socket: { pattern: socketPattern, german: germanSocket },
  /** A device's name alone. */
  bare: { pattern: barePattern, german: germanBare },
  bares: { pattern: '.+?', german: germanBares },
  /** A label in straight quotes. */
  label: { pattern: quotedPattern, german: (text) => quoted(text.slice(1, -1)) },
  labels: { pattern: "'.+'", german: germanLabels },
  /** Whatever somebody wrote, or a name: as it is. */
  raw: { pattern: '.*?', german: (text) => text },
  /** A setting, its name or value, between the quotes that the sentence puts around it. */
  value: { pattern: '[^‘’]*', german: (text) => text },
  /** Another text of the table. */
  part: { pattern: '.+?', german: (text, _, translate) => translate(text) },
  /** Several of them in a row, between commas and `and`. */
  parts: { pattern: '.+?', german: (text, _, translate) => germanList(text, translate) },
  /** RGB or the like, and a version of content protection. */
  encoding: figure('RGB|4:[24]:[024]', (text) => text),
  version: figure('\\d\\.\\d', (text) => text),
  num: figure(numberPattern, germanNumber),
  min: figure(minutesPattern, germanNumber),
  pct: figure(percentPattern, germanPercent),
  times: figure(timesPattern, germanTimes),
  format: figure(formatPattern, germanFormat),
  mode: figure(modePattern, germanMode),
  ...closedKinds,
  /** Roles of devices, and of people, in a row. */
  roles: rowOf('role'),
  /** What changed, answer by answer, each with its kind and what was said of it. */
  answers: {
    pattern: '.+',
    german: (text) =>
      text
        .split('; ')
        .map((answer) => answer.replace(/^\w+/, (word) => closedWords.changed?.[word] ?? word))
        .join('; '),
  },
  moment: figure('\\d{4}-[\\dT:.Z-]+', (text) => text),
  members: rowOf('member'),
  /** Sides of devices in a row: `upstream of switch 'A' and downstream of display 'B'`. */
  sides: { pattern: '.+?', german: (text) => germanList(text, germanSide) },
};

/** Puts a text that a pair fits into German; null where it fits not. */
export type Template = (text: string, translate: Translate) => string | null;

function germanSide(text: string): string | null {
  const [, side = '', of = ''] = /^(\w+) of (.+)$/u.exec(text) ?? [];
  const place = germanPlace(of, 'dative');
  const words = sideWords[side];
  return place === null || words === undefined ? null : `${words} ${place}`;
}

const placeholder = /\{(\w+):(\w+)\}/g;
const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** The first letter may be either, since a part of one sentence begins another. */
const eitherCase = (literal: string): string => {
  const first = literal.charAt(0);
  return first.toLowerCase() === first.toUpperCase()
    ? escaped(literal)
    : `[${first.toUpperCase()}${first.toLowerCase()}]${escaped(literal.slice(1))}`;
};

export function templateOf([english, german]: Pair): Template {
  const holes = [...english.matchAll(placeholder)].map(([, name = '', kind = '']) => ({
    name,
    kind: kinds[kind],
  }));
  const literals = english.split(placeholder).filter((_, at) => at % 3 === 0);
  const pattern = literals
    .map((literal, at) => (at === 0 ? eitherCase(literal) : escaped(literal)) + groupOf(holes[at]?.kind))
    .join('');
  // Most templates are told from most texts by their longest fixed part, without any search for a match.
  const fixed = literals
    .map((literal, at) => (at === 0 ? literal.slice(1) : literal))
    .reduce((longest, each) => (each.length > longest.length ? each : longest), '');
  let expression: RegExp | null = null;
  return (text, translate) => {
    if (!text.includes(fixed)) return null;
    expression ??= new RegExp(`^${pattern}$`, 'u');
    const match = expression.exec(text);
    if (match === null) return null;
    const found = new Map(holes.map(({ name, kind }, at) => [name, { kind, text: match[at + 1] ?? '' }]));
    return fill(german, found, translate);
  };
}

const groupOf = (kind: Kind | undefined): string => (kind === undefined ? '' : `(${kind.pattern})`);

function fill(
  german: string,
  found: ReadonlyMap<string, { kind: Kind | undefined; text: string }>,
  translate: Translate,
): string | null {
  let isKnown = true;
  const filled = german.replace(/\{(\w+)(?:\.(\w+))?\}/g, (_, name: string, form = '') => {
    const hole = found.get(name);
    const words = hole?.kind?.german(hole.text, form, translate) ?? null;
    if (words === null) isKnown = false;
    return words ?? '';
  });
  return isKnown ? filled : null;
}
