import { kindOfType } from '../../../shared/contract/problem-type.ts';
import { type Answer, answerOf } from './answer.ts';
import type { DocumentPath } from './paths.ts';
import { accessToken, reportReachable } from './session.ts';

type Write = {
  body?: unknown;
  /** The same key gives the same reply; give it again when a write is repeated. */
  key?: string;
  ifMatch?: string;
};
const patienceMs = 30_000;

/** A request with the member's token; a token that has run out is renewed once. Never throws. */
export async function send(path: string, init: RequestInit = {}): Promise<Response | null> {
  for (const renewed of [false, true]) {
    const token = await accessToken(renewed);
    if (token === null) return null;
    const headers = new Headers(init.headers);
    headers.set('authorization', `Bearer ${token}`);
    const reply = await fetch(path, { ...init, headers, cache: 'no-store' }).catch(() => null);
    reportReachable(reply !== null);
    if (reply?.status !== 401 || renewed) return reply;
  }
  return null;
}

async function ask<Body>(path: string, init: RequestInit): Promise<Answer<Body>> {
  const reply = await send(path, { ...init, signal: AbortSignal.timeout(patienceMs) });
  if (reply === null) return { kind: 'unreachable', retryAfterS: null };
  const answer = await answerOf<Body>(reply);
  // Signing in again makes it good: what waits keeps waiting.
  if (answer.kind === 'refused' && kindOfType(answer.problem.type) === 'sign-in-needed')
    return { kind: 'unreachable', retryAfterS: null };
  return answer;
}

/** Reads a document; `unchanged` where `etag` is still its tag. */
export const read = <Body>(path: DocumentPath<Body>, etag: string | null = null): Promise<Answer<Body>> =>
  ask(path, { headers: etag === null ? {} : { 'if-none-match': etag } });

/**
 * Writes now, which needs a connection; what has to work without one goes through the outbox (store/outbox.ts).
 * `invented` keys are new ones: a caller that repeats a write passes the key of the first try.
 */
export const write = <Body>(
  method: 'POST' | 'PUT' | 'DELETE',
  path: string,
  { body, key = crypto.randomUUID(), ifMatch }: Write = {},
): Promise<Answer<Body>> =>
  ask(path, {
    method,
    headers: {
      'idempotency-key': key,
      // A packet that this step makes is in the language of the screens.
      'accept-language': document.documentElement.lang,
      ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      ...(ifMatch === undefined ? {} : { 'if-match': ifMatch }),
    },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });

/** A file that only a signed-in member may have (thumbnails, packets), as a blob; null when it can't be had. */
export async function readFile(path: string): Promise<Blob | null> {
  const reply = await send(path);
  if (reply === null || !reply.ok) return null;
  return reply.blob().catch(() => null);
}
