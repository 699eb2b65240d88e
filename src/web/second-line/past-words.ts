import { plural, wordsOf } from '../words/language.ts';

/** Words of past cases, and of those that are like the one at hand. */
export const pastWords = wordsOf({
  en: {
    title: 'Past cases',
    alike: 'Cases like this one',
    alikeLead: 'By devices, symptom and culprit, the most alike first.',
    noneAlike: 'No closed case has its symptom or one of its devices. Search all past cases:',
    toSearch: 'All past cases',
    find: 'Find',
    findHint:
      'Words of client, chain, model, serial number, cable, or of what it was and what was done; a slip of a letter is forgiven',
    symptom: 'Symptom',
    any: 'any',
    none: 'No closed case like that. Take a word away, or choose another symptom.',
    count: (count: number) => plural('en', count, '1 case', `${count} cases`),
    newest: (count: number) => `The newest ${count} of more`,
    more: 'Show older ones',
    closed: (when: string) => `closed ${when}`,
    nothingNamed: 'No culprit was named',
    common: 'In common',
    sameSymptom: 'the symptom',
    sameCulprit: 'the part that was the culprit',
  },
  de: {
    title: 'Frühere Fälle',
    alike: 'Fälle wie dieser',
    alikeLead: 'Nach Geräten, Fehlerbild und Ursache, die ähnlichsten zuerst.',
    noneAlike:
      'Kein abgeschlossener Fall hat dieses Fehlerbild oder eines der Geräte. Alle früheren Fälle durchsuchen:',
    toSearch: 'Alle früheren Fälle',
    find: 'Suchen',
    findHint:
      'Wörter aus Kunde, Kette, Modell, Seriennummer, Kabel, oder was es war und was getan wurde; ein falscher Buchstabe stört nicht',
    symptom: 'Fehlerbild',
    any: 'jedes',
    none: 'Kein solcher abgeschlossener Fall. Nimm ein Wort weg, oder wähle ein anderes Fehlerbild.',
    count: (count) => plural('de', count, '1 Fall', `${count} Fälle`),
    newest: (count) => `Die neuesten ${count} von mehr`,
    more: 'Ältere zeigen',
    closed: (when) => `abgeschlossen am ${when}`,
    nothingNamed: 'Keine Ursache wurde benannt',
    common: 'Gemeinsam',
    sameSymptom: 'das Fehlerbild',
    sameCulprit: 'das Teil, das die Ursache war',
  },
});
