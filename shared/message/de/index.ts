import type { Language } from '../sentences.ts';
import { logCheckDe } from './log-check.ts';
import { germanSay } from './say.ts';
import { writtenDe } from './written.ts';

export { deTerms } from './terms.ts';

export const german: Language = {
  tag: 'de',
  quotes: ['„', '“'],
  sentences: { ...logCheckDe, ...writtenDe },
  say: (zone) => germanSay(german, zone),
};
