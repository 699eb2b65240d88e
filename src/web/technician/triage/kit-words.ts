import { type KitItem, kitText } from '../../../../shared/isolation/kit.ts';
import { language, wordsOf } from '../../words/language.ts';

export const kitWords = wordsOf({
  en: {
    title: 'What is at hand',
    lead: 'The plan asks only for what is here. It stays on this phone.',
    all: 'Everything it could ask for is here',
    only: 'Only what I tick',
    items: 'In the van or on site',
    people: 'How many are you?',
    one: 'I am alone',
    two: 'There are two of us',
    refused: 'What the client does not want',
    allow: 'They want it after all',
    at: (what: string, where: string) => `${what}: ${where}`,
    menu: 'Its menu',
  },
  de: {
    title: 'Was zur Hand ist',
    lead: 'Der Plan verlangt nur, was da ist. Es bleibt auf diesem Telefon.',
    all: 'Alles, wonach er fragen könnte, ist da',
    only: 'Nur, was ich anhake',
    items: 'Im Wagen oder vor Ort',
    people: 'Wie viele seid ihr?',
    one: 'Ich bin allein',
    two: 'Wir sind zu zweit',
    refused: 'Was der Kunde nicht will',
    allow: 'Doch, das geht',
    at: (what, where) => `${what}: ${where}`,
    menu: 'Sein Menü',
  },
});

const german = {
  coupler: 'eine Kupplung, die die volle Rate durchlässt',
  syncSwitch: 'ein Umschalter, der den Takt erneuert',
  display: 'eine Testanzeige mit demselben Kopierschutz',
  source: 'eine zweite Quelle, die sicher gut ist',
  extenderPair: 'ein Paar Verlängerungen über verdrillte Paare, die sicher gut sind',
} as const;
const germanCategories = {
  standard: 'Standard',
  highSpeed: 'High Speed',
  premiumHighSpeed: 'Premium High Speed (18 Gbit/s)',
  ultraHighSpeed: 'Ultra High Speed (48 Gbit/s)',
  unknown: 'zertifiziert',
} as const;

export function kitItemWords(item: KitItem): string {
  if (language.value === 'en') return kitText(item);
  return item.kind === 'cable'
    ? `ein Kabel ${String(item.lengthM).replace('.', ',')} m, ${germanCategories[item.category]}`
    : german[item.kind];
}
