import { wordsOf } from '../../words/language.ts';

/** Words of what a watch is under, and of looks and tries. */
export const conditionWords = wordsOf({
  en: {
    lookNow: 'Look now',
    startTryingNamed: (trigger: string) => `Start trying: ${trigger}`,
    plays: 'What is playing?',
    playsTold: (kind: string, what: string) => (what === '' ? `The one ${kind} that shows it` : what),
    playsOther: 'Something else',
    onFor: 'How many minutes has everything been on?',
    lookTitle: 'Look: is the fault there?',
    isThere: 'It is there',
    isThereMenuClean: 'It is there: the menu is clean',
    isThereMenuToo: 'It is there: the menu has it too',
    isNotThere: 'It is not there',
    moreLooks: (count: number) => (count === 1 ? '1 more good look' : `${count} more good looks`),
  },
  de: {
    lookNow: 'Jetzt hinsehen',
    startTryingNamed: (trigger) => `Mit den Versuchen beginnen: ${trigger}`,
    plays: 'Was läuft?',
    playsTold: (kind, what) => (what === '' ? `Das eine, womit er sich zeigt (${kind})` : what),
    playsOther: 'Etwas anderes',
    onFor: 'Wie viele Minuten ist alles schon an?',
    lookTitle: 'Sieh hin: Ist der Fehler da?',
    isThere: 'Er ist da',
    isThereMenuClean: 'Er ist da: Das Menü ist sauber',
    isThereMenuToo: 'Er ist da: Das Menü hat ihn auch',
    isNotThere: 'Er ist nicht da',
    moreLooks: (count) => (count === 1 ? 'noch 1 guter Blick' : `noch ${count} gute Blicke`),
  },
});
