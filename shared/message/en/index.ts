import type { Language } from '../sentences.ts';
import { englishSay } from './say.ts';
import { writtenEn } from './written.ts';

export { enTerms } from './terms.ts';

export const english: Language = {
  tag: 'en',
  quotes: ['“', '”'],
  sentences: { ...writtenEn },
  say: (zone) => englishSay(english, zone),
};
