import type { Language } from '../sentences.ts';
import { filesEn } from './files.ts';
import { logCheckEn } from './log-check.ts';
import { problemTitlesEn } from './problem-titles.ts';
import { recordsEn } from './records.ts';
import { requestsEn } from './requests.ts';
import { englishSay } from './say.ts';
import { writtenEn } from './written.ts';

export { enTerms } from './terms.ts';

export const english: Language = {
  tag: 'en',
  quotes: ['“', '”'],
  sentences: {
    ...logCheckEn,
    ...writtenEn,
    ...requestsEn,
    ...recordsEn,
    ...filesEn,
    ...problemTitlesEn,
  },
  say: (zone) => englishSay(english, zone),
};
