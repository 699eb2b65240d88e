import { z } from 'zod';
import type { EvidenceItem, evidenceQuery } from '../../../shared/contract/evidence.ts';
import { id, instant } from '../../../shared/contract/primitives.ts';
import { type Context, decodeCursor, found, type Outcome, pageFrom } from '../../http/index.ts';
import { evidenceItemOf, withFile } from '../evidence-record/index.ts';
import { hasTicket, noTicket } from '../ticket-record/index.ts';

const position = z.tuple([instant, id]);

/** A ticket's evidence, newest first, withdrawn items too. */
export async function listEvidence(
  context: Context,
  ticketId: string,
  query: z.infer<typeof evidenceQuery>,
): Promise<Outcome<{ items: EvidenceItem[]; next: string | null }>> {
  const { tx, actor } = context;
  const after = decodeCursor(query.cursor, position);
  if (after !== null && 'ok' in after) return after;
  if (!(await hasTicket(context, ticketId))) return noTicket;
  const rows = await tx.evidence.findMany({
    where: {
      orgId: actor.orgId,
      ticketId,
      ...(query.kind === undefined ? {} : { kind: query.kind }),
      ...(after === null
        ? {}
        : { OR: [{ uploadedAt: { lt: after[0] } }, { uploadedAt: after[0], id: { lt: after[1] } }] }),
    },
    include: withFile,
    orderBy: [{ uploadedAt: 'desc' }, { id: 'desc' }],
    take: query.limit + 1,
  });
  return found(
    pageFrom(rows, query.limit, {
      positionOf: (row) => [row.uploadedAt.toISOString(), row.id],
      view: evidenceItemOf,
    }),
  );
}
