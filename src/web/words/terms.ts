import { deTerms } from '../../../shared/message/de/terms.ts';
import { enTerms } from '../../../shared/message/en/terms.ts';
import { wordsOf } from './language.ts';

/** What the contract's own values are called, in the language of the screens. */
export const terms = wordsOf({ en: enTerms, de: deTerms });

/** The name of a state, also of one that this version does not know. */
export const stateWord = (state: string): string => (terms().state as Record<string, string>)[state] ?? state;
/** What a command, or another event of the log, does, as a button says it. */
export const commandWord = ({ type, label }: { type: string; label: string }): string =>
  (({ ...terms().fact, ...terms().command }) as Record<string, string>)[type] ?? label;
