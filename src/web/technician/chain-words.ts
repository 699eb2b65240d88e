import type { LinkCategory, LinkConstruction } from '../../../shared/contract/chain.ts';
import type { EvidenceTie } from '../../../shared/contract/evidence.ts';
import { wordsOf } from '../words/language.ts';

type ChainWords = {
  constructions: Record<LinkConstruction, string>;
  categories: Record<LinkCategory, string>;
  shows: Record<NonNullable<EvidenceTie['shows']>, string>;
  threeState: Record<'yes' | 'no' | 'unknown', string>;
};

const en: ChainWords = {
  constructions: {
    passiveCopper: 'copper, passive',
    activeCopper: 'copper, active',
    activeOptical: 'optical, active',
    twistedPairExtender: 'extender over twisted pair',
  },
  categories: {
    standard: 'Standard',
    highSpeed: 'High Speed',
    premiumHighSpeed: 'Premium High Speed (18 Gbit/s)',
    ultraHighSpeed: 'Ultra High Speed (48 Gbit/s)',
    unknown: 'category not known',
  },
  shows: {
    sourceEnd: 'Source end',
    sinkEnd: 'Sink end',
    label: 'Label',
    port: 'Socket',
    screen: 'Screen',
    other: 'Something else',
  },
  threeState: { yes: 'yes', no: 'no', unknown: 'not known' },
};
const de: ChainWords = {
  constructions: {
    passiveCopper: 'Kupfer, passiv',
    activeCopper: 'Kupfer, aktiv',
    activeOptical: 'optisch, aktiv',
    twistedPairExtender: 'Verlängerung über Zweidraht',
  },
  categories: {
    standard: 'Standard',
    highSpeed: 'High Speed',
    premiumHighSpeed: 'Premium High Speed (18 Gbit/s)',
    ultraHighSpeed: 'Ultra High Speed (48 Gbit/s)',
    unknown: 'Kategorie nicht bekannt',
  },
  shows: {
    sourceEnd: 'Quellenseite',
    sinkEnd: 'Anzeigenseite',
    label: 'Aufdruck',
    port: 'Buchse',
    screen: 'Bildschirm',
    other: 'Etwas anderes',
  },
  threeState: { yes: 'ja', no: 'nein', unknown: 'nicht bekannt' },
};
/** What the values of a chain's description are called on the technician's screens. */
export const chainWords = wordsOf({ en, de });
