import { wordsOf } from '../words/language.ts';
import { caseWordsDe } from './words-de.ts';
import { type CaseWords, caseWordsEn } from './words-en.ts';

/** Words of a case on one page. */
export const caseWords = wordsOf<CaseWords>({ en: caseWordsEn, de: caseWordsDe });
