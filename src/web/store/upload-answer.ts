import type { Problem } from '../../../shared/contract/problem.ts';

/** What the server said of an upload, where that is a problem (RFC 9457); null where it is anything else. */
export function problemIn(body: string): Problem | null {
  try {
    const parsed = JSON.parse(body) as Partial<Problem> | null;
    return typeof parsed?.type === 'string' ? (parsed as Problem) : null;
  } catch {
    return null;
  }
}

/**
 * Whether an upload that failed goes on later by itself, or is refused and somebody has to be asked. A conflict is the
 * protocol's own (tus 1.0: the parts got out of step) unless a problem of the API names what is against it.
 * @param status of the reply; 0 where there was none
 */
export function answerTo(status: number, body: string): 'comesAgain' | 'refused' {
  if (status < 400 || status >= 500) return 'comesAgain';
  if (status === 409)
    return (problemIn(body)?.type ?? 'about:blank') === 'about:blank' ? 'comesAgain' : 'refused';
  return [401, 408, 423, 425, 429].includes(status) ? 'comesAgain' : 'refused';
}
