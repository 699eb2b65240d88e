import { createHmac } from 'node:crypto';
import { isIPv6 } from 'node:net';
import type { Services } from '../../services.ts';
import type { Credentials } from './account.read.ts';

/** How many wrong tries cost nothing, and the first wait after them, doubled by each further one up to the longest. */
type Allowance = { readonly free: number; readonly firstWaitS: number; readonly longestWaitS: number };

/** Assumed. Of one address on one account; of one address on all, where a whole office may stand behind one. */
const onOneAccount: Allowance = { free: 5, firstWaitS: 15, longestWaitS: 900 };
const onAll: Allowance = { free: 100, firstWaitS: 15, longestWaitS: 900 };
/**
 * Assumed. Of everybody who has shown that they know a member's password, or holds their session. An hour, since of a
 * million codes three are right at a time: whoever keeps on for a year has a chance of 2.6 %. Recovery codes, of which
 * nobody guesses one, are taken meanwhile.
 */
const onOneMember: Allowance = { free: 10, firstWaitS: 15, longestWaitS: 3600 };
/** Assumed: after how long without a try somebody begins anew, in seconds. */
const forgottenAfterS = 86_400;

/** Whose tries are counted together: under a keyed digest, so that it tells nobody who tried what. */
type Counted = Allowance & { readonly key: string; readonly whenRight: 'forget' | 'one less' };
export type Tries = readonly Counted[];
export type Claimed = { readonly mayTry: true } | { readonly mayTry: false; readonly waitS: number };

/** A try to sign in: the address's on any account, and on this one; nothing shows whether that exists. */
export function signInTries(
  services: Services,
  address: string,
  { organisation, email }: Credentials,
): readonly [Counted, Counted] {
  const from = networkOf(address);
  const account = digestOf(services, from, organisation.trim().toLowerCase(), email.trim().toLowerCase());
  return [
    { ...onAll, key: digestOf(services, from), whenRight: 'one less' },
    { ...onOneAccount, key: account, whenRight: 'forget' },
  ];
}

/** A try by somebody who got as far as a member of this id: at their second factor, or at their password once more. */
export const memberTries = (
  services: Services,
  what: 'second factor' | 'own password',
  { orgId, memberId }: { readonly orgId: string; readonly memberId: string },
): Tries => [{ ...onOneMember, key: digestOf(services, what, orgId, memberId), whenRight: 'forget' }];

/**
 * Counts a try before it is looked at, so that many at once are counted as many. Whoever was wrong too often from an
 * address waits there; the account stays open to everybody else.
 */
export async function claimTry(services: Services, tries: Tries): Promise<Claimed> {
  return services.database.lookUp(async (tx) => {
    for (const { key, free, firstWaitS, longestWaitS } of tries) {
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
    return { mayTry: true };
  });
}

/** Takes back what was counted before a try turned out right, and forgets who hasn't tried for long. */
export async function forgetTries(services: Services, tries: Tries): Promise<void> {
  const before = new Date(services.now().getTime() - forgottenAfterS * 1000);
  const keysTo = (whenRight: Counted['whenRight']): string[] =>
    tries.filter((one) => one.whenRight === whenRight).map(({ key }) => key);
  await services.database.lookUp(async (tx) => {
    await tx.$executeRaw`
      update sign_in_try set wrong = greatest(0, wrong - 1) where key = any(${keysTo('one less')})`;
    await tx.$executeRaw`
      delete from sign_in_try where key = any(${keysTo('forget')}) or seen_at < ${before}::timestamptz`;
  });
}

const digestOf = ({ config }: Services, ...parts: string[]): string =>
  createHmac('sha256', config.tokenSecrets[0])
    .update(JSON.stringify(['sign-in try', ...parts]))
    .digest('hex');

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
