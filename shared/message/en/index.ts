import type { Language } from '../sentences.ts';
import { firstEn } from './first.ts';
import { laterEn } from './later.ts';
import { englishOf } from './say.ts';

export { enTerms } from './terms.ts';

/** All of English: a code that lacks its sentence in both halves is a type error. */
export const english: Language = englishOf({ ...firstEn, ...laterEn });
