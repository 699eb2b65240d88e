import type { z } from 'zod';
import { replacedIn } from '../../shared/contract/json-pointer.ts';
import { withTextReplaced } from '../../shared/contract/person-text.ts';
import type { Prisma } from '../database/index.ts';
import type { Context } from './context.ts';

/** Assumed: a shorter text is found inside sentences by chance. */
const shortestPart = 8;

type Replacement = {
  readonly text: string;
  /** What stands in its place. */
  readonly by: string;
  /** Forms of replies, by which texts of persons are told from names and codes that read the same. */
  readonly forms: readonly z.ZodType[];
};

/**
 * Takes a text out of the replies that an organisation's writes are answered with when they are sent again. The replies
 * themselves stay: without them, a command sent twice would be done twice. A sentence that only contains the text, such
 * as a problem's, goes as a whole.
 */
export async function eraseFromReplies({ tx, actor }: Context, replacement: Replacement): Promise<void> {
  const inJson = JSON.stringify(replacement.text).slice(1, -1);
  const holding = await tx.$queryRaw<{ member_id: string; key: string; body: unknown }[]>`
    select member_id, key, body from idempotency_record
    where org_id = ${actor.orgId}::uuid and position(${inJson} in body::text) > 0`;
  for (const { member_id: memberId, key, body } of holding) {
    await tx.idempotencyRecord.update({
      where: { orgId_memberId_key: { orgId: actor.orgId, memberId, key } },
      data: { body: bodyWithout(body, replacement) as Prisma.InputJsonObject },
    });
  }
}

/** A kept reply's body without a text. */
export function bodyWithout(body: unknown, { text, by, forms }: Replacement): unknown {
  const form = forms.find((one) => one.safeParse(body).success);
  const known = form === undefined ? body : withTextReplaced(form, body, { text, by });
  const isGone = (value: unknown): boolean =>
    typeof value === 'string' &&
    ((form === undefined && value === text && !looksLikeCode(value)) ||
      (text.length >= shortestPart && /\s/.test(value) && value.includes(text)));
  return replacedIn(known, (value) => (isGone(value) ? by : undefined));
}

/** One word as a name in the contract could be. */
const looksLikeCode = (value: string): boolean => /^[A-Za-z][A-Za-z0-9.-]*$/.test(value);
