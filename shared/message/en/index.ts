import type { Language } from '../sentences.ts';
import { careEn, changesEn, needsEn } from './changes.ts';
import { filesEn } from './files.ts';
import { kitEn } from './kit.ts';
import { logCheckEn } from './log-check.ts';
import { planEn } from './plan.ts';
import { problemTitlesEn } from './problem-titles.ts';
import { recordsEn } from './records.ts';
import { requestsEn } from './requests.ts';
import { englishSay } from './say.ts';
import { stepsEn } from './steps.ts';
import { suspectsEn } from './suspects.ts';
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
    ...changesEn,
    ...careEn,
    ...needsEn,
    ...kitEn,
    ...planEn,
    ...stepsEn,
    ...suspectsEn,
  },
  say: (zone) => englishSay(english, zone),
};
