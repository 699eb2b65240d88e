import { evidenceItem } from '../../../shared/contract/evidence.ts';
import { withTextReplaced } from '../../../shared/contract/person-text.ts';
import { Prisma } from '../../database/index.ts';
import type { Context } from '../../http/index.ts';

const form = evidenceItem.pick({ description: true, reading: true, withdrawn: true });

/** Takes a text out of what is kept of a ticket's evidence, where it is just that; `by` is what stands for it. */
export async function eraseFromEvidence(
  { tx, actor }: Context,
  ticketId: string,
  replacement: { readonly text: string; readonly by: string },
): Promise<void> {
  const rows = await tx.evidence.findMany({
    where: { orgId: actor.orgId, ticketId },
    select: { id: true, description: true, reading: true, withdrawn: true },
  });
  for (const { id, ...kept } of rows) {
    const { description, reading, withdrawn } = withTextReplaced(form, kept, replacement);
    if (JSON.stringify({ description, reading, withdrawn }) === JSON.stringify(kept)) continue;
    await tx.evidence.update({
      where: { orgId_id: { orgId: actor.orgId, id } },
      data: { description, reading: reading ?? Prisma.DbNull, withdrawn: withdrawn ?? Prisma.DbNull },
    });
  }
}
