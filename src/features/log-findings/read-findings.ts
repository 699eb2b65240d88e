import type { LogFinding } from '../../../shared/contract/log-findings.ts';
import type { Watch } from '../../../shared/contract/triage.ts';
import { eventsNear, logFindings, type TicketLog } from '../../../shared/logs/index.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { evidenceOfKind, logReadingOf } from '../evidence-record/index.ts';
import { findCase, noTicket } from '../ticket-record/index.ts';

/** The logs of a ticket as they were read on arrival, oldest first; withdrawn ones are left out. */
export async function logsOf(context: Context, ticketId: string): Promise<TicketLog[]> {
  const logs = await evidenceOfKind(context, ticketId, 'log');
  return logs.flatMap((item) => {
    const reading = logReadingOf(item);
    if (item.withdrawn !== null || reading === null) return [];
    return [{ evidenceId: item.id, deviceId: item.tie.deviceId, fileName: item.fileName, reading }];
  });
}

/** What each log of a ticket says of these watches and their occurrences. */
export async function logFindingsOf(
  context: Context,
  ticketId: string,
  watches: readonly Watch[],
): Promise<LogFinding[]> {
  return (await logsOf(context, ticketId)).map((log) => logFindings(log, watches));
}

/** What a log shows around a ticket's watches. */
export type LogEvents = Pick<LogFinding, 'evidenceId' | 'fileName' | 'events'>;

/** The same without judging it: for a timeline. */
export async function logEventsOf(
  context: Context,
  ticketId: string,
  watches: readonly Watch[],
): Promise<LogEvents[]> {
  return (await logsOf(context, ticketId)).map(({ evidenceId, fileName, reading }) => ({
    evidenceId,
    fileName,
    events: eventsNear(reading, watches),
  }));
}

export async function readLogFindings(
  context: Context,
  ticketId: string,
): Promise<Outcome<{ items: LogFinding[] }>> {
  const ticket = await findCase(context, ticketId);
  if (ticket === null) return noTicket;
  const { watches } = ticket.snapshot.context;
  return found({ items: await logFindingsOf(context, ticketId, watches) });
}
