import { logEventKinds } from '../contract/log-findings.ts';
import { type Message, message } from '../message/index.ts';

type OwnKind = (typeof logEventKinds)[number];
const isOurs = (kind: string): kind is OwnKind => (logEventKinds as readonly string[]).includes(kind);

/** A kind of event as a person reads it; one of an organisation's own rows is called what they called it. */
export const kindWords = (kind: string): Message =>
  isOurs(kind) ? message('logEventKind', { kind }) : message('ownLogEventKind', { kind });
