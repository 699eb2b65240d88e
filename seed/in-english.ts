import { english } from '../shared/message/en/index.ts';
import { type Message, messageText } from '../shared/message/index.ts';

/** A message as the story tells it. */
export const inEnglish = (message: Message): string => messageText(message, english, 'UTC');
