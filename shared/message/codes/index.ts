import { careCodes, changeCodes, needCodes } from './changes.ts';
import { fileCodes } from './files.ts';
import { kitCodes } from './kit.ts';
import { logCheckCodes } from './log-check.ts';
import { planCodes } from './plan.ts';
import { problemTitleCodes } from './problem-titles.ts';
import { recordCodes } from './records.ts';
import { requestCodes } from './requests.ts';
import { stepCodes } from './steps.ts';
import { suspectCodes } from './suspects.ts';
import { writtenCodes } from './written.ts';

/** Every code with its values. A code that an event holds is never renamed or removed; see tests/message. */
export const codes = {
  ...logCheckCodes,
  ...writtenCodes,
  ...requestCodes,
  ...recordCodes,
  ...fileCodes,
  ...problemTitleCodes,
  ...changeCodes,
  ...careCodes,
  ...needCodes,
  ...kitCodes,
  ...planCodes,
  ...stepCodes,
  ...suspectCodes,
};
