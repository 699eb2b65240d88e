import type { Message } from '../contract/message.ts';
import { message } from './message.ts';

/** A message that is stored; where an earlier version stored its sentence, that sentence as it was written. */
export const storedMessage = (stored: string | Message): Message =>
  typeof stored === 'string' ? message('asWritten', { sentence: stored }) : stored;
