import type { EvidenceTie } from '../../../shared/contract/evidence.ts';
import { wordsOf } from '../words/language.ts';

type ChainWords = {
  shows: Record<NonNullable<EvidenceTie['shows']>, string>;
  threeState: Record<'yes' | 'no' | 'unknown', string>;
};

const en: ChainWords = {
  shows: {
    sourceEnd: 'Source end',
    sinkEnd: 'Sink end',
    label: 'Label',
    port: 'Socket',
    screen: 'Screen',
    signature: 'Client’s signature',
    other: 'Something else',
  },
  threeState: { yes: 'yes', no: 'no', unknown: 'not known' },
};
const de: ChainWords = {
  shows: {
    sourceEnd: 'Quellenseite',
    sinkEnd: 'Anzeigenseite',
    label: 'Aufdruck',
    port: 'Buchse',
    screen: 'Bildschirm',
    signature: 'Unterschrift des Kunden',
    other: 'Etwas anderes',
  },
  threeState: { yes: 'ja', no: 'nein', unknown: 'nicht bekannt' },
};
/** What the values of a chain's description are called on screens. */
export const chainWords = wordsOf({ en, de });
