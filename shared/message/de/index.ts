import type { Language } from '../sentences.ts';
import { germanSay } from './say.ts';
import { writtenDe } from './written.ts';

export { deTerms } from './terms.ts';

export const german: Language = {
  tag: 'de',
  quotes: ['„', '“'],
  sentences: { ...writtenDe },
  say: (zone) => germanSay(german, zone),
};
