import { type KeyObject, sign, verify } from 'node:crypto';
import type { Tenancy } from './tenancy.ts';

/** What is signed, apart from anything else that the same key may sign one day. */
const signed = (hash: string): Buffer => Buffer.from(`halfsplit log event ${hash}`);

/** Ed25519 (RFC 8032) over the hash of an event, which names all before it; base64url, 86 characters. */
export const signatureOf = (hash: string, key: KeyObject): string =>
  sign(null, signed(hash), key).toString('base64url');

/** @param key private or public */
export const isSignedBy = (key: KeyObject, hash: string, signature: string): boolean =>
  verify(null, signed(hash), key, Buffer.from(signature, 'base64url'));

/** The hashes of a ticket's log and what they were signed with, oldest first; null in what no server signed. */
export const signaturesOf = ({ tx, actor }: Tenancy, ticketId: string) =>
  tx.ticketEvent.findMany({
    where: { orgId: actor.orgId, ticketId },
    select: { sequence: true, type: true, hash: true, signature: true },
    orderBy: { sequence: 'asc' },
  });
