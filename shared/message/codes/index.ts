import { logCheckCodes } from './log-check.ts';
import { writtenCodes } from './written.ts';

/** Every code with its values. A code that an event holds is never renamed or removed; see tests/message. */
export const codes = { ...logCheckCodes, ...writtenCodes };
