import { type Message, message } from './message.ts';

/** A text of shared code that is not said as a message yet, as it is. */
export const asMessage = (text: string | Message): Message =>
  typeof text === 'string' ? message('asWritten', { sentence: text }) : text;
