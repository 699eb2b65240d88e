import type { SecondStep } from '../../../shared/contract/people.ts';
import type { TenantTransaction } from '../../database/index.ts';
import type { Services } from '../../services.ts';
import { takeAppCode } from './authenticator-app.ts';
import { takeRecoveryCode } from './recovery-codes.ts';
import { hashOf, newToken } from './secret-token.ts';

type Owner = { readonly orgId: string; readonly memberId: string };

/** Assumed: minutes that somebody takes to find their phone and type what it shows. */
const stepMin = 10;

/** Whether it is of an app by its look, and none for recovery. */
export const isAppCode = (code: string): boolean => /^\d{6}$/.test(code.replaceAll(/\s/g, ''));

/** What a sign-in goes on with whose password was right; null where the member has no second factor. */
export async function beginSecondStep(
  tx: TenantTransaction,
  services: Services,
  owner: Owner,
): Promise<SecondStep | null> {
  const hasApp = (await tx.authenticatorApp.count({ where: owner })) > 0;
  if (!hasApp) return null;
  const now = services.now();
  await tx.secondStep.deleteMany({ where: { orgId: owner.orgId, expiresAt: { lte: now } } });
  const token = newToken(owner.orgId);
  const expiresAt = new Date(now.getTime() + stepMin * 60_000);
  await tx.secondStep.create({ data: { ...owner, tokenHash: hashOf(token), expiresAt } });
  return { token };
}

/** Whose sign-in goes on with this token; null where none does (any more). */
export async function ownerOfStep(
  tx: TenantTransaction,
  { orgId, token }: { orgId: string; token: string },
  now: Date,
): Promise<Owner | null> {
  const row = await tx.secondStep.findUnique({
    where: { orgId_tokenHash: { orgId, tokenHash: hashOf(token) } },
  });
  return row === null || row.expiresAt <= now ? null : { orgId, memberId: row.memberId };
}

/** Whether a code, the app's or one for recovery, ends the step: once, however many send it at once. */
export async function endStepWith(
  tx: TenantTransaction,
  services: Services,
  { code, token, ...owner }: Owner & { code: string; token: string },
): Promise<boolean> {
  const fits = isAppCode(code)
    ? await takeAppCode(tx, services, { ...owner, code: code.replaceAll(/\s/g, '') })
    : await takeRecoveryCode(tx, { ...owner, code });
  if (!fits) return false;
  const where = { orgId: owner.orgId, tokenHash: hashOf(token) };
  return (await tx.secondStep.deleteMany({ where })).count === 1;
}
