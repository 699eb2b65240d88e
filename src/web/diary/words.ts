import type { CameBackAnswer, LastedAnswer } from '../../../shared/contract/diary-names.ts';
import { wordsOf } from '../words/language.ts';

const lasted: Record<LastedAnswer, string> = {
  aMoment: 'lasted a moment',
  someSeconds: 'lasted some seconds',
  aMinute: 'lasted about a minute',
  longer: 'lasted longer',
};
const cameBack: Record<CameBackAnswer, string> = {
  byItself: 'went away by itself',
  notByItself: 'did not go away by itself',
};
const lastedGerman: Record<LastedAnswer, string> = {
  aMoment: 'dauerte einen Augenblick',
  someSeconds: 'dauerte einige Sekunden',
  aMinute: 'dauerte etwa eine Minute',
  longer: 'dauerte länger',
};
const cameBackGerman: Record<CameBackAnswer, string> = {
  byItself: 'ging von selbst weg',
  notByItself: 'ging nicht von selbst weg',
};

export const diaryWords = wordsOf({
  en: {
    title: 'Client’s diary',
    toDiary: 'Client’s diary',
    what: 'For a fault that comes too rarely to watch for: the client taps a link when it happens. Nobody here saw it, so it weighs less than a watch.',
    count: (count: number) =>
      count === 0
        ? 'Nothing reported so far.'
        : count === 1
          ? 'One occurrence reported.'
          : `${count} occurrences reported.`,
    reported: 'Reported by the client',
    lasted,
    cameBack,
    deleted: 'Deleted by the client',
    leftOut: 'Does not count:',
    leaveOut: 'Leave out',
    leaveOutOf: (moment: string) => `Leave out what was reported for ${moment}`,
    leaveOutWhy: 'Why is it no occurrence?',
    leaveOutDo: 'Do not count it',
    cancel: 'Cancel',
    links: 'Links for the client',
    noLinks: 'None is open.',
    open: 'Open a diary',
    days: 'For how long?',
    forDays: (days: number) => (days === 7 ? 'A week' : days === 21 ? 'Three weeks' : `${days} days`),
    opened: 'The diary is open. Send the link to the client, or tell them the code.',
    until: (moment: string, by: string) => `Open until ${moment}, by ${by}`,
    code: 'Code',
    codeGone: 'The server’s secret was changed since: open another one.',
    enterAt: (address: string) => `To be typed in at ${address}`,
    copy: 'Copy the link',
    copied: 'Copied.',
    share: 'Share the link',
    shareText: 'When the fault comes, please tap here:',
    close: 'Close this diary',
    closedNow: 'The diary is closed. Its link opens nothing any more.',
    toVisit: 'To the visit',
  },
  de: {
    title: 'Tagebuch des Kunden',
    toDiary: 'Tagebuch des Kunden',
    what: 'Für einen Fehler, der zu selten kommt, um auf ihn zu warten: Der Kunde tippt auf einen Link, wenn es passiert. Hier hat ihn niemand gesehen, darum wiegt er weniger als eine Beobachtung.',
    count: (count: number) =>
      count === 0
        ? 'Bisher nichts gemeldet.'
        : count === 1
          ? 'Ein Vorkommen gemeldet.'
          : `${count} Vorkommen gemeldet.`,
    reported: 'Vom Kunden gemeldet',
    lasted: lastedGerman,
    cameBack: cameBackGerman,
    deleted: 'Vom Kunden gelöscht',
    leftOut: 'Zählt nicht:',
    leaveOut: 'Nicht zählen',
    leaveOutOf: (moment: string) => `Nicht zählen, was für ${moment} gemeldet wurde`,
    leaveOutWhy: 'Warum ist es kein Vorkommen?',
    leaveOutDo: 'Nicht zählen',
    cancel: 'Abbrechen',
    links: 'Links für den Kunden',
    noLinks: 'Keiner ist offen.',
    open: 'Tagebuch öffnen',
    days: 'Für wie lange?',
    forDays: (days: number) => (days === 7 ? 'Eine Woche' : days === 21 ? 'Drei Wochen' : `${days} Tage`),
    opened: 'Das Tagebuch ist offen. Schicken Sie dem Kunden den Link, oder sagen Sie ihm den Code.',
    until: (moment: string, by: string) => `Offen bis ${moment}, von ${by}`,
    code: 'Code',
    codeGone: 'Das Geheimnis des Servers wurde seitdem geändert: Öffnen Sie ein neues.',
    enterAt: (address: string) => `Einzugeben auf ${address}`,
    copy: 'Link kopieren',
    copied: 'Kopiert.',
    share: 'Link teilen',
    shareText: 'Wenn der Fehler kommt, bitte hier tippen:',
    close: 'Dieses Tagebuch schließen',
    closedNow: 'Das Tagebuch ist geschlossen. Sein Link öffnet nichts mehr.',
    toVisit: 'Zum Einsatz',
  },
});
