import { wordsOf } from '../../words/language.ts';
import type { Answers } from './answers.ts';

type Words = {
  how: string;
  patterns: Record<Answers['pattern'], string>;
  when: string;
  warmAfter: string;
  onlyWith: string;
  onlyWithOne: Record<Answers['onlyWith'], string>;
  which: string;
};

/** Words of how a fault comes, as a caller is asked. */
export const patternWords = wordsOf<Words>({
  en: {
    how: 'How does it come?',
    patterns: {
      always: 'it is there all the time',
      trigger: 'when something is done or happens',
      random: 'now and then, nobody knows when',
      rarely: 'rarely: days apart',
      bursts: 'several times in a row, then long not',
      warm: 'only after it has been on for a while',
      notKnown: 'not known',
    },
    when: 'When exactly?',
    warmAfter: 'After how many minutes? (empty: not known)',
    onlyWith: 'Only with one source, title or application?',
    onlyWithOne: {
      anything: 'no, or not known',
      source: 'one source',
      title: 'one title',
      application: 'one application',
    },
    which: 'Which one?',
  },
  de: {
    how: 'Wie kommt es?',
    patterns: {
      always: 'es ist die ganze Zeit da',
      trigger: 'wenn etwas getan wird oder geschieht',
      random: 'ab und zu, niemand weiß wann',
      rarely: 'selten: Tage auseinander',
      bursts: 'mehrmals hintereinander, dann lange nicht',
      warm: 'erst wenn alles eine Weile an war',
      notKnown: 'nicht bekannt',
    },
    when: 'Wann genau?',
    warmAfter: 'Nach wie vielen Minuten? (leer: nicht bekannt)',
    onlyWith: 'Nur mit einer Quelle, einem Titel, einer Anwendung?',
    onlyWithOne: {
      anything: 'nein, oder nicht bekannt',
      source: 'mit einer Quelle',
      title: 'mit einem Titel',
      application: 'mit einer Anwendung',
    },
    which: 'Welche genau?',
  },
});
