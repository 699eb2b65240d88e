import type { ComponentChild } from 'preact';
import {
  type Message,
  messageParts,
  messageText,
  type Part,
  type PartOfLanguage,
} from '../../../shared/message/index.ts';
import { language } from './language.ts';
import { loadedEnglish } from './loaded-english.ts';
import { loadedGerman } from './loaded-german.ts';

// What the program says comes as a code with values (shared/message) and is put into words here, in the language of the
// screens. German comes as a chunk of its own; until it is there the English stands, marked as such for whoever has it
// read out. Of English a first load has but a part (loaded-english.ts).

/** Moments inside messages are told in UTC, and say so: a message does not know at which site it is read. */
const zone = 'UTC';

function tongue(): { sentences: PartOfLanguage; lang?: 'en' } {
  if (language.value === 'en') return { sentences: loadedEnglish() };
  const german = loadedGerman();
  return german === null ? { sentences: loadedEnglish(), lang: 'en' } : { sentences: german.sentences };
}

/** A text in the language of the screens; `lang` where it is in another one. */
export type Said = { text: string; lang?: 'en' };

/** A message in the language of the screens. To be called while a screen is drawn. */
export function said(what: Message): Said {
  const { sentences, lang } = tongue();
  const text = messageText(what, sentences, zone);
  return lang === undefined ? { text } : { text, lang };
}

/** The attribute for what is put together of several: English as soon as one of them is. */
export const langOf = (...parts: readonly Said[]): { lang?: 'en' } =>
  parts.some(({ lang }) => lang === 'en') ? { lang: 'en' } : {};

/** What a person wrote stands as theirs, in quotes of the language; a name keeps its own direction of writing. */
function drawn({ by, text }: Part, at: number): ComponentChild {
  if (by === 'program') return text;
  return by === 'person' ? (
    <q key={at} dir="auto">
      {text}
    </q>
  ) : (
    <bdi key={at}>{text}</bdi>
  );
}

/** A message in words, what people wrote marked as theirs; a span only around what is not in the screens' language. */
export function inWords(what: Message): ComponentChild {
  const { sentences, lang } = tongue();
  const parts = messageParts(what, sentences, zone).map(drawn);
  return lang === undefined ? parts : <span lang={lang}>{parts}</span>;
}

/** Messages after each other, as `inWords`. */
export const inWordsOf = (messages: readonly Message[]): ComponentChild =>
  messages.map((one, at) => [at > 0 && ' ', inWords(one)]);

/** As `inWords`, in a span of its own. */
export const Sentence = ({ children }: { children: Message }) => <span>{inWords(children)}</span>;
