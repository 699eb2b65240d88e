import { z } from 'zod';
import { diaryDays } from './diary-names.ts';
import { id, instant, keptText } from './primitives.ts';
import { withdrawal } from './watch.ts';

/** A way for the client to say that the fault came, without an account: a link that is open until a day. */
export const diary = z.object({
  id,
  openedAt: instant,
  until: instant,
  /** Set where it was closed before that day. */
  closedAt: instant.nullable(),
  /** Who opened it: what comes by it is signed by them, since the client has no account. */
  by: id,
});
export type Diary = z.infer<typeof diary>;

/**
 * An occurrence that the client reports: nobody on the ticket saw it, and it weighs less. What the client said can be
 * deleted by the client, and so each answer is a text that can be erased; see standingReports in state-machines.
 */
export const report = z.object({
  id,
  diaryId: id,
  /** When it came by the client's account (UTC, ISO 8601), or that this was erased. */
  occurredAt: keptText,
  lasted: keptText.nullable(),
  cameBack: keptText.nullable(),
  receivedAt: instant,
  withdrawn: withdrawal.nullable(),
});
export type Report = z.infer<typeof report>;

/** A diary to open on a ticket. */
export const newDiary = z.object({
  days: z.int().min(diaryDays.least).max(diaryDays.most).default(diaryDays.usual),
});

export const ticketDiary = diary.extend({ ticketId: id, openedByName: z.string() });
export type TicketDiary = z.infer<typeof ticketDiary>;

/** A diary with the code that opens it. It is only ever read: the reply to a write is kept, and would keep the code. */
export const diaryWithCode = ticketDiary.extend({
  /** What stands behind `/d/` in its address, and can be told over the phone; null once it opens nothing any more. */
  code: z.string().nullable(),
});
export type DiaryWithCode = z.infer<typeof diaryWithCode>;
