import type { DiaryWithCode, TicketDiary } from '../../../shared/contract/diary.ts';
import type { MemberRole } from '../../../shared/contract/primitives.ts';
import type { Database, Prisma } from '../../database/index.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { hasTicket, noTicket } from '../ticket-record/index.ts';
import { codeOf, hashOf } from './code.ts';

const withOpener = { opener: { select: { name: true } } } as const;
type Row = Prisma.DiaryGetPayload<{ include: typeof withOpener }>;

/** Whether a diary still takes what is sent to it. */
const isOpen = ({ until, closedAt }: Pick<Row, 'until' | 'closedAt'>, now: Date): boolean =>
  closedAt === null && now < until;

const view = (row: Row): TicketDiary => ({
  id: row.id,
  ticketId: row.ticketId,
  openedAt: row.openedAt.toISOString(),
  until: row.until.toISOString(),
  closedAt: row.closedAt?.toISOString() ?? null,
  by: row.openedBy,
  openedByName: row.opener.name,
});

function withCode({ services }: Context, row: Row): DiaryWithCode {
  // Made under a secret that is kept no longer: the code that was given out is not known any more.
  const code = services.config.tokenSecrets
    .map((secret) => codeOf(secret, row))
    .find((made) => hashOf(made) === row.codeHash);
  return { ...view(row), code: code !== undefined && isOpen(row, services.now()) ? code : null };
}

/** A diary by its id; null where the caller's organisation has none under it. */
export async function findDiary(context: Context, id: string): Promise<TicketDiary | null> {
  const row = await context.tx.diary.findUnique({
    where: { orgId_id: { orgId: context.actor.orgId, id } },
    include: withOpener,
  });
  return row === null ? null : view(row);
}

/** A ticket's diaries, newest first, closed ones too. */
export async function listDiaries(
  context: Context,
  ticketId: string,
): Promise<Outcome<{ items: DiaryWithCode[] }>> {
  if (!(await hasTicket(context, ticketId))) return noTicket;
  const rows = await context.tx.diary.findMany({
    where: { orgId: context.actor.orgId, ticketId },
    include: withOpener,
    orderBy: [{ openedAt: 'desc' }, { id: 'desc' }],
  });
  return found({ items: rows.map((row) => withCode(context, row)) });
}

/** Whose diary a code opens, looked up across tenants; null for a code that opens none. */
export const ownerOfCode = (
  database: Database,
  code: string,
): Promise<{ orgId: string; id: string } | null> =>
  database.lookUp((tx) =>
    tx.diary.findUnique({ where: { codeHash: hashOf(code) }, select: { orgId: true, id: true } }),
  );

/** A diary that is open now, and who opened it; null where it is not (any longer). */
export async function openDiaryOf(
  { tx, services }: Pick<Context, 'tx' | 'services'>,
  { orgId, id }: { readonly orgId: string; readonly id: string },
) {
  const row = await tx.diary.findUnique({
    where: { orgId_id: { orgId, id } },
    include: { opener: { select: { name: true, role: true } } },
  });
  if (row === null || !isOpen(row, services.now())) return null;
  const { openedBy: memberId, opener } = row;
  const { name } = opener;
  const role = opener.role as MemberRole;
  const actor = { orgId, memberId, role, name, sessionId: null, lacksSecondFactor: false };
  return { id, ticketId: row.ticketId, until: row.until, actor };
}
