import { hash, verify } from '@node-rs/argon2';

// Algorithm.Argon2id of the library, whose const enum can't be used with isolated modules.
const argon2id = 2;

/** OWASP Password Storage Cheat Sheet: argon2id with 19 MiB, two passes, one lane. */
const options = { algorithm: argon2id, memoryCost: 19_456, timeCost: 2, parallelism: 1 };

export const hashPassword = (password: string): Promise<string> => hash(password, options);

let decoy: Promise<string> | null = null;

/**
 * Whether the password fits. Without a stored hash the same work is done against a decoy, so that the time taken
 * does not tell whether the account exists.
 */
export async function passwordFits(stored: string | null, password: string): Promise<boolean> {
  decoy ??= hashPassword('no account has this password');
  const fits = await verify(stored ?? (await decoy), password);
  return stored !== null && fits;
}
