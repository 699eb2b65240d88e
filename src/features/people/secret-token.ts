import { createHash, randomBytes } from 'node:crypto';

/** A secret of 256 bits for one member; the organisation stands in it, so that it is looked up inside that tenant only. */
export const newToken = (orgId: string): string => `${orgId}.${randomBytes(32).toString('base64url')}`;

/** All that the database keeps of a secret that nobody can guess. */
export const hashOf = (secret: string): string => createHash('sha256').update(secret).digest('hex');
