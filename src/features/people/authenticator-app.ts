import { Secret, TOTP } from 'otpauth';
import type { TenantTransaction } from '../../database/index.ts';
import type { Services } from '../../services.ts';
import { seal, unseal } from './sealing.ts';

type Owner = { readonly orgId: string; readonly memberId: string };

/** RFC 4226, section 4, R6 recommends 160 bits; RFC 6238 has 30 s and SHA-1, which is what apps know. */
const keyBytes = 20;
const periodS = 30;
/** RFC 6238, section 5.2: one step of delay at most; and one for a clock that is fast. */
const stepsAside = 1;

const appOf = (key: string, label = '', issuer = ''): TOTP =>
  new TOTP({ issuer, label, algorithm: 'SHA1', digits: 6, period: periodS, secret: Secret.fromBase32(key) });

/** A new key for an app, in Base32, and the text of the code that an app's camera reads. */
export function newAppKey({ email, issuer }: { email: string; issuer: string }): {
  key: string;
  uri: string;
} {
  const key = new Secret({ size: keyBytes }).base32;
  return { key, uri: appOf(key, email, issuer).toString() };
}

/** The time step that a code is of, counted from 1970; null where it is of none around now. */
export function stepOf(key: string, code: string, now: Date): number | null {
  const delta = appOf(key).validate({ token: code, timestamp: now.getTime(), window: stepsAside });
  return delta === null ? null : Math.floor(now.getTime() / 1000 / periodS) + delta;
}

const purposeOf = ({ orgId, memberId }: Owner): string => `key of an app of ${orgId} ${memberId}`;

/** @returns false where the member has an app already */
export async function addApp(
  tx: TenantTransaction,
  { config, now }: Services,
  { key, step, ...owner }: Owner & { key: string; step: number },
): Promise<boolean> {
  const { count } = await tx.authenticatorApp.createMany({
    data: {
      ...owner,
      sealedKey: seal(config.signingKey, purposeOf(owner), key),
      lastStep: step,
      addedAt: now(),
      usedAt: now(),
    },
    skipDuplicates: true,
  });
  return count === 1;
}

/** Whether a code is right and newer than any that was taken before (RFC 6238, section 5.2: each is good once). */
export async function takeAppCode(
  tx: TenantTransaction,
  { config, now }: Services,
  { code, ...owner }: Owner & { code: string },
): Promise<boolean> {
  const row = await tx.authenticatorApp.findUnique({ where: { orgId_memberId: owner } });
  const key = row === null ? null : unseal(config.signingKey, purposeOf(owner), row.sealedKey);
  const step = key === null ? null : stepOf(key, code, now());
  if (step === null) return false;
  const { count } = await tx.authenticatorApp.updateMany({
    where: { ...owner, lastStep: { lt: step } },
    data: { lastStep: step, usedAt: now() },
  });
  return count === 1;
}

/** A key that is offered to a member before it is theirs, so that nothing is kept of one that no app took. */
export const sealProposal = (services: Services, owner: Owner, key: string): string =>
  seal(services.config.signingKey, proposalOf(owner), JSON.stringify({ key, until: until(services) }));

/** @returns null where the offer is another member's, none, or too old */
export function openProposal(services: Services, owner: Owner, proposal: string): string | null {
  const text = unseal(services.config.signingKey, proposalOf(owner), proposal);
  if (text === null) return null;
  const { key, until: end } = JSON.parse(text) as { key: string; until: number };
  return services.now().getTime() < end ? key : null;
}

/** Assumed: minutes that somebody takes to get an app. */
const proposalMin = 30;
const until = ({ now }: Services): number => now().getTime() + proposalMin * 60_000;
const proposalOf = ({ orgId, memberId }: Owner): string => `proposed key of ${orgId} ${memberId}`;
