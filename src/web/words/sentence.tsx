import { effect, signal } from '@preact/signals';
import type { ComponentChild } from 'preact';
import { language } from './language.ts';

// Shared code and the API speak English. On German screens its sentences go through a table that comes as a chunk of
// its own; until it is there, and for what is not in it, the English stands, marked as such for whoever has it read out.

const table = signal<((text: string) => string | null) | null>(null);
let isAsked = false;

function askForTable(): void {
  if (isAsked) return;
  isAsked = true;
  import('./german/index.ts').then(
    ({ germanSentence }) => {
      table.value = germanSentence;
    },
    // Without a connection, and never read before: the next screen asks again.
    () => {
      isAsked = false;
    },
  );
}

// Read at once where the screens are German, so that it is there before the first plan is.
effect(() => {
  if (language.value === 'de') askForTable();
});

/** A text in the language of the screens; `lang` where it is in another one. */
export type Said = { text: string; lang?: 'en' };

/** A text of shared code in the language of the screens. To be called while a screen is drawn. */
export function said(text: string): Said {
  if (language.value === 'en') return { text };
  if (table.value === null) askForTable();
  const german = table.value?.(text) ?? null;
  return german === null ? { text, lang: 'en' } : { text: german };
}

/** The attribute for what is put together of several: English as soon as one of them is. */
export const langOf = (...parts: readonly Said[]): { lang?: 'en' } =>
  parts.some(({ lang }) => lang === 'en') ? { lang: 'en' } : {};

/** A text of shared code, in a span of its own. */
export function Sentence({ children }: { children: string }) {
  const words = said(children);
  return <span {...langOf(words)}>{words.text}</span>;
}

/** As `Sentence`, with a span only around what stays English. */
export function inWords(text: string): ComponentChild {
  const words = said(text);
  return words.lang === undefined ? words.text : <span lang={words.lang}>{words.text}</span>;
}
