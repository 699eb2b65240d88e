import type { fileCodes } from '../codes/files.ts';
import type { Sentences } from '../sentences.ts';

export const filesDe: Sentences<typeof fileCodes> = {
  noSuchEvidence: () => 'Diesen Beleg gibt es nicht.',
  noSuchUpload: () => 'Diese Übertragung gibt es nicht.',
  noThumbnail: () => 'Dieser Beleg hat kein kleines Bild.',
  readingWithoutFile: () => 'Dieser Beleg ist eine Lesung und hat keine Datei.',
  fileDamaged: () =>
    'Die Bytes dieser Datei haben sich geändert, seit sie aufbewahrt wurde. Dieselbe Datei noch einmal zu senden heilt sie.',
  fileLost: () => 'Diese Datei liegt nicht mehr im Speicher. Dieselbe Datei noch einmal zu senden heilt sie.',
  fileMissing: () => 'Schick die Datei als Teil `file`.',
  fileEmpty: () => 'Die Datei ist leer.',
  fileTooLarge: ({ kind, limitMiB }, say) =>
    `Dafür sind höchstens ${limitMiB} MiB erlaubt: ${say.term('evidenceKind', kind)}.`,
  fileTypeNotTaken: ({ taken, found }, say) =>
    `${say.message(taken)} Ihrem Inhalt nach ist diese Datei ${found}.`,
  fileUnrecognised: ({ taken }, say) =>
    `${say.message(taken)} Ihrem Inhalt nach ist diese Datei nichts, was zu erkennen wäre.`,
  photoTypes: () => 'Ein Foto ist ein Bild als JPEG, PNG oder WebP.',
  logTypes: () => 'Ein Protokoll ist Text (UTF-8, UTF-16 oder 8 Bit) oder mit gzip gepackter Text.',
  edidTypes: () =>
    'Ein EDID sind seine Bytes in ganzen Blöcken zu 128 oder ein Text mit seinen Bytes hexadezimal.',
  settingsTypes: () => 'Einstellungen sind Text, JSON oder XML.',
  documentTypes: () => 'Ein Dokument ist PDF, Text, JPEG oder PNG.',
  photoFormatRare: () =>
    'Dieses Foto hat ein Format (HEIC, AVIF), das nicht alle öffnen können. Schick es als JPEG: Stell die Kamera auf ihr verträglichstes Format, oder gib das Foto als JPEG aus.',
  photoTooLarge: ({ widthPx, heightPx }) =>
    `Das Foto hat ${widthPx} × ${heightPx} Bildpunkte; schick es kleiner.`,
  photoDamaged: () => 'Das Foto ist beschädigt oder abgeschnitten und nicht lesbar. Schick es noch einmal.',
  textWithoutEdid: () => 'In diesem Text ist kein EDID: Schick seine Bytes hexadezimal.',
  aboutFileDoesNotFit: () => 'Die Angaben zur Datei passen nicht. Jede steht unten einzeln.',
  uploadWithoutTicket: () => 'Eine Übertragung sagt, für welches Ticket sie ist.',
  uploadRefused: ({ reason }, say) => `Die Übertragung wurde abgelehnt: ${say.text(reason)}`,
  fileLostFromDevice: () => 'Der Browser hat die Datei von diesem Gerät entfernt. Nimm sie noch einmal auf.',
  logEndsBeforeItBegins: () => 'Ein Protokoll endet nach seinem Beginn.',
  readingNeedsDevice: ({ kind }, say) =>
    `Zu dieser Lesung gehört ein Gerät: ${say.term('evidenceKind', kind)}.`,
  settingsNeedChange: () => 'Zu Einstellungen vor oder nach einer Änderung gehört, welche Änderung es ist.',
  portNeedsDevice: () => 'Zu einer Buchse gehört ihr Gerät.',
};
