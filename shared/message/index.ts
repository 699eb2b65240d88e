export type { Message } from '../contract/message.ts';
export type { Part } from './marks.ts';
export { type Code, message } from './message.ts';
export { messageParts, messageText } from './render.ts';
export { distinctMessages, messageKey } from './same.ts';
export type { Language, Sentences } from './sentences.ts';
export { storedMessage } from './stored.ts';
export type { MessageTerms, TermList } from './terms.ts';
export type { CodeTable, Kinds, NamedDevice, NamedLink, NamedPlace, NamedPort, ValuesOf } from './values.ts';
