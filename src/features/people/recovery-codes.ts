import { randomBytes } from 'node:crypto';
import { Secret } from 'otpauth';
import type { TenantTransaction } from '../../database/index.ts';
import { hashOf } from './secret-token.ts';

type Owner = { readonly orgId: string; readonly memberId: string };

/** Assumed. */
const codesAtOnce = 8;
/** 120 bits, of which nobody guesses one, so that a plain digest of it may lie in the database. */
const codeBytes = 15;

const plainOf = (typed: string): string => typed.toUpperCase().replaceAll(/[^A-Z2-7]/g, '');

/** New codes in place of those that were left: groups of four letters and digits (RFC 4648, section 6). */
export async function renewRecoveryCodes(tx: TenantTransaction, owner: Owner): Promise<string[]> {
  await tx.recoveryCode.deleteMany({ where: owner });
  const plain = Array.from(
    { length: codesAtOnce },
    () => new Secret({ buffer: new Uint8Array(randomBytes(codeBytes)).buffer }).base32,
  );
  await tx.recoveryCode.createMany({ data: plain.map((code) => ({ ...owner, codeHash: hashOf(code) })) });
  return plain.map((code) => code.match(/.{4}/g)?.join('-') ?? code);
}

/** Whether a code is one that is left; it is gone then. */
export async function takeRecoveryCode(
  tx: TenantTransaction,
  { code, ...owner }: Owner & { code: string },
): Promise<boolean> {
  const { count } = await tx.recoveryCode.deleteMany({
    where: { ...owner, codeHash: hashOf(plainOf(code)) },
  });
  return count === 1;
}
