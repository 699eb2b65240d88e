import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import type { z } from 'zod';
import type { LanguageTag } from '../../shared/contract/language-names.ts';
import { german } from '../../shared/message/de/index.ts';
import { english } from '../../shared/message/en/index.ts';
import { type Language, type Message, messageText } from '../../shared/message/index.ts';

/** What replies can be in; the first where nobody asks. */
export const languages: readonly Language[] = [english, german];

/** Moments are told in UTC, and say so: a reply does not know where it is read. */
export const zone = 'UTC';

/** The same body with its sentence beside every message. A ticket's `triage` is the record as it is, without text. */
export function withSentences(body: unknown, language: Language): unknown {
  if (Array.isArray(body)) return body.map((one) => withSentences(one, language));
  if (body === null || typeof body !== 'object' || Object.getPrototypeOf(body) !== Object.prototype)
    return body;
  if (isMessage(body)) return { ...body, text: messageText(body, language, zone) };
  return Object.fromEntries(
    Object.entries(body).map(([key, value]) => [
      key,
      key === 'triage' ? value : withSentences(value, language),
    ]),
  );
}

const isMessage = (body: object): body is Message =>
  'code' in body &&
  typeof body.code === 'string' &&
  'values' in body &&
  typeof body.values === 'object' &&
  body.values !== null &&
  Object.hasOwn(english.sentences, body.code);

/** A strong entity tag (RFC 9110, section 8.8.3) of a reply's body: the start of the SHA-256 of its RFC 8785 form. */
export function etagOf(body: unknown): string {
  const digest = createHash('sha256')
    .update(canonicalize(body) ?? '')
    .digest('base64url');
  return `"${digest.slice(0, 27)}"`;
}

/** A body as it leaves, and the ETag of what it says in whatever language. */
export type SpokenReply = { readonly text: string; readonly etag: string };

/**
 * A body as JSON with its sentences, by the form that its route describes: what a reply goes through on its way out, for
 * what is too large to go through it on the event loop.
 * @throws where the body is not of that form
 */
export function spokenReply<Body>(form: z.ZodType<Body>, body: Body, tag: LanguageTag): SpokenReply {
  const language = languages.find((one) => one.tag === tag) ?? english;
  return { text: JSON.stringify(form.encode(withSentences(body, language) as Body)), etag: etagOf(body) };
}
