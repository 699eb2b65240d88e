import { changeKinds } from '../../../../shared/contract/triage-names.ts';
import { deTerms } from '../../../../shared/message/de/terms.ts';
import { enTerms } from '../../../../shared/message/en/terms.ts';
import { labelPairs } from './labels.ts';
import { logPairs } from './log.ts';
import { refusalPairs } from './refusals.ts';
import { stepPairs } from './steps.ts';
import { type Pair, templateOf } from './template.ts';
import { watchPairs } from './watching.ts';

// Shared code and the API speak English. What a client shows of it in German is told here, template by template:
// tests/web/german-sentences.test.ts finds a sentence that has none.

/** Every template that there is. */
export const pairs: readonly Pair[] = [
  ...stepPairs,
  ...watchPairs,
  ...refusalPairs,
  ...labelPairs,
  ...logPairs,
  ...changeKinds.map((kind): Pair => [enTerms.changeKind[kind], deTerms.changeKind[kind]]),
  // A place by its name alone.
  ['{x:place}', '{x}'],
];
const templates = pairs.map(templateOf);

/** What was asked before; screens ask the same again with every redraw. */
const known = new Map<string, string | null>();
/** More texts than a long day brings to one device. */
const most = 5000;

/**
 * The German of a text of shared code: a sentence, several of them, or a part such as a suspect's name.
 *
 * @returns null where a template is missing, or for what people wrote
 */
export function germanSentence(text: string): string | null {
  const before = known.get(text);
  if (before !== undefined) return before;
  const german = sentenceBySentence(text) ?? whole(text);
  if (known.size >= most) known.clear();
  known.set(text, german);
  return german;
}

function whole(text: string): string | null {
  for (const template of templates) {
    const german = template(text, germanSentence);
    if (german !== null) return asBegun(text, german);
  }
  // A part that makes a sentence of its own.
  const part = text.endsWith('.') && !text.endsWith('..') ? germanSentence(text.slice(0, -1)) : null;
  return part === null ? null : `${part}.`;
}

/** A part keeps its small letter inside a sentence, and gets a large one at its start. */
const asBegun = (english: string, german: string): string =>
  /^\p{Lu}/u.test(english) ? german.charAt(0).toUpperCase() + german.slice(1) : german;

/**
 * Comes before the whole text is tried, since a name in a template could stand for a sentence before it. Full stops in
 * names make more joints than there are; where both sides are known, it was one.
 */
function sentenceBySentence(text: string): string | null {
  for (const { index } of text.matchAll(/(?<=[.?!]) /g)) {
    const first = whole(text.slice(0, index));
    const rest = first === null ? null : germanSentence(text.slice(index + 1));
    if (first !== null && rest !== null) return `${first} ${rest}`;
  }
  return null;
}
