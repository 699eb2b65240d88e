import { completenessEn } from './completeness.ts';
import { kitEn } from './kit.ts';
import { patternsEn } from './patterns.ts';
import { problemTitlesEn } from './problem-titles.ts';
import { requestsEn } from './requests.ts';
import { writtenEn } from './written.ts';

/** What signing in and the first screens of a visit say, refusals included: all the English that a first load brings. */
export const firstEn = {
  ...completenessEn,
  ...kitEn,
  ...patternsEn,
  ...problemTitlesEn,
  ...requestsEn,
  ...writtenEn,
};
