import type { Tokens } from '../../../shared/contract/people.ts';
import { message } from '../../../shared/message/index.ts';
import type { TenantTransaction } from '../../database/index.ts';
import { type AccessClaims, type Refused, refused } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { accountOf, type Credentials, findAccount } from './account.read.ts';
import { passwordFits } from './passwords.ts';
import { issueToken, readToken, spendToken, type TokenFamily } from './refresh-tokens.ts';
import { endSessions, startSession } from './sessions.ts';
import { claimTry, forgetTries } from './sign-in-tries.ts';

const signInRefused = refused('sign-in-refused', message('signInWrong'));
const refreshRefused = refused('refresh-refused', message('signInAgain'));

type Signer = (claims: AccessClaims) => string;
/** What tokens are made with. */
type Issuer = { readonly services: Services; readonly sign: Signer };
/** Where a request comes from, and what the browser says that it is. */
export type Caller = { readonly address: string; readonly device: string };

/**
 * Signs a member in. Every reason to refuse reads the same and does the same work, and so does having to wait after too
 * many wrong tries, which is said before any password is looked at.
 */
export async function signIn(
  { services, sign }: Issuer,
  credentials: Credentials,
  { address, device }: Caller,
): Promise<Tokens | Refused> {
  const claimed = await claimTry(services, address, credentials);
  if (!claimed.mayTry) return signInDelayed(claimed.waitS);
  const account = await services.database.lookUp((tx) => findAccount(tx, credentials));
  const stranger = { orgId: claimed.keys.address, memberId: claimed.keys.account };
  const fits = await services.heavyWork.inTurn('passwords', stranger, () =>
    passwordFits(account?.passwordHash ?? null, credentials.password),
  );
  if (account === null || !fits || !account.active) return signInRefused;
  await forgetTries(services, claimed.keys);
  const owner = { orgId: account.orgId, memberId: account.memberId };
  return services.database.inTenant(owner, async (tx) => {
    const id = services.newId();
    await startSession(tx, owner, { id, device, now: services.now() });
    return issueTokens(tx, { services, sign }, { ...owner, familyId: id });
  });
}

const signInDelayed = (waitS: number): Refused =>
  refused('too-many-requests', message('signInDelayed', { minutes: Math.ceil(waitS / 60) }), {
    retryAfterS: waitS,
  });

/** A new pair of tokens for a refresh token, which is used up by it. */
export async function refreshTokens(
  services: Services,
  sign: Signer,
  token: string,
): Promise<Tokens | Refused> {
  const read = readToken(token);
  if (read === null) return refreshRefused;
  const { orgId } = read;
  return services.database.inTenant({ orgId, memberId: null }, async (tx) => {
    const spent = await spendToken(tx, read, services.now());
    if (spent === null) return refreshRefused;
    const member = await tx.member.findUniqueOrThrow({ where: { orgId_id: { orgId, id: spent.memberId } } });
    if (!member.active) return refreshRefused;
    await tx.session.updateMany({
      where: { orgId, id: spent.familyId, endedAt: null },
      data: { seenAt: services.now() },
    });
    return issueTokens(tx, { services, sign }, spent);
  });
}

/** Ends the sign-in that the refresh token belongs to; says the same whether there was one. */
export async function signOut(services: Services, token: string): Promise<void> {
  const read = readToken(token);
  if (read === null) return;
  await services.database.inTenant({ orgId: read.orgId, memberId: null }, async (tx) => {
    const spent = await spendToken(tx, read, services.now());
    if (spent !== null) await endSessions(tx, { orgId: spent.orgId, id: spent.familyId }, services.now());
  });
}

async function issueTokens(
  tx: TenantTransaction,
  { services, sign }: Issuer,
  family: TokenFamily,
): Promise<Tokens> {
  const { orgId, memberId, familyId } = family;
  const { member, organisation } = await accountOf(tx, family);
  return {
    accessToken: sign({ sub: memberId, org: orgId, role: member.role, sid: familyId }),
    expiresInS: services.config.accessTokenS,
    refreshToken: await issueToken(tx, services, family),
    member,
    organisation,
  };
}
