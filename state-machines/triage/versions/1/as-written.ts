import { type Message, message } from '../../../../shared/message/message.ts';

/**
 * A sentence that version 1 made and stored, as today's record holds what the program says. Nothing is read out of it:
 * it is shown as it was written. The one place that says how.
 */
export const asWritten = (sentence: string): Message => message('asWritten', { sentence });
