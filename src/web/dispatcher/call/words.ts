import type { whatChangedKinds } from '../../../../shared/contract/triage-names.ts';
import { wordsOf } from '../../words/language.ts';
import type { Answers, lasting, often } from './answers.ts';

type Words = {
  title: string;
  who: string;
  whoHint: string;
  searching: string;
  nothingFound: string;
  offline: string;
  found: (count: number) => string;
  newSite: (typed: string) => string;
  otherSite: string;
  whichChain: string;
  noChain: string;
  describeChain: string;
  startOver: string;
  otherCalls: string;
  goOnWith: (who: string) => string;
  inOtherTab: (who: string) => string;
  kept: string;
  questions: string;
  see: string;
  oftenQ: string;
  per: Record<(typeof often)[number], string>;
  longQ: string;
  long: Record<(typeof lasting)[number], string>;
  count: string;
  unit: string;
  sources: string;
  displays: string;
  contentQ: string;
  content: Record<Answers['content'], string>;
  contentText: string;
  since: string;
  sinceHint: string;
  worked: string;
  yesNo: Record<Answers['workedBefore'], string>;
  changedQ: string;
  changed: Record<(typeof whatChangedKinds)[number], string>;
  changedText: (kind: string) => string;
  changedWhen: string;
  tried: string;
  caller: string;
  callerName: string;
  callerPhone: string;
  callerRelation: string;
  callerIsContact: string;
  notes: string;
  more: string;
  open: string;
  symptomMissing: string;
  chainMissing: string;
  lastTickets: string;
  noTickets: string;
  sameChain: string;
  sameChainHint: string;
  another: string;
  isAnother: string;
  thatOne: string;
};

/** Words of the call in progress. */
export const callWords = wordsOf<Words>({
  en: {
    title: 'Call in progress',
    who: 'Who is on the line?',
    whoHint: 'Words of name, address, phone number, serial number or cable, in any order',
    searching: 'Searching',
    nothingFound: 'Nobody like that.',
    offline: 'No connection: nobody can be looked up now.',
    found: (count) => `${count} found`,
    newSite: (typed) => (typed === '' ? 'A site that is not known yet' : `Not known yet: add “${typed}”`),
    otherSite: 'Another site',
    whichChain: 'Which chain?',
    noChain: 'No chain is described at this site yet. A ticket needs one, even a rough one.',
    describeChain: 'Describe the chain',
    startOver: 'Start over',
    otherCalls: 'Calls begun and not opened as tickets',
    goOnWith: (who) => `Go on with ${who}`,
    inOtherTab: (who) => `${who}: in another tab`,
    kept: 'Kept on this device until the ticket is open.',
    questions: 'Ask',
    see: 'What do you see?',
    oftenQ: 'How often?',
    per: { minute: 'a minute', hour: 'an hour', day: 'a day', week: 'a week' },
    longQ: 'How long does it last?',
    long: { s: 'seconds', min: 'minutes', h: 'hours' },
    count: 'Number',
    unit: 'Unit',
    sources: 'Which sources show it?',
    displays: 'On which display?',
    contentQ: 'With what content?',
    content: {
      notKnown: 'not known',
      any: 'any',
      highRateOnly: 'high rate or resolution only',
      protectedOnly: 'protected only',
    },
    contentText: 'In their words',
    since: 'Since when?',
    sinceHint: 'As the client says it',
    worked: 'Did it work before?',
    yesNo: { yes: 'yes', no: 'never', notKnown: 'not known' },
    changedQ: 'What changed before it began?',
    changed: {
      cable: 'a cable',
      device: 'a device',
      firmware: 'firmware',
      setting: 'a setting',
      move: 'something was moved',
      buildingWork: 'building work',
      other: 'something else',
      nothing: 'nothing',
      notKnown: 'not known',
    },
    changedText: (kind) => `What exactly: ${kind}`,
    changedWhen: 'When',
    tried: 'What was tried already?',
    caller: 'Who is calling?',
    callerName: 'Name',
    callerPhone: 'Phone',
    callerRelation: 'Who they are to the place',
    callerIsContact: 'It is the site’s contact',
    notes: 'Anything else',
    more: 'More to ask: how often, on which devices, since when, who calls',
    open: 'Open the ticket',
    symptomMissing: 'Say what is seen: a ticket needs that one answer.',
    chainMissing: 'Choose a site and its chain first.',
    lastTickets: 'Last tickets here',
    noTickets: 'There was no ticket here yet.',
    sameChain: 'Already open at this chain',
    sameChainHint:
      'Is this call about one of them? Then go on there. If not, say so before you open another.',
    another: 'It is another fault',
    isAnother: 'Another fault, you said.',
    thatOne: 'It is that one',
  },
  de: {
    title: 'Anruf',
    who: 'Wer ist am Telefon?',
    whoHint: 'Wörter aus Name, Adresse, Telefonnummer, Seriennummer oder Kabel, in beliebiger Folge',
    searching: 'Sucht',
    nothingFound: 'Niemand dergleichen.',
    offline: 'Keine Verbindung: jetzt kann niemand nachgeschlagen werden.',
    found: (count) => `${count} gefunden`,
    newSite: (typed) =>
      typed === '' ? 'Ein Ort, der noch nicht bekannt ist' : `Noch nicht bekannt: „${typed}“ anlegen`,
    otherSite: 'Ein anderer Ort',
    whichChain: 'Welche Kette?',
    noChain: 'An diesem Ort ist noch keine Kette beschrieben. Ein Ticket braucht eine, auch eine grobe.',
    describeChain: 'Die Kette beschreiben',
    startOver: 'Von vorn beginnen',
    otherCalls: 'Begonnene Anrufe, noch ohne Ticket',
    goOnWith: (who) => `Mit ${who} weitermachen`,
    inOtherTab: (who) => `${who}: in einem anderen Tab`,
    kept: 'Bleibt auf diesem Gerät, bis das Ticket eröffnet ist.',
    questions: 'Frage',
    see: 'Was siehst du?',
    oftenQ: 'Wie oft?',
    per: { minute: 'in der Minute', hour: 'in der Stunde', day: 'am Tag', week: 'in der Woche' },
    longQ: 'Wie lange dauert es?',
    long: { s: 'Sekunden', min: 'Minuten', h: 'Stunden' },
    count: 'Anzahl',
    unit: 'Einheit',
    sources: 'Welche Quellen zeigen es?',
    displays: 'Auf welcher Anzeige?',
    contentQ: 'Bei welchem Inhalt?',
    content: {
      notKnown: 'nicht bekannt',
      any: 'bei jedem',
      highRateOnly: 'nur bei hoher Rate oder Auflösung',
      protectedOnly: 'nur bei geschütztem',
    },
    contentText: 'In ihren Worten',
    since: 'Seit wann?',
    sinceHint: 'Wie der Kunde es sagt',
    worked: 'Ging es vorher?',
    yesNo: { yes: 'ja', no: 'nie', notKnown: 'nicht bekannt' },
    changedQ: 'Was änderte sich, bevor es begann?',
    changed: {
      cable: 'ein Kabel',
      device: 'ein Gerät',
      firmware: 'Firmware',
      setting: 'eine Einstellung',
      move: 'etwas wurde umgestellt',
      buildingWork: 'Bauarbeiten',
      other: 'etwas anderes',
      nothing: 'nichts',
      notKnown: 'nicht bekannt',
    },
    changedText: (kind) => `Was genau: ${kind}`,
    changedWhen: 'Wann',
    tried: 'Was wurde schon versucht?',
    caller: 'Wer ruft an?',
    callerName: 'Name',
    callerPhone: 'Telefon',
    callerRelation: 'In welchem Verhältnis zum Ort',
    callerIsContact: 'Es ist der Kontakt des Ortes',
    notes: 'Sonst noch etwas',
    more: 'Mehr zu fragen: wie oft, an welchen Geräten, seit wann, wer anruft',
    open: 'Ticket eröffnen',
    symptomMissing: 'Sag, was zu sehen ist: diese eine Antwort braucht ein Ticket.',
    chainMissing: 'Wähle zuerst einen Ort und seine Kette.',
    lastTickets: 'Letzte Tickets hier',
    noTickets: 'Hier gab es noch kein Ticket.',
    sameChain: 'An dieser Kette schon offen',
    sameChainHint:
      'Geht es in diesem Anruf um eines davon? Dann mach dort weiter. Wenn nicht, sag das, bevor du noch eines eröffnest.',
    another: 'Es ist ein anderer Fehler',
    isAnother: 'Ein anderer Fehler, hast du gesagt.',
    thatOne: 'Es ist dieses',
  },
});
