import { plural, wordsOf } from '../words/language.ts';

/** Words of the page of one device or cable. */
export const placeScreenWords = wordsOf({
  en: {
    title: 'Device or cable',
    toVisit: '← The visit',
    noSuchPlace: 'The chain has no such device or cable any more.',
    correct: 'Correct the description',
    photos: 'Photos',
    photographed: (count: number) => plural('en', count, '✓ 1 photo', `✓ ${count} photos`),
    noPhoto: 'no photo yet',
    wanted: 'still wanted',
    device: 'The device',
    fromGallery: 'From this phone’s pictures',
    files: 'Attach a log, an EDID, a document',
    findings: (count: number) => (count === 0 ? 'Audit' : `Audit: ${count}`),
    noFindings: 'The audit has nothing to say here.',
    signal: 'What the signal can do here',
  },
  de: {
    title: 'Gerät oder Kabel',
    toVisit: '← Der Einsatz',
    noSuchPlace: 'Dieses Gerät oder Kabel hat die Kette nicht mehr.',
    correct: 'Beschreibung berichtigen',
    photos: 'Fotos',
    photographed: (count) => plural('de', count, '✓ 1 Foto', `✓ ${count} Fotos`),
    noPhoto: 'noch kein Foto',
    wanted: 'fehlt noch',
    device: 'Das Gerät',
    fromGallery: 'Aus den Bildern des Telefons',
    files: 'Protokoll, EDID oder Dokument anhängen',
    findings: (count) => (count === 0 ? 'Prüfung' : `Prüfung: ${count}`),
    noFindings: 'Hier hat die Prüfung nichts zu sagen.',
    signal: 'Was das Signal hier kann',
  },
});
