import { z } from 'zod';
import type { AuditKind } from '../../../shared/contract/audit-kinds.ts';
import type { AuditEntry, auditLogQuery } from '../../../shared/contract/audit-log.ts';
import type { Page } from '../../../shared/contract/primitives.ts';
import { type Context, decodeCursor, found, type Outcome, pageFrom } from '../../http/index.ts';

const position = z.tuple([z.iso.datetime(), z.uuid()]);
const withNames = { actor: { select: { name: true } }, member: { select: { name: true } } } as const;

/** The audit log of the caller's organisation, newest first. */
export async function readAuditLog(
  { tx, actor }: Context,
  { cursor, limit, memberId }: z.infer<typeof auditLogQuery>,
): Promise<Outcome<Page<AuditEntry>>> {
  const before = decodeCursor(cursor, position);
  if (before !== null && 'ok' in before) return before;
  const rows = await tx.auditEntry.findMany({
    where: {
      AND: [
        { orgId: actor.orgId },
        memberId === undefined ? {} : { OR: [{ actorId: memberId }, { memberId }] },
        before === null ? {} : { OR: [{ at: { lt: before[0] } }, { at: before[0], id: { lt: before[1] } }] },
      ],
    },
    include: withNames,
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take: limit + 1,
  });
  return found(
    pageFrom(rows, limit, {
      positionOf: ({ at, id }) => [at.toISOString(), id],
      view: (row): AuditEntry => ({
        id: row.id,
        at: row.at.toISOString(),
        kind: row.kind as AuditKind,
        actorId: row.actorId,
        actorName: row.actor?.name ?? null,
        memberId: row.memberId,
        memberName: row.member?.name ?? null,
        aboutId: row.aboutId,
        detail: row.detail,
      }),
    }),
  );
}
