import type { KitItem } from '../../../shared/isolation/kit.ts';
import { wordsOf } from '../words/language.ts';
import { number } from '../words/times.ts';
import { chainWords } from './chain-words.ts';

// Beside kitText of shared/isolation/kit.ts, which would bring the contract's schemas into the first load.
const words = wordsOf({
  en: {
    cable: (lengthM: string, category: string) => `Cable, ${lengthM} m, ${category}`,
    coupler: 'A coupler that passes the full rate',
    syncSwitch: 'A switch that regenerates sync',
    display: 'A test display with the same content protection',
    source: 'A second source known to be good',
    extenderPair: 'A pair of twisted-pair extenders known to be good',
  },
  de: {
    cable: (lengthM, category) => `Kabel, ${lengthM} m, ${category}`,
    coupler: 'Eine Kupplung, die die volle Rate durchlässt',
    syncSwitch: 'Ein Umschalter, der den Takt erneuert',
    display: 'Eine Testanzeige mit demselben Kopierschutz',
    source: 'Eine zweite Quelle, die sicher gut ist',
    extenderPair: 'Ein Paar Verlängerungen über verdrillte Paare, die sicher gut sind',
  },
});

/** Something to have at hand, in the language of the screens. */
export const kitItemWords = (item: KitItem): string =>
  item.kind === 'cable'
    ? words().cable(number(item.lengthM, 1), chainWords().categories[item.category])
    : words()[item.kind];
