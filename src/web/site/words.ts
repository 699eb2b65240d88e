import { wordsOf } from '../words/language.ts';

/** Words of a client's place: how to get there, whom to ask for, what to take care of. */
export const siteWords = wordsOf({
  en: {
    address: 'Address',
    contact: 'On site',
    hours: 'Best reached',
    access: 'Access',
    travel: 'Way there',
    wayMin: (length: string) => `${length} from us, one way`,
    map: 'Map',
    copyAddress: 'Copy address',
    copied: 'Copied.',
    call: (name: string) => `Call ${name}`,
    hazards: 'Hazards here',
    caution:
      'Take care. Local codes come first; mains, fire stops and work inside walls are for licensed trades.',
  },
  de: {
    address: 'Adresse',
    contact: 'Vor Ort',
    hours: 'Gut erreichbar',
    access: 'Zugang',
    travel: 'Anfahrt',
    wayMin: (length) => `${length} von uns, einfach`,
    map: 'Karte',
    copyAddress: 'Adresse kopieren',
    copied: 'Kopiert.',
    call: (name) => `${name} anrufen`,
    hazards: 'Gefahren hier',
    caution:
      'Vorsicht. Örtliche Vorschriften gehen vor; Netzspannung, Brandschotts und Arbeiten in Wänden sind Sache zugelassener Betriebe.',
  },
});
