import { plural, wordsOf } from '../../words/language.ts';

/** Words of taking photos and of what is on its way. */
export const captureWords = wordsOf({
  en: {
    kept: (kept: number, of: number) =>
      kept < of
        ? `Keeping ${kept + 1} of ${of} …`
        : plural('en', kept, '✓ 1 kept on this phone', `✓ ${kept} kept on this phone`),
    notKept: 'This phone could not keep the photo.',
    notKeptHelp: 'Its memory may be full. Make room or let the outbox be sent, then take it again.',
    onTheWay: (count: number) => plural('en', count, '1 file on its way', `${count} files on their way`),
    states: { waiting: 'waits', sending: 'is being sent', refused: 'refused', conflict: 'needs you' },
    ofBytes: (sent: string, all: string) => `${sent} of ${all}`,
    views: { sourceEnd: 'its source end', sinkEnd: 'its sink end', label: 'its printed label' },
    photoHere: 'Take a photo',
    photoOf: (what: string, where: string) => `Photo of ${what}, ${where}`,
  },
  de: {
    kept: (kept, of) =>
      kept < of
        ? `${kept + 1} von ${of} wird behalten …`
        : plural('de', kept, '✓ 1 auf diesem Telefon', `✓ ${kept} auf diesem Telefon`),
    notKept: 'Dieses Telefon konnte das Foto nicht behalten.',
    notKeptHelp:
      'Vielleicht ist sein Speicher voll. Schaff Platz oder lass den Ausgang senden, dann nimm es noch einmal auf.',
    onTheWay: (count) => plural('de', count, '1 Datei unterwegs', `${count} Dateien unterwegs`),
    states: { waiting: 'wartet', sending: 'wird gesendet', refused: 'abgelehnt', conflict: 'braucht dich' },
    ofBytes: (sent, all) => `${sent} von ${all}`,
    views: { sourceEnd: 'Quellenseite', sinkEnd: 'Anzeigenseite', label: 'Aufdruck' },
    photoHere: 'Foto aufnehmen',
    photoOf: (what, where) => `Foto: ${what}, ${where}`,
  },
});
