import { plural, wordsOf } from '../words/language.ts';

/** Words of how a ticket ended, for whoever works on it. */
export const endWords = wordsOf({
  en: {
    culprit: 'What it was',
    remedy: 'What was done',
    limits: 'Its limits',
    acceptedBy: (who: string) => `accepted by ${who}`,
    proof: 'How it is known',
    watched: (length: string, seen: number) =>
      `Watched for ${length} afterwards: ${seen === 0 ? 'the fault did not come.' : plural('en', seen, 'the fault came once.', `the fault came ${seen} times.`)}`,
    notWatched: 'Nobody watched it afterwards.',
    anyway: 'Closed all the same',
    closed: 'Closed',
    note: 'Note',
  },
  de: {
    culprit: 'Was es war',
    remedy: 'Was gemacht wurde',
    limits: 'Seine Grenzen',
    acceptedBy: (who) => `angenommen von ${who}`,
    proof: 'Woher man es weiß',
    watched: (length, seen) =>
      `Danach ${length} lang beobachtet: ${seen === 0 ? 'Der Fehler kam nicht.' : plural('de', seen, 'Der Fehler kam einmal.', `Der Fehler kam ${seen}-mal.`)}`,
    notWatched: 'Danach hat niemand beobachtet.',
    anyway: 'Trotzdem abgeschlossen',
    closed: 'Abgeschlossen',
    note: 'Notiz',
  },
});
