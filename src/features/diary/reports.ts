import type { CameBackAnswer, LastedAnswer } from '../../../shared/contract/diary-names.ts';
import type { Context } from '../../http/index.ts';
import { appendTicketEvent, eraseReports } from '../tickets/index.ts';

/** Assumed: nobody's picture fails more often than this in an hour and is still reported each time. */
const reportsPerHour = 30;

/** A diary that is open, as whoever has its code may use it: what comes by it is signed by its opener. */
export type OpenDiary = { readonly id: string; readonly ticketId: string };
export type SentReport = { readonly id: string; readonly occurredAt: string; readonly receivedAt: string };

/** Whether a diary was sent so much in the last hour that no more is taken now. */
export function isTooMuch(sent: readonly SentReport[], now: Date): boolean {
  const since = now.getTime() - 3_600_000;
  return sent.filter(({ receivedAt }) => Date.parse(receivedAt) > since).length >= reportsPerHour;
}

/** Writes what a client reports to the ticket. The same report sent again, by a double tap, changes nothing. */
export async function report(
  context: Context,
  { id, ticketId }: OpenDiary,
  { reportId, occurredAt }: { readonly reportId: string; readonly occurredAt: string },
): Promise<void> {
  await appendTicketEvent(context, ticketId, {
    type: 'occurrenceReported',
    diaryId: id,
    reportId,
    occurredAt,
    ...stampOf(context),
  });
}

/** Writes what a client says of a report of theirs. */
export async function answer(
  context: Context,
  { ticketId }: OpenDiary,
  said: {
    readonly reportId: string;
    readonly lasted: LastedAnswer | null;
    readonly cameBack: CameBackAnswer | null;
  },
): Promise<void> {
  await appendTicketEvent(context, ticketId, { type: 'reportAnswered', ...said, ...stampOf(context) });
}

/** Erases all that was sent by a diary. */
export const deleteAll = (context: Context, { id, ticketId }: OpenDiary): Promise<void> =>
  eraseReports(context, ticketId, id);

const stampOf = ({ actor, services }: Context) => ({
  at: services.now().toISOString(),
  by: actor.memberId,
  role: actor.role,
});
