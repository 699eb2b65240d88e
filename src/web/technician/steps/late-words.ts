import { wordsOf } from '../../words/language.ts';

/** Words of a change that is entered afterwards. */
export const lateWords = wordsOf({
  en: {
    title: 'Enter a change that was made already',
    lead: 'Made before you came, or without saying so first: enter it at its true time. It is marked, and counts for less than one that was said and watched.',
    which: 'What was changed?',
    other: 'Something else, in words',
    where: 'What was it changed at?',
    detail: 'In words',
    madeBy: 'Who made it?',
    madeAt: 'When?',
    isThere: 'Is it still there?',
    there: 'Yes, it is still in place',
    undone: 'No, it was put back',
    undoneAt: 'When was it put back?',
    seen: 'What did the fault do meanwhile?',
    missing: 'Say what was changed, by whom and when; the clock can’t have skipped that time.',
    enter: 'Enter it',
  },
  de: {
    title: 'Eine schon gemachte Änderung nachtragen',
    lead: 'Gemacht, bevor du kamst, oder ohne es vorher anzusagen: Trag sie zu ihrer wahren Zeit ein. Sie wird gekennzeichnet und zählt weniger als eine angesagte und beobachtete.',
    which: 'Was wurde geändert?',
    other: 'Etwas anderes, in Worten',
    where: 'Woran wurde es geändert?',
    detail: 'In Worten',
    madeBy: 'Wer hat es gemacht?',
    madeAt: 'Wann?',
    isThere: 'Ist es noch da?',
    there: 'Ja, es ist noch eingebaut',
    undone: 'Nein, es wurde zurückgebaut',
    undoneAt: 'Wann wurde es zurückgebaut?',
    seen: 'Was tat der Fehler währenddessen?',
    missing: 'Sag, was geändert wurde, von wem und wann; die Uhr darf diese Zeit nicht übersprungen haben.',
    enter: 'Eintragen',
  },
});
