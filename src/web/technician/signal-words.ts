import { wordsOf } from '../words/language.ts';

/** Words around what is computed of a place. */
export const signalWords = wordsOf({
  en: {
    reading: 'Reading',
    notHere: 'This was not read on this phone yet.',
    budget: 'Link budget',
    noBudget: 'No link to budget here.',
    verdicts: {
      fits: 'fits',
      doubtful: 'doubtful',
      reduced: 'not all of it',
      notOffered: 'not offered',
      short: 'too little',
    },
    figures: (need: string, capacity: string) => `${need} of ${capacity} Gbit/s`,
    doubts: 'In doubt:',
    protection: 'Content protection',
    power: '5 V line',
    powerVerdicts: { enough: 'enough', risk: 'at risk', short: 'too little' },
    nothing: 'Nothing to say here.',
    noEdid: 'No EDID was read here.',
    fromRecord: 'from the description',
    fromEvidence: 'from evidence',
    sameEdid: {
      overTime: 'It has not changed between two readings.',
      passedOn: 'It is passed on unchanged.',
    },
    differs: { overTime: 'Changed between two readings:', passedOn: 'Passed on with differences:' },
  },
  de: {
    reading: 'Liest',
    notHere: 'Das wurde auf diesem Telefon noch nicht gelesen.',
    budget: 'Budget der Strecke',
    noBudget: 'Hier gibt es keine Strecke zu rechnen.',
    verdicts: {
      fits: 'passt',
      doubtful: 'zweifelhaft',
      reduced: 'nicht alles',
      notOffered: 'nicht angeboten',
      short: 'zu wenig',
    },
    figures: (need, capacity) => `${need} von ${capacity} Gbit/s`,
    doubts: 'Zweifel:',
    protection: 'Kopierschutz',
    power: '5-V-Leitung',
    powerVerdicts: { enough: 'reicht', risk: 'fraglich', short: 'zu wenig' },
    nothing: 'Hier gibt es nichts zu sagen.',
    noEdid: 'Hier wurde kein EDID gelesen.',
    fromRecord: 'aus der Beschreibung',
    fromEvidence: 'aus einem Beleg',
    sameEdid: {
      overTime: 'Zwischen zwei Lesungen hat es sich nicht geändert.',
      passedOn: 'Es wird unverändert weitergegeben.',
    },
    differs: { overTime: 'Zwischen zwei Lesungen geändert:', passedOn: 'Mit Unterschieden weitergegeben:' },
  },
});
