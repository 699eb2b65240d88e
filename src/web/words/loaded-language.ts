import { effect } from '@preact/signals';
import { type Language, language } from './language.ts';
import { allEnglish } from './loaded-english.ts';
import { allGerman } from './loaded-german.ts';

const loads: Record<Language, () => Promise<void>> = { en: allEnglish, de: allGerman };

/** Resolves when every sentence in the language of the screens is there, or can't be had now. */
export const allSentences = (): Promise<void> => loads[language.value]();

// German is read at once, so that it is there before the first plan is; of English a first load brings what it needs.
effect(() => {
  if (language.value === 'de') void allGerman();
});
