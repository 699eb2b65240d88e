import type { CodeTable } from '../values.ts';

/** Why the server does not take a file or a reading, or has none to give. */
export const fileCodes = {
  noSuchEvidence: {},
  noSuchUpload: {},
  noThumbnail: {},
  readingWithoutFile: {},
  fileDamaged: {},
  fileLost: {},
  fileMissing: {},
  fileEmpty: {},
  fileTooLarge: { kind: 'evidenceKind', limitMiB: 'count' },
  /** What is taken, as a sentence, and what the file is by its content: a media type. */
  fileTypeNotTaken: { taken: 'message', found: 'term' },
  fileUnrecognised: { taken: 'message' },
  photoTypes: {},
  logTypes: {},
  edidTypes: {},
  settingsTypes: {},
  documentTypes: {},
  photoFormatRare: {},
  photoTooLarge: { widthPx: 'count', heightPx: 'count' },
  photoDamaged: {},
  textWithoutEdid: {},
  aboutFileDoesNotFit: {},
  uploadWithoutTicket: {},
  /** The words of the upload protocol's own library. */
  uploadRefused: { reason: 'text' },
  fileLostFromDevice: {},
  logEndsBeforeItBegins: {},
  readingNeedsDevice: { kind: 'evidenceKind' },
  settingsNeedChange: {},
  portNeedsDevice: {},
} as const satisfies CodeTable;
