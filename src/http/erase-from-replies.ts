import { replacedIn } from '../../shared/contract/json-pointer.ts';
import type { Prisma } from '../database/index.ts';
import type { Context } from './context.ts';

/** Assumed: a shorter text is found inside others by chance. */
const shortestPart = 8;

/**
 * Takes a text out of the replies that an organisation's writes are answered with when they are sent again. A text that
 * only contains it, such as a sentence about it, goes as a whole.
 */
export async function eraseFromReplies(
  { tx, actor }: Context,
  { text, by }: { readonly text: string; readonly by: string },
): Promise<void> {
  const inJson = JSON.stringify(text).slice(1, -1);
  const holding = await tx.$queryRaw<{ member_id: string; key: string; body: unknown }[]>`
    select member_id, key, body from idempotency_record
    where org_id = ${actor.orgId}::uuid and position(${inJson} in body::text) > 0`;
  const holds = (value: unknown): boolean =>
    typeof value === 'string' && (value === text || (text.length >= shortestPart && value.includes(text)));
  for (const { member_id: memberId, key, body } of holding) {
    await tx.idempotencyRecord.update({
      where: { orgId_memberId_key: { orgId: actor.orgId, memberId, key } },
      data: {
        body: replacedIn(body, (value) => (holds(value) ? by : undefined)) as Prisma.InputJsonObject,
      },
    });
  }
}
