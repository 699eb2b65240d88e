import { enTerms } from '../../../shared/message/en/terms.ts';
import type { MessageTerms } from '../../../shared/message/index.ts';
import { language } from './language.ts';
import { loadedGerman } from './loaded-german.ts';

/** What the contract's own values are called, in the language of the screens; in English until German is there. */
export const terms = (): MessageTerms =>
  language.value === 'de' ? (loadedGerman()?.terms ?? enTerms) : enTerms;

/** Gbit/s that the HDMI compliance programme certifies a cable category for; the lower ones are told by their names. */
const certifiedGbps: Partial<Record<keyof MessageTerms['category'], number>> = {
  premiumHighSpeed: 18,
  ultraHighSpeed: 48,
};
/** The categories of cables to choose from, with what they are certified for. */
export const categoryChoices = (): MessageTerms['category'] => {
  const names = Object.entries(terms().category) as [keyof MessageTerms['category'], string][];
  const choice = ([category, name]: (typeof names)[number]) => {
    const rate = certifiedGbps[category];
    return [category, rate === undefined ? name : `${name} (${rate} Gbit/s)`];
  };
  return Object.fromEntries(names.map(choice)) as MessageTerms['category'];
};

/** The name of a state, also of one that this version does not know. */
export const stateWord = (state: string): string => (terms().state as Record<string, string>)[state] ?? state;
/** What a command, or another event of the log, does, as a button says it. */
export const commandWord = ({ type }: { type: string }): string =>
  (({ ...terms().fact, ...terms().command }) as Record<string, string>)[type] ?? type;
