import { plural, wordsOf } from '../../words/language.ts';

const en = {
  figure: 'Figure',
  figuresIn: (count: number, own: number) =>
    own === 0 ? plural('en', count, '1 figure', `${count} figures`) : `${count} figures, ${own} of them ours`,
  figureExample: 'What our figures do to an example',
  exampleHint:
    'A source, a receiver and a display; 2 m of copper, then 12 m of it in a wall. Nothing is tried yet; the fault comes at random.',
  exampleChain: 'Example',
  exampleSymptom: 'What is seen',
  suspect: 'Suspect',
  withOwn: 'With ours',
  builtIn: 'Built in',
  origin: 'From',
  own: 'Our own',
  ownOf: (path: string) => `Our own figure for ${path}`,
};

const de: typeof en = {
  figure: 'Zahl',
  figuresIn: (count, own) =>
    own === 0 ? plural('de', count, '1 Zahl', `${count} Zahlen`) : `${count} Zahlen, davon ${own} unsere`,
  figureExample: 'Was unsere Zahlen an einem Beispiel ändern',
  exampleHint:
    'Eine Quelle, ein Receiver und ein Bildschirm; 2 m Kupfer, dann 12 m davon in einer Wand. Noch ist nichts versucht; der Fehler kommt zufällig.',
  exampleChain: 'Beispiel',
  exampleSymptom: 'Was zu sehen ist',
  suspect: 'Verdächtig',
  withOwn: 'Mit unseren',
  builtIn: 'Eingebaut',
  origin: 'Woher',
  own: 'Unsere eigene',
  ownOf: (path) => `Unsere eigene Zahl für ${path}`,
};

export const figureGroupWords = wordsOf({ en, de });
