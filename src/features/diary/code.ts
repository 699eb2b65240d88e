import { createHash, createHmac } from 'node:crypto';

/** Letters and digits that nobody mistakes for one another on the phone: Crockford's base 32, without I, L, O and U. */
const alphabet = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
/** 80 bits: nobody tries them all, neither here nor on a stolen database. */
const length = 16;

type Named = { readonly orgId: string; readonly id: string };

/**
 * The code that opens a diary. It is made of the diary's id and the server's secret, so that a screen can show it again
 * and the database holds only its hash.
 */
export function codeOf(secret: string, { orgId, id }: Named): string {
  const digest = createHmac('sha256', secret).update(`diary ${orgId} ${id}`).digest();
  return [...digest.subarray(0, length)].map((byte) => alphabet[byte % alphabet.length]).join('');
}

export const hashOf = (code: string): string => createHash('sha256').update(code).digest('hex');

/** A code as somebody typed or told it, as it was given; null for what can be none. */
export function readCode(typed: string): string | null {
  const code = typed.toUpperCase().replaceAll(/[\s-]/g, '').replaceAll('O', '0').replaceAll(/[IL]/g, '1');
  return code.length === length && [...code].every((letter) => alphabet.includes(letter)) ? code : null;
}

/** In groups of four, as it is read out. */
export const inGroups = (code: string): string => code.match(/.{4}/g)?.join('-') ?? code;
