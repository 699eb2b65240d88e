import { plural, wordsOf } from '../words/language.ts';

/** Words of the technician's screens. */
export const technicianWords = wordsOf({
  en: {
    visits: 'My visits',
    open: (count: number) => plural('en', count, '1 open ticket', `${count} open tickets`),
    none: 'Nothing is assigned to you.',
    noVisit: 'No visit planned',
    ticket: (number: number) => `Ticket no. ${number}`,
    access: 'Access',
    travel: 'Way there',
    address: 'Address',
    caution:
      'Take care. Local codes come first; mains, fire stops and work inside walls are for licensed trades.',
    waiting: (count: number) =>
      plural('en', count, '1 step is still to be sent', `${count} steps are still to be sent`),
    note: 'Note',
    writeNote: 'Write it down',
    chain: 'The chain',
    next: 'Possible now',
  },
  de: {
    visits: 'Meine Einsätze',
    open: (count) => plural('de', count, '1 offenes Ticket', `${count} offene Tickets`),
    none: 'Dir ist nichts zugewiesen.',
    noVisit: 'Kein Termin',
    ticket: (number) => `Ticket Nr. ${number}`,
    access: 'Zugang',
    travel: 'Anfahrt',
    address: 'Adresse',
    caution:
      'Vorsicht. Örtliche Vorschriften gehen vor; Netzspannung, Brandschotts und Arbeiten in Wänden sind Sache zugelassener Betriebe.',
    waiting: (count) =>
      plural('de', count, '1 Schritt ist noch zu senden', `${count} Schritte sind noch zu senden`),
    note: 'Notiz',
    writeNote: 'Aufschreiben',
    chain: 'Die Kette',
    next: 'Jetzt möglich',
  },
});
