import type { Message } from '../contract/message.ts';

/** The same for messages that say the same, whether they came with a text beside them or not. */
export const messageKey = ({ code, values }: Message): string => `${code} ${JSON.stringify(values)}`;

/** Each message once, in the order in which they came. */
export const distinctMessages = (messages: readonly Message[]): Message[] => [
  ...new Map(messages.map((one) => [messageKey(one), one])).values(),
];
