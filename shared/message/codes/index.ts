import { fileCodes } from './files.ts';
import { logCheckCodes } from './log-check.ts';
import { problemTitleCodes } from './problem-titles.ts';
import { recordCodes } from './records.ts';
import { requestCodes } from './requests.ts';
import { writtenCodes } from './written.ts';

/** Every code with its values. A code that an event holds is never renamed or removed; see tests/message. */
export const codes = {
  ...logCheckCodes,
  ...writtenCodes,
  ...requestCodes,
  ...recordCodes,
  ...fileCodes,
  ...problemTitleCodes,
};
