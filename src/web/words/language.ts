import { effect, signal } from '@preact/signals';
import { type LanguageTag, languageTags } from '../../../shared/contract/language-names.ts';

export const languages = languageTags;
export type Language = LanguageTag;

const key = 'halfsplit-language';
const chosenBefore = (): Language => {
  const kept = localStorage.getItem(key);
  const wanted = [kept, ...navigator.languages].map((tag) => tag?.slice(0, 2));
  return (
    languages.find((known) => wanted.find((tag) => languages.some((one) => one === tag)) === known) ?? 'en'
  );
};

/** The language of the screens; every screen follows when it changes. */
export const language = signal<Language>(chosenBefore());
effect(() => {
  document.documentElement.lang = language.value;
});
export function chooseLanguage(chosen: Language): void {
  localStorage.setItem(key, chosen);
  language.value = chosen;
}

/**
 * Words in every language. `en` gives the keys; one that another language lacks, or has too many, is a type error.
 * The function that comes back is called while a screen is drawn: `t().title`.
 */
export function wordsOf<Words extends object>(both: { en: Words; de: NoInfer<Words> }): () => Words {
  return () => both[language.value];
}

const rules = { en: new Intl.PluralRules('en'), de: new Intl.PluralRules('de') };
/** The form of a word for a number; both our languages know `one` and `other`. */
export const plural = (tongue: Language, count: number, one: string, other: string): string =>
  rules[tongue].select(count) === 'one' ? one : other;
