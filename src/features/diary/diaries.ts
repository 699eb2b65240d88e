import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import type { TicketDiary } from '../../../shared/contract/diary.ts';
import { message } from '../../../shared/message/index.ts';
import { type Context, created, found, type Outcome, refused } from '../../http/index.ts';
import { appendTicketEvent } from '../tickets/index.ts';
import { codeOf, hashOf } from './code.ts';
import { findDiary } from './diaries.read.ts';

const noDiary = refused('not-found', message('noSuchDiary'));
const dayMs = 86_400_000;

/** Opens a diary of a ticket for so many days. Several may be open at once, such as one for each of two people. */
export async function openDiary(
  context: Context,
  ticketId: string,
  { days }: { readonly days: number },
): Promise<Outcome<TicketDiary>> {
  const { tx, actor, services } = context;
  const { orgId } = actor;
  const [id, openedAt] = [services.newId(), services.now()];
  const until = new Date(openedAt.getTime() + days * dayMs);
  const accepted = await appendTicketEvent(context, ticketId, {
    type: 'diaryOpened',
    diaryId: id,
    until: until.toISOString(),
    at: openedAt.toISOString(),
    by: actor.memberId,
    role: actor.role,
  });
  if (!accepted.ok) return accepted;
  const codeHash = hashOf(codeOf(services.config.tokenSecrets[0], { orgId, id }));
  await tx.diary.create({
    data: { orgId, id, ticketId, codeHash, openedBy: actor.memberId, openedAt, until },
  });
  const made = await findDiary(context, id);
  return made === null ? noDiary : created(made, addressOf(addresses.ticketDiaries, { id: ticketId }));
}

/** Closes a diary for good before its day; closing it again changes nothing. */
export async function closeDiary(context: Context, id: string): Promise<Outcome<TicketDiary>> {
  const { tx, actor, services } = context;
  const before = await findDiary(context, id);
  if (before === null) return noDiary;
  if (before.closedAt !== null) return found(before);
  const at = services.now();
  const accepted = await appendTicketEvent(context, before.ticketId, {
    type: 'diaryClosed',
    diaryId: id,
    at: at.toISOString(),
    by: actor.memberId,
    role: actor.role,
  });
  if (!accepted.ok) return accepted;
  await tx.diary.updateMany({
    where: { orgId: actor.orgId, id, closedAt: null },
    data: { closedAt: at },
  });
  const closed = await findDiary(context, id);
  return closed === null ? noDiary : found(closed);
}
