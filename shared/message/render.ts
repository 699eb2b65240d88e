import type { Message } from '../contract/message.ts';
import { type Part, partsOf, plainText } from './marks.ts';
import type { Say } from './say.ts';
import type { PartOfLanguage } from './sentences.ts';

type Sentence = (values: Message['values'], say: Say) => string;

/** The rendered sentence, marks inside; a code this version does not know is said to be just that. */
export function rendered({ code, values }: Message, language: PartOfLanguage, zone: string): string {
  const sentences = language.sentences as unknown as Record<string, Sentence | undefined>;
  const known = Object.hasOwn(sentences, code) ? sentences[code] : undefined;
  return (known ?? (sentences.unknownMessage as Sentence))(values, language.say(zone));
}

/**
 * A message as a sentence in parts, for a screen.
 *
 * @param zone IANA time zone that moments are told in
 */
export const messageParts = (message: Message, language: PartOfLanguage, zone: string): Part[] =>
  partsOf(rendered(message, language, zone));

/** A message as plain text; what a person wrote stands in the language's quotes. */
export const messageText = (message: Message, language: PartOfLanguage, zone: string): string =>
  plainText(rendered(message, language, zone), language.quotes);
