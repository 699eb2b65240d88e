import { createHmac } from 'node:crypto';
import canonicalize from 'canonicalize';
import type { FastifyRequest } from 'fastify';
import { message } from '../../shared/message/index.ts';
import type { TokenSecrets } from '../config.ts';
import type { TenantTransaction } from '../database/index.ts';
import { type Refused, refused } from './problem.ts';

/** A reply as it is kept, so that the same key gives it again. Where its body can be read again, `null` stands for it. */
export type KeptReply = { status: number; headers: Record<string, string>; body: unknown };

/** Whose key it is. */
export type KeyOf = { readonly orgId: string; readonly memberId: string; readonly key: string };

const keyForm = /^[\x21-\x7e]{8,200}$/;

/** The request's `Idempotency-Key`, or why there is none. */
export function idempotencyKey(request: FastifyRequest): string | Refused {
  const key = request.headers['idempotency-key'];
  if (typeof key === 'string' && keyForm.test(key)) return key;
  return refused('idempotency-key-missing', message('idempotencyKeyNeeded'));
}

/**
 * What makes two requests the same: method, address, version it is based on, and content. Keyed (HMAC-SHA-256), since
 * a body may hold a password and its fingerprint is kept.
 */
export const requestHash = (secret: string, request: FastifyRequest, content: unknown): string =>
  requestHashes([secret], request, content)[0];

/** The same under each secret: a request may come again after the secret was rotated. */
export function requestHashes(
  secrets: TokenSecrets,
  request: FastifyRequest,
  content: unknown,
): readonly [string, ...string[]] {
  const identity = {
    method: request.method,
    url: request.url,
    ifMatch: request.headers['if-match'] ?? null,
    content,
  };
  const form = canonicalize(identity) ?? '';
  const [newest, ...before] = secrets;
  const digest = (secret: string): string => createHmac('sha256', secret).update(form).digest('hex');
  return [digest(newest), ...before.map(digest)];
}

/**
 * Takes a key for this transaction. A second request with the same key waits here until the first has committed,
 * then gets its reply; null means that the key is ours and the work is still to be done.
 * @param hashes the request's under each secret, the newest first
 */
export async function claimKey(
  tx: TenantTransaction,
  { orgId, memberId, key }: KeyOf,
  hashes: readonly [string, ...string[]],
): Promise<KeptReply | Refused | null> {
  const claimed = await tx.sql`
    insert into idempotency_record (org_id, member_id, key, request_hash)
    values (${orgId}::uuid, ${memberId}::uuid, ${key}, ${hashes[0]})
    on conflict do nothing returning key`;
  if (claimed.length === 1) return null;
  const kept = await tx.idempotencyRecord.findUniqueOrThrow({
    where: { orgId_memberId_key: { orgId, memberId, key } },
  });
  if (!hashes.includes(kept.requestHash)) {
    return refused('idempotency-key-reused', message('idempotencyKeyReused'));
  }
  return {
    status: kept.status ?? 500,
    headers: (kept.headers ?? {}) as Record<string, string>,
    body: kept.body,
  };
}

/** Gives a key back that was claimed for a request which may not be made. */
export async function giveBackKey(tx: TenantTransaction, { orgId, memberId, key }: KeyOf): Promise<void> {
  await tx.idempotencyRecord.deleteMany({ where: { orgId, memberId, key, status: null } });
}

export async function keepReply(
  tx: TenantTransaction,
  { orgId, memberId, key }: KeyOf,
  { status, headers, body }: KeptReply,
): Promise<void> {
  await tx.sql`
    update idempotency_record set status = ${status}::int, headers = ${JSON.stringify(headers)}::jsonb,
      body = ${JSON.stringify(body)}::jsonb
    where org_id = ${orgId}::uuid and member_id = ${memberId}::uuid and key = ${key}`;
}
