import { hasLabel, testedForGbps } from '../../../shared/chain/tested-rate.ts';
import type { LinkCategory } from '../../../shared/contract/chain.ts';
import { enTerms } from '../../../shared/message/en/terms.ts';
import type { MessageTerms } from '../../../shared/message/index.ts';
import { language } from './language.ts';
import { loadedGerman } from './loaded-german.ts';

/** What the contract's own values are called, in the language of the screens; in English until German is there. */
export const terms = (): MessageTerms =>
  language.value === 'de' ? (loadedGerman()?.terms ?? enTerms) : enTerms;

/** The categories of cables to choose from; those with a label say what they are tested for. */
export function categoryChoices(): MessageTerms['category'] {
  const names = Object.entries(terms().category) as [LinkCategory, string][];
  return Object.fromEntries(
    names.map(([category, name]) => [
      category,
      hasLabel(category) ? `${name} (${testedForGbps[category]} Gbit/s)` : name,
    ]),
  ) as MessageTerms['category'];
}

/** The name of a state, or of the one that it is within; also of one that this version does not know. */
export function stateWord(state: string): string {
  const words: Readonly<Record<string, string>> = terms().state;
  return words[state] ?? words[state.split('.')[0] ?? ''] ?? state;
}
/** What a command, or another event of the log, does, as a button says it. */
export const commandWord = ({ type }: { type: string }): string =>
  (({ ...terms().fact, ...terms().command }) as Record<string, string>)[type] ?? type;
