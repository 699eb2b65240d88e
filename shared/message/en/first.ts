import { completenessEn } from './completeness.ts';
import { kitEn } from './kit.ts';
import { writtenEn } from './written.ts';

/** What the first screens of a visit say: all the English that a phone's first load brings. */
export const firstEn = { ...completenessEn, ...kitEn, ...writtenEn };
