import { plural, wordsOf } from '../words/language.ts';

/** Words of attaching files. */
export const attachWords = wordsOf({
  en: {
    kind: 'What is it?',
    kinds: { log: 'Log', edid: 'EDID', settings: 'Settings file', document: 'Document' },
    device: 'From which device?',
    noDevice: 'none in particular',
    port: 'Read at which socket?',
    noPort: 'not known',
    clockLead:
      'If the device’s clock is wrong, say what it showed at a moment that you know. Then the log’s times can be put right.',
    logTime: 'The device’s clock showed',
    logTimeHint: 'Copied as it stands in a line of the log',
    dayOrder: 'Dates such as 03/04/2026',
    dayOrders: { told: 'as the log itself tells', dayFirst: 'day first', monthFirst: 'month first' },
    trueTime: 'When it really was',
    zoneHint: (zone: string) => `Time of the site (${zone})`,
    bothNeeded: 'Both times are needed, or neither.',
    description: 'What is it about?',
    choose: {
      log: 'Choose the log',
      edid: 'Choose the EDID',
      settings: 'Choose the file',
      document: 'Choose the document',
    },
    kept: (count: number) =>
      plural('en', count, '✓ 1 file kept on this phone', `✓ ${count} files kept on this phone`),
    notKept: 'This phone could not keep the file. Make room, then choose it again.',
  },
  de: {
    kind: 'Was ist es?',
    kinds: { log: 'Protokoll', edid: 'EDID', settings: 'Einstellungsdatei', document: 'Dokument' },
    device: 'Von welchem Gerät?',
    noDevice: 'von keinem bestimmten',
    port: 'An welcher Buchse gelesen?',
    noPort: 'nicht bekannt',
    clockLead:
      'Geht die Uhr des Geräts falsch, dann sag, was sie in einem Augenblick zeigte, den du kennst. So lassen sich die Zeiten berichtigen.',
    logTime: 'Die Uhr des Geräts zeigte',
    logTimeHint: 'So, wie es in einer Zeile des Protokolls steht',
    dayOrder: 'Datum wie 03/04/2026',
    dayOrders: { told: 'wie das Protokoll es selbst zeigt', dayFirst: 'Tag vorn', monthFirst: 'Monat vorn' },
    trueTime: 'als es wirklich war',
    zoneHint: (zone) => `Zeit vor Ort (${zone})`,
    bothNeeded: 'Es braucht beide Zeiten oder keine.',
    description: 'Worum geht es?',
    choose: {
      log: 'Protokoll wählen',
      edid: 'EDID wählen',
      settings: 'Datei wählen',
      document: 'Dokument wählen',
    },
    kept: (count) =>
      plural('de', count, '✓ 1 Datei auf diesem Telefon', `✓ ${count} Dateien auf diesem Telefon`),
    notKept: 'Dieses Telefon konnte die Datei nicht behalten. Schaff Platz, dann wähl sie noch einmal.',
  },
});
