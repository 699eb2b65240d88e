import type { fileCodes } from '../codes/files.ts';
import type { Sentences } from '../sentences.ts';

export const filesEn: Sentences<typeof fileCodes> = {
  noSuchEvidence: () => 'There is no such evidence.',
  noSuchUpload: () => 'There is no such upload.',
  noThumbnail: () => 'This item has no thumbnail.',
  readingWithoutFile: () => 'This item is a reading and has no file.',
  fileDamaged: () =>
    'The bytes of this file have changed since it was kept. Sending the same file once more heals it.',
  fileLost: () => 'This file is not in the store any more. Sending the same file once more heals it.',
  fileMissing: () => 'Send the file as the part `file`.',
  fileEmpty: () => 'The file is empty.',
  fileTooLarge: ({ kind, limitMiB }, say) =>
    `The largest ${say.term('evidenceKind', kind)} taken is ${limitMiB} MiB.`,
  fileTypeNotTaken: ({ taken, found }, say) => `${say.message(taken)} By its content this file is ${found}.`,
  fileUnrecognised: ({ taken }, say) =>
    `${say.message(taken)} By its content this file is nothing that can be recognised.`,
  photoTypes: () => 'A photo is a JPEG, PNG or WebP image.',
  logTypes: () => 'A log is text (UTF-8, UTF-16 or 8-bit) or text packed with gzip.',
  edidTypes: () => 'An EDID is its bytes in whole blocks of 128, or text with its bytes in hexadecimal.',
  settingsTypes: () => 'Settings are text, JSON or XML.',
  documentTypes: () => 'A document is a PDF, text, JPEG or PNG.',
  photoFormatRare: () =>
    'This photo is in a format (HEIC, AVIF) that not everybody can open. Send it as JPEG: set the camera to its most compatible format, or export the photo as JPEG.',
  photoTooLarge: ({ widthPx, heightPx }) => `The photo has ${widthPx} × ${heightPx} pixels; send it smaller.`,
  photoDamaged: () => 'The photo is damaged or cut short and cannot be read. Send it again.',
  textWithoutEdid: () => 'There is no EDID in this text: send its bytes in hexadecimal.',
  aboutFileDoesNotFit: () => 'What goes with the file does not fit. Each field is listed under errors.',
  uploadWithoutTicket: () => 'An upload says for which ticket it is.',
  uploadRefused: ({ reason }, say) => `The upload was refused: ${say.text(reason)}`,
  fileLostFromDevice: () => 'The browser has removed the file from this device. Take it again.',
  logEndsBeforeItBegins: () => 'A log ends after it begins.',
  readingNeedsDevice: ({ kind }, say) =>
    `A reading of ${say.term('evidenceKind', kind)} says of which device.`,
  settingsNeedChange: () => 'Settings read before or after a change say of which change.',
  portNeedsDevice: () => 'A port is named with its device.',
};
