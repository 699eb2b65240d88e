import type { Language } from '../sentences.ts';
import { filesDe } from './files.ts';
import { logCheckDe } from './log-check.ts';
import { problemTitlesDe } from './problem-titles.ts';
import { recordsDe } from './records.ts';
import { requestsDe } from './requests.ts';
import { germanSay } from './say.ts';
import { writtenDe } from './written.ts';

export { deTerms } from './terms.ts';

export const german: Language = {
  tag: 'de',
  quotes: ['„', '“'],
  sentences: {
    ...logCheckDe,
    ...writtenDe,
    ...requestsDe,
    ...recordsDe,
    ...filesDe,
    ...problemTitlesDe,
  },
  say: (zone) => germanSay(german, zone),
};
