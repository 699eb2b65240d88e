import { plural, wordsOf } from '../words/language.ts';

/** Words of a ticket's evidence. */
export const evidenceWords = wordsOf({
  en: {
    title: 'Evidence',
    toVisit: '← The visit',
    photo: 'Take a photo',
    fromGallery: 'From this phone’s pictures',
    attach: 'Attach a log, an EDID, a document',
    all: (count: number) => plural('en', count, '1 item at the server', `${count} items at the server`),
    none: 'Nothing has been collected yet.',
    phases: { before: 'Before the change: ', after: 'After the change: ', apart: '' },
    readingsWaiting: (count: number) =>
      plural('en', count, '1 reading on its way', `${count} readings on their way`),
    showLarge: (name: string) => `Show ${name} large`,
    onlySmall: 'In small only, until it comes from the server.',
    withdraw: 'Withdraw',
    withdrawn: 'withdrawn',
    reason: 'Why does it not count? (in a few words)',
    reasonTooShort: 'Say it in at least three letters.',
    withdrawNeedsConnection:
      'Withdrawing needs a connection. Where there is none, write a note and withdraw it later.',
  },
  de: {
    title: 'Belege',
    toVisit: '← Der Einsatz',
    photo: 'Foto machen',
    fromGallery: 'Aus den Bildern des Telefons',
    attach: 'Protokoll, EDID oder Dokument anhängen',
    all: (count) => plural('de', count, '1 Beleg beim Server', `${count} Belege beim Server`),
    none: 'Noch wurde nichts gesammelt.',
    phases: { before: 'Vor der Änderung: ', after: 'Nach der Änderung: ', apart: '' },
    readingsWaiting: (count) => plural('de', count, '1 Lesung unterwegs', `${count} Lesungen unterwegs`),
    showLarge: (name) => `${name} groß zeigen`,
    onlySmall: 'Nur klein, bis es vom Server kommt.',
    withdraw: 'Zurücknehmen',
    withdrawn: 'zurückgenommen',
    reason: 'Warum zählt es nicht? (in wenigen Worten)',
    reasonTooShort: 'Mindestens drei Buchstaben.',
    withdrawNeedsConnection:
      'Zurücknehmen braucht eine Verbindung. Ohne sie schreib eine Notiz und nimm es später zurück.',
  },
});
