import type { Message } from '../contract/message.ts';
import { message } from './message.ts';

/** A message as it is; a sentence that an earlier version stored, as it was written. */
export const storedMessage = (stored: string | Message): Message =>
  typeof stored === 'string' ? message('asWritten', { sentence: stored }) : stored;
