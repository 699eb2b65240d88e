import { computed, signal } from '@preact/signals';
import { addresses } from '../../../shared/contract/addresses.ts';
import type { Member, Tokens } from '../../../shared/contract/people.ts';
import type { Problem } from '../../../shared/contract/problem.ts';
import { answerOf } from './answer.ts';
import { forgetSession, keepSession, keptSession } from './kept-session.ts';

/** Who is signed in on this device, also without a connection. */
export type Session = {
  readonly member: Member;
  readonly organisation: Tokens['organisation'];
};

/**
 * `restoring` until the device's own store was read. `lapsed`: the server takes the sign-in no more; what the member
 * has on this device stays until they sign in again.
 */
export type SessionState =
  | { readonly kind: 'restoring' }
  | { readonly kind: 'signedOut' }
  | { readonly kind: 'signedIn'; readonly session: Session }
  | { readonly kind: 'lapsed'; readonly session: Session };

export const sessionState = signal<SessionState>({ kind: 'restoring' });
export const session = computed<Session | null>(() =>
  'session' in sessionState.value ? sessionState.value.session : null,
);
/** Whether the server answered last time it was asked. */
export const reachable = signal(true);
export const reportReachable = (answered: boolean): void => {
  reachable.value = answered;
};

/** Kept in memory only: it is good for minutes, and whoever finds the device later finds none. */
let access: { token: string; goodUntil: number } | null = null;
/** Assumed: renewed this long before its end, so that no request meets the end under way. */
const marginMs = 20_000;

export async function restoreSession(): Promise<void> {
  const kept = await keptSession();
  sessionState.value =
    kept === null
      ? { kind: 'signedOut' }
      : { kind: 'signedIn', session: { member: kept.member, organisation: kept.organisation } };
}

async function take(tokens: Tokens): Promise<void> {
  const { member, organisation, refreshToken } = tokens;
  await keepSession({ member, organisation, refreshToken });
  access = { token: tokens.accessToken, goodUntil: Date.now() + tokens.expiresInS * 1000 - marginMs };
  const before = sessionState.peek();
  const same =
    before.kind === 'signedIn' && JSON.stringify(before.session) === JSON.stringify({ member, organisation });
  if (!same) sessionState.value = { kind: 'signedIn', session: { member, organisation } };
}

const post = (path: string, body: object): Promise<Response | null> =>
  fetch(path, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
    signal: AbortSignal.timeout(20_000),
  }).catch(() => null);

/**
 * One step of signing in: the password, or what is shown beside it.
 * @returns null when it worked, the problem when it was refused, `unreachable` without an answer
 */
export async function signIn(
  step: typeof addresses.signIn | typeof addresses.secondStep,
  shown: Readonly<Record<string, string>>,
): Promise<Problem | 'unreachable' | null> {
  const reply = await post(step, shown);
  reportReachable(reply !== null);
  if (reply === null) return 'unreachable';
  // To wait after too many wrong tries is an answer, not a connection that is gone.
  if (reply.status === 429) return reply.json().catch(() => 'unreachable');
  const answer = await answerOf<Tokens>(reply);
  if (answer.kind === 'refused') return answer.problem;
  if (answer.kind !== 'ok') return 'unreachable';
  await take(answer.body);
  return null;
}

/** Signs out on this device, and at the server where it can be reached. */
export async function signOut(): Promise<void> {
  const kept = await keptSession();
  access = null;
  await forgetSession();
  sessionState.value = { kind: 'signedOut' };
  announce.postMessage('signedOut');
  // Nobody waits for it: without a connection the sign-in ends by itself, and nothing on this device can use it.
  if (kept !== null) void post(addresses.signOut, { refreshToken: kept.refreshToken });
}

/** Another tab signed out: so does this one. */
const announce = new BroadcastChannel('halfsplit-session');
announce.onmessage = ({ data }) => {
  if (data !== 'signedOut') return;
  access = null;
  sessionState.value = { kind: 'signedOut' };
};

let renewing: Promise<string | null> | null = null;

/**
 * An access token that is good now; null without a connection or sign-in.
 * @param renew the one we had was refused
 */
export function accessToken(renew = false): Promise<string | null> {
  if (!renew && access !== null && access.goodUntil > Date.now()) return Promise.resolve(access.token);
  // Asking again with a token that was refused would only be refused again.
  if (sessionState.peek().kind !== 'signedIn') return Promise.resolve(null);
  renewing ??= renewAlone().finally(() => {
    renewing = null;
  });
  return renewing;
}

/**
 * A refresh token is good until the one that replaced it is used; after that its use ends the sign-in (RFC 9700, section
 * 4.14.2). So one tab at a time uses the newest one there is, and where no reply came, the same one again.
 */
const renewAlone = async (): Promise<string | null> =>
  navigator.locks.request('halfsplit-refresh', async () => {
    const kept = await keptSession();
    if (kept === null) return null;
    const reply = await post(addresses.refresh, { refreshToken: kept.refreshToken });
    reportReachable(reply !== null);
    if (reply === null) return null;
    const answer = await answerOf<Tokens>(reply);
    if (answer.kind === 'ok') {
      await take(answer.body);
      return answer.body.accessToken;
    }
    // Too many at once, or a server that is busy, say nothing of the sign-in: it is asked again later.
    if (answer.kind === 'refused' && answer.problem.status === 401) {
      access = null;
      sessionState.value = {
        kind: 'lapsed',
        session: { member: kept.member, organisation: kept.organisation },
      };
    }
    return null;
  });
