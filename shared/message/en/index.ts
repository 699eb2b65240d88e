import type { Language } from '../sentences.ts';
import { logCheckEn } from './log-check.ts';
import { englishSay } from './say.ts';
import { writtenEn } from './written.ts';

export { enTerms } from './terms.ts';

export const english: Language = {
  tag: 'en',
  quotes: ['“', '”'],
  sentences: { ...logCheckEn, ...writtenEn },
  say: (zone) => englishSay(english, zone),
};
