import { wordsOf } from '../../words/language.ts';

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
