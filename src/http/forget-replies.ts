import type { TenantTransaction } from '../database/index.ts';
import { forgottenAtOnce } from './forgotten-at-once.ts';

/** Takes away kept replies of before a moment, so many at most. @returns whether there are more */
export async function forgetReplies(tx: TenantTransaction, orgId: string, before: Date): Promise<boolean> {
  const count = await tx.$executeRaw`
    delete from idempotency_record where org_id = ${orgId}::uuid and (member_id, key) in (
      select member_id, key from idempotency_record
      where org_id = ${orgId}::uuid and created_at < ${before}::timestamptz limit ${forgottenAtOnce})`;
  return count === forgottenAtOnce;
}
