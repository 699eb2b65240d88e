import type { CameBackAnswer, LastedAnswer } from '../../../shared/contract/diary-names.ts';
import type { LanguageTag } from '../../../shared/contract/language-names.ts';

/** What the client's page says. The time zone's own words for a moment are put in by the page. */
type Words = {
  readonly title: string;
  readonly ask: string;
  readonly now: string;
  readonly earlier: string;
  readonly when: string;
  readonly sendEarlier: string;
  readonly thanks: (moment: string) => string;
  readonly more: string;
  readonly howLong: string;
  readonly lasted: Readonly<Record<LastedAnswer, string>>;
  readonly byItself: string;
  readonly cameBack: Readonly<Record<CameBackAnswer, string>>;
  readonly sendMore: string;
  readonly moreKept: string;
  readonly sent: string;
  readonly leaveAlone: string;
  readonly whoReads: (until: string) => string;
  readonly whatIsSent: string;
  readonly remove: string;
  readonly removeWhat: string;
  readonly removeYes: string;
  readonly removed: string;
  readonly timeUnknown: string;
  readonly tooMuch: string;
  readonly notOpen: string;
  readonly notOpenWhat: string;
  readonly tooMany: string;
  readonly tooManyWhat: string;
  readonly failed: string;
  readonly failedWhat: string;
  readonly enterCode: string;
  readonly code: string;
  readonly open: string;
};

const english: Words = {
  title: 'Did the fault come?',
  ask: 'Tap as soon as it happens. One tap sends the time, and nothing else.',
  now: 'It happened just now',
  earlier: 'It happened earlier',
  when: 'When was it, about?',
  sendEarlier: 'Send this time',
  thanks: (moment) => `Thank you. Sent: ${moment}.`,
  more: 'Two questions more, if you like',
  howLong: 'How long did it last?',
  lasted: {
    aMoment: 'A moment',
    someSeconds: 'Some seconds',
    aMinute: 'About a minute',
    longer: 'Longer',
  },
  byItself: 'Did it go away by itself?',
  cameBack: { byItself: 'Yes', notByItself: 'No, something had to be done' },
  sendMore: 'Send the answers',
  moreKept: 'Thank you, your answers were sent too.',
  sent: 'What you sent',
  leaveAlone: 'Please leave cables and devices as they are, so that the times mean something.',
  whoReads: (until) =>
    `Your service firm reads this, and whoever it asks for help with this fault. This page is open until ${until}.`,
  whatIsSent:
    'Sent are the times and your answers. No name, no title of what you watch, no address. Opening this page sends nothing.',
  remove: 'Delete what I sent',
  removeWhat:
    'The times and answers that were sent by this page are deleted for good. That something was sent, and deleted, stays noted.',
  removeYes: 'Delete it now',
  removed: 'What you sent is deleted.',
  timeUnknown: 'That time could not be read, or lies ahead. Please choose it again.',
  tooMuch: 'So much was sent in the last hour that no more is taken now. Please try again later.',
  notOpen: 'This page is not open',
  notOpenWhat:
    'The link or code is wrong, or not valid any more. Please ask your service firm for a new one.',
  tooMany: 'Too often',
  tooManyWhat: 'Please wait a minute, then try again.',
  failed: 'That did not work',
  failedWhat: 'Nothing is lost on your side. Please try again in a while.',
  enterCode: 'Enter your code',
  code: 'The code of your service firm',
  open: 'Open',
};

const german: Words = {
  title: 'Kam der Fehler?',
  ask: 'Tippen Sie, sobald es passiert. Einmal tippen sendet die Uhrzeit, sonst nichts.',
  now: 'Es ist gerade passiert',
  earlier: 'Es ist früher passiert',
  when: 'Wann war es ungefähr?',
  sendEarlier: 'Diese Zeit senden',
  thanks: (moment) => `Danke. Gesendet: ${moment}.`,
  more: 'Noch zwei Fragen, wenn Sie mögen',
  howLong: 'Wie lange dauerte es?',
  lasted: {
    aMoment: 'Einen Augenblick',
    someSeconds: 'Einige Sekunden',
    aMinute: 'Etwa eine Minute',
    longer: 'Länger',
  },
  byItself: 'Ging es von selbst weg?',
  cameBack: { byItself: 'Ja', notByItself: 'Nein, es musste etwas getan werden' },
  sendMore: 'Antworten senden',
  moreKept: 'Danke, auch Ihre Antworten sind gesendet.',
  sent: 'Was Sie gesendet haben',
  leaveAlone: 'Bitte lassen Sie Kabel und Geräte, wie sie sind, damit die Zeiten etwas aussagen.',
  whoReads: (until) =>
    `Das liest Ihr Servicebetrieb, und wen er zu diesem Fehler um Hilfe bittet. Diese Seite ist offen bis ${until}.`,
  whatIsSent:
    'Gesendet werden die Zeiten und Ihre Antworten. Kein Name, kein Titel dessen, was Sie ansehen, keine Adresse. Das Öffnen dieser Seite sendet nichts.',
  remove: 'Löschen, was ich gesendet habe',
  removeWhat:
    'Die Zeiten und Antworten, die über diese Seite gesendet wurden, werden endgültig gelöscht. Dass etwas gesendet und gelöscht wurde, bleibt vermerkt.',
  removeYes: 'Jetzt löschen',
  removed: 'Was Sie gesendet haben, ist gelöscht.',
  timeUnknown: 'Diese Zeit war nicht zu lesen oder liegt in der Zukunft. Bitte wählen Sie sie noch einmal.',
  tooMuch:
    'In der letzten Stunde wurde so viel gesendet, dass jetzt nichts mehr angenommen wird. Bitte versuchen Sie es später.',
  notOpen: 'Diese Seite ist nicht offen',
  notOpenWhat:
    'Der Link oder Code ist falsch oder gilt nicht mehr. Bitte fragen Sie Ihren Servicebetrieb nach einem neuen.',
  tooMany: 'Zu oft',
  tooManyWhat: 'Bitte warten Sie eine Minute und versuchen Sie es dann noch einmal.',
  failed: 'Das hat nicht geklappt',
  failedWhat: 'Bei Ihnen ist nichts verloren. Bitte versuchen Sie es in einer Weile noch einmal.',
  enterCode: 'Code eingeben',
  code: 'Der Code Ihres Servicebetriebs',
  open: 'Öffnen',
};

const all: Readonly<Record<LanguageTag, Words>> = { en: english, de: german };
export const wordsFor = (language: LanguageTag): Words => all[language];
