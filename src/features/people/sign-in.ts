import type { SignInWay } from '../../../shared/contract/audit-kinds.ts';
import type { Tokens } from '../../../shared/contract/people.ts';
import { message } from '../../../shared/message/index.ts';
import type { TenantTransaction } from '../../database/index.ts';
import { type AccessClaims, noteAct, noteRefusal, type Refused, refused } from '../../http/index.ts';
import type { Services } from '../../services.ts';
import { type Account, accountOf, type Credentials, findAccount, organisationOf } from './account.read.ts';
import { passwordFits } from './passwords.ts';
import { issueToken, readToken, spendToken, type TokenFamily } from './refresh-tokens.ts';
import { beginSecondStep, endStepWith, isAppCode, ownerOfStep } from './second-step.ts';
import { endSessions, startSession } from './sessions.ts';
import { claimTry, forgetTries, memberTries, signInTries } from './sign-in-tries.ts';

const signInRefused = refused('sign-in-refused', message('signInWrong'));
const stepRefused = refused('second-factor-refused', message('codeWrong'));
const stepOver = refused('sign-in-refused', message('secondStepOver'));
const refreshRefused = refused('refresh-refused', message('signInAgain'));

type Signer = (claims: AccessClaims) => string;
/** What tokens are made with. */
type Issuer = { readonly services: Services; readonly sign: Signer };
/** Where a request comes from, and what the browser says that it is. */
export type Caller = { readonly address: string; readonly device: string };

/**
 * Signs a member in. Every reason to refuse reads the same and does the same work, and so does having to wait after too
 * many wrong tries, which is said before any password is looked at. Whoever has a second factor gets a refusal with what
 * the sign-in goes on with.
 */
export async function signIn(
  { services, sign }: Issuer,
  credentials: Credentials,
  { address, device }: Caller,
): Promise<Tokens | Refused> {
  const tries = signInTries(services, address, credentials);
  const claimed = await claimTry(services, tries);
  if (!claimed.mayTry) return signInDelayed(claimed.waitS);
  const { account, orgId } = await services.database.lookUp(async (tx) => ({
    account: await findAccount(tx, credentials),
    orgId: await organisationOf(tx, credentials),
  }));
  const [ofAddress, ofAccount] = tries;
  const stranger = { orgId: ofAddress.key, memberId: ofAccount.key };
  const fits = await services.heavyWork.inTurn('passwords', stranger, () =>
    passwordFits(account?.passwordHash ?? null, credentials.password),
  );
  if (account === null || !fits || !account.active) {
    if (orgId !== null) await noteRefusedSignIn(services, orgId, account?.memberId);
    return signInRefused;
  }
  await forgetTries(services, tries);
  const owner = { orgId: account.orgId, memberId: account.memberId };
  return services.database.inTenant(owner, async (tx) => {
    const secondStep = await beginSecondStep(tx, services, owner);
    if (secondStep !== null)
      return refused('second-factor-needed', message('secondFactorNeeded'), { secondStep });
    return tokensOfNewSession(tx, { services, sign }, { ...owner, device, way: 'password' });
  });
}

/** Somebody's, or nobody's that the organisation has. Whether there is such an organisation is no secret: each has its handle. */
const noteRefusedSignIn = (services: Services, orgId: string, memberId?: string): Promise<void> =>
  services.database.inTenant({ orgId, memberId: null }, (tx) =>
    noteRefusal(
      { tx, orgId, services },
      { kind: 'signInRefused', actorId: null, ...(memberId === undefined ? {} : { memberId }) },
    ),
  );

/**
 * The second step of a sign-in: a code of the member's app, or one for recovery. Wrong codes of the app are counted by
 * member, since everybody who gets here knows the password; codes for recovery nobody guesses, and they are taken always.
 */
export async function takeSecondStep(
  { services, sign }: Issuer,
  { token, code }: { token: string; code: string },
  device: string,
): Promise<Tokens | Refused> {
  const read = readToken(token);
  if (read === null) return stepOver;
  const owner = await services.database.inTenant({ orgId: read.orgId, memberId: null }, (tx) =>
    ownerOfStep(tx, read, services.now()),
  );
  if (owner === null) return stepOver;
  const tries = memberTries(services, 'second factor', owner);
  const claimed = isAppCode(code) ? await claimTry(services, tries) : null;
  if (claimed?.mayTry === false) return codesDelayed(claimed.waitS);
  const tokens = await services.database.inTenant(owner, async (tx) => {
    const { orgId, memberId } = owner;
    if (!(await endStepWith(tx, services, { ...owner, code, token }))) {
      await noteRefusal({ tx, orgId, services }, { kind: 'codeRefused', actorId: null, memberId });
      return null;
    }
    const way = isAppCode(code) ? 'app' : 'recoveryCode';
    return tokensOfNewSession(tx, { services, sign }, { ...owner, device, way });
  });
  if (tokens === null) return stepRefused;
  await forgetTries(services, tries);
  return tokens;
}

async function tokensOfNewSession(
  tx: TenantTransaction,
  { services, sign }: Issuer,
  { device, way, ...owner }: Account & { device: string; way: SignInWay },
): Promise<Tokens> {
  const id = services.newId();
  await startSession(tx, owner, { id, device, secondFactor: way !== 'password', now: services.now() });
  const { orgId, memberId: actorId } = owner;
  await noteAct({ tx, orgId, services }, { kind: 'signedIn', actorId, detail: way });
  return issueTokens(tx, { services, sign }, { ...owner, familyId: id });
}

const codesDelayed = (waitS: number): Refused =>
  refused('too-many-requests', message('codesDelayed', { minutes: Math.ceil(waitS / 60) }), {
    retryAfterS: waitS,
  });

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
    const spent = await spendToken(tx, read, services);
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
    const spent = await spendToken(tx, read, services);
    if (spent === null) return;
    const { orgId, memberId: actorId, familyId } = spent;
    await endSessions(tx, { orgId, id: familyId }, services.now());
    await noteAct({ tx, orgId, services }, { kind: 'signedOut', actorId });
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
