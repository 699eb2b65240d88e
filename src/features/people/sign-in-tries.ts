import { createHmac } from 'node:crypto';
import { isIPv6 } from 'node:net';
import type { Services } from '../../services.ts';
import type { Credentials } from './account.read.ts';

/** Who counts as one: how many wrong tries cost nothing, and the first wait after them, doubled by each further one. */
type Allowance = { readonly free: number; readonly firstWaitS: number };

/** Assumed. Of one address on one account; of one address on all, where a whole office may stand behind one. */
const onOneAccount: Allowance = { free: 5, firstWaitS: 15 };
const onAll: Allowance = { free: 100, firstWaitS: 15 };
/** Assumed: the longest wait, in seconds, and after how long without a try an address begins anew. */
const longestWaitS = 900;
const forgottenAfterS = 86_400;

/** Digests under which the tries of an address are counted; keyed, so that they tell nobody who tried what. */
type TryKeys = { readonly address: string; readonly account: string };
export type Claimed =
  | { readonly mayTry: true; readonly keys: TryKeys }
  | { readonly mayTry: false; readonly waitS: number };

/**
 * Counts a try to sign in before its password is looked at, so that many at once are counted as many. Whoever was wrong
 * too often from an address waits there; the account stays open to everybody else, and nothing shows whether it exists.
 */
export async function claimTry(
  services: Services,
  address: string,
  credentials: Credentials,
): Promise<Claimed> {
  const keys = keysOf(services, address, credentials);
  const allowances: [string, Allowance][] = [
    [keys.address, onAll],
    [keys.account, onOneAccount],
  ];
  return services.database.lookUp(async (tx) => {
    for (const [key, { free, firstWaitS }] of allowances) {
      const now = services.now();
      const fresh = new Date(now.getTime() - forgottenAfterS * 1000);
      const counted = await tx.$queryRaw<unknown[]>`
        insert into sign_in_try as try (key, wrong, free_at, seen_at) values (${key}, 1, '-infinity', ${now}::timestamptz)
        on conflict (key) do update set
          seen_at = excluded.seen_at,
          wrong = case when try.seen_at < ${fresh}::timestamptz then 1 else try.wrong + 1 end,
          free_at = case when try.seen_at < ${fresh}::timestamptz or try.wrong + 1 < ${free} then '-infinity'
            else excluded.seen_at + least(${longestWaitS}, ${firstWaitS} * 2.0 ^ least(30, try.wrong + 1 - ${free}))
              * interval '1 second' end
        where try.free_at <= excluded.seen_at
        returning 1`;
      if (counted.length > 0) continue;
      const { freeAt } = await tx.signInTry.findUniqueOrThrow({ where: { key }, select: { freeAt: true } });
      return { mayTry: false, waitS: Math.max(1, Math.ceil((freeAt.getTime() - now.getTime()) / 1000)) };
    }
    return { mayTry: true, keys };
  });
}

/** Takes back what was counted before the password turned out right, and forgets who hasn't tried for long. */
export async function forgetTries(services: Services, { address, account }: TryKeys): Promise<void> {
  const before = new Date(services.now().getTime() - forgottenAfterS * 1000);
  await services.database.lookUp(async (tx) => {
    await tx.$executeRaw`update sign_in_try set wrong = greatest(0, wrong - 1) where key = ${address}`;
    await tx.$executeRaw`delete from sign_in_try where key = ${account} or seen_at < ${before}::timestamptz`;
  });
}

function keysOf({ config }: Services, address: string, { organisation, email }: Credentials): TryKeys {
  const digestOf = (...parts: string[]) =>
    createHmac('sha256', config.tokenSecrets[0])
      .update(JSON.stringify(['sign-in try', ...parts]))
      .digest('hex');
  const from = networkOf(address);
  return {
    address: digestOf(from),
    account: digestOf(from, organisation.trim().toLowerCase(), email.trim().toLowerCase()),
  };
}

/** What one subscriber is given: an IPv4 address, or the first 64 bits of an IPv6 one (RFC 6177, section 2, from memory). */
function networkOf(address: string): string {
  if (!isIPv6(address)) return address;
  const mapped = /^::ffff:(\d+\.\d+\.\d+\.\d+)$/i.exec(address)?.[1];
  if (mapped !== undefined) return mapped;
  const [before = '', after] = address.split('%', 1)[0]?.split('::') ?? [];
  const groups = (text: string | undefined) => (text ? text.split(':') : []);
  const head = groups(before);
  const middle =
    after === undefined ? [] : Array(Math.max(0, 8 - head.length - groups(after).length)).fill('0');
  return [...head, ...middle, ...groups(after)]
    .slice(0, 4)
    .map((group) => Number.parseInt(group, 16).toString(16))
    .join(':');
}
