import type { Tokens } from '../../../shared/contract/people.ts';
import { message } from '../../../shared/message/index.ts';
import type { TenantTransaction } from '../../database/index.ts';
import { type AccessClaims, type Refused, refused } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { type Account, accountOf, type Credentials, findAccount } from './account.read.ts';
import { passwordFits } from './passwords.ts';
import { issueToken, readToken, revokeFamily, spendToken, type TokenFamily } from './refresh-tokens.ts';

/** Assumed: as many wrong passwords in a row lock an account, for as many minutes. */
const wrongTriesAllowed = 5;
const lockedMin = 15;

const signInRefused = refused(
  'sign-in-refused',
  message('signInRefused', { tries: wrongTriesAllowed, lockedMin }),
);
const refreshRefused = refused('refresh-refused', message('signInAgain'));

type Signer = (claims: AccessClaims) => string;
/** What tokens are made with. */
type Issuer = { readonly services: Services; readonly sign: Signer };

/** Signs a member in; every reason to refuse reads and takes the same. */
export async function signIn(
  services: Services,
  sign: Signer,
  credentials: Credentials,
): Promise<Tokens | Refused> {
  const account = await services.database.lookUp((tx) => findAccount(tx, credentials));
  const fits = await passwordFits(account?.passwordHash ?? null, credentials.password);
  if (account === null) return signInRefused;
  const { orgId, memberId } = account;
  return services.database.inTenant({ orgId, memberId }, async (tx) => {
    const now = services.now();
    const member = await tx.member.findUniqueOrThrow({ where: { orgId_id: { orgId, id: memberId } } });
    const locked = member.lockedUntil !== null && member.lockedUntil > now;
    if (!fits && !locked) await countWrongTry(tx, account, now);
    if (!fits || locked || !member.active) return signInRefused;
    await tx.member.update({
      where: { orgId_id: { orgId, id: memberId } },
      data: { failedSignIns: 0, lockedUntil: null },
    });
    return issueTokens(tx, { services, sign }, { orgId, memberId, familyId: services.newId() });
  });
}

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
    return issueTokens(tx, { services, sign }, spent);
  });
}

/** Ends the sign-in that the refresh token belongs to; says the same whether there was one. */
export async function signOut(services: Services, token: string): Promise<void> {
  const read = readToken(token);
  if (read === null) return;
  await services.database.inTenant({ orgId: read.orgId, memberId: null }, async (tx) => {
    const spent = await spendToken(tx, read, services.now());
    if (spent !== null) await revokeFamily(tx, spent, services.now());
  });
}

async function countWrongTry(tx: TenantTransaction, account: Account, now: Date): Promise<void> {
  const until = new Date(now.getTime() + lockedMin * 60_000);
  await tx.$executeRaw`
    update member set
      locked_until = case when failed_sign_ins + 1 >= ${wrongTriesAllowed} then ${until}::timestamptz else locked_until end,
      failed_sign_ins = case when failed_sign_ins + 1 >= ${wrongTriesAllowed} then 0 else failed_sign_ins + 1 end
    where org_id = ${account.orgId}::uuid and id = ${account.memberId}::uuid`;
}

async function issueTokens(
  tx: TenantTransaction,
  { services, sign }: Issuer,
  family: TokenFamily,
): Promise<Tokens> {
  const { orgId, memberId } = family;
  const { member, organisation } = await accountOf(tx, family);
  return {
    accessToken: sign({ sub: memberId, org: orgId, role: member.role }),
    expiresInS: services.config.accessTokenS,
    refreshToken: await issueToken(tx, services, family),
    member,
    organisation,
  };
}
