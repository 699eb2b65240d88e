import type { Problem } from '../../../shared/contract/problem.ts';

/** What came of a request. */
export type Answer<Body> =
  | {
      readonly kind: 'ok';
      readonly status: number;
      readonly body: Body;
      readonly etag: string | null;
      readonly replayed: boolean;
    }
  /** The caller has it already (304). */
  | { readonly kind: 'unchanged' }
  /** The server said no, and why (RFC 9457). */
  | { readonly kind: 'refused'; readonly problem: Problem }
  /** No answer, or one that says "later": to be tried again, with the same Idempotency-Key. */
  | { readonly kind: 'unreachable'; readonly retryAfterS: number | null };

/** Statuses that say nothing of the request itself: the same one may be accepted later. */
const later: ReadonlySet<number> = new Set([408, 425, 429, 500, 502, 503, 504]);

/** Reads a reply of the API. A reply that is no problem document and no success counts as no answer: it is not ours. */
export async function answerOf<Body>(reply: Response): Promise<Answer<Body>> {
  if (reply.status === 304) return { kind: 'unchanged' };
  if (later.has(reply.status)) {
    const retryAfterS = Number(reply.headers.get('retry-after'));
    return { kind: 'unreachable', retryAfterS: retryAfterS > 0 ? retryAfterS : null };
  }
  const type = reply.headers.get('content-type') ?? '';
  try {
    if (reply.ok) {
      const text = await reply.text();
      return {
        kind: 'ok',
        status: reply.status,
        body: (text === '' ? null : JSON.parse(text)) as Body,
        etag: reply.headers.get('etag'),
        replayed: reply.headers.get('idempotency-replayed') === 'true',
      };
    }
    if (type.includes('problem+json')) return { kind: 'refused', problem: (await reply.json()) as Problem };
  } catch {
    // cut off in the middle: below
  }
  return { kind: 'unreachable', retryAfterS: null };
}
