import type { Language } from '../sentences.ts';
import { careDe, changesDe, needsDe } from './changes.ts';
import { filesDe } from './files.ts';
import { kitDe } from './kit.ts';
import { logCheckDe } from './log-check.ts';
import { planDe } from './plan.ts';
import { problemTitlesDe } from './problem-titles.ts';
import { recordsDe } from './records.ts';
import { requestsDe } from './requests.ts';
import { germanSay } from './say.ts';
import { stepsDe } from './steps.ts';
import { suspectsDe } from './suspects.ts';
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
    ...changesDe,
    ...careDe,
    ...needsDe,
    ...kitDe,
    ...planDe,
    ...stepsDe,
    ...suspectsDe,
  },
  say: (zone) => germanSay(german, zone),
};
