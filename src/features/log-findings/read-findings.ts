import type { EvidenceTie } from '../../../shared/contract/evidence.ts';
import type { LogFinding } from '../../../shared/contract/log-findings.ts';
import type { Watch } from '../../../shared/contract/triage.ts';
import { eventsNear, type LogReading, logFindings, type TicketLog } from '../../../shared/logs/index.ts';
import type { TriageSnapshot } from '../../../state-machines/index.ts';
import { type Context, found, type Outcome, refused } from '../../http/index.ts';

/** The logs of a ticket as they were read on arrival, oldest first; withdrawn ones are left out. */
async function logsOf({ tx, actor }: Context, ticketId: string): Promise<TicketLog[]> {
  const rows = await tx.evidence.findMany({
    where: { orgId: actor.orgId, ticketId, kind: 'log' },
    select: { id: true, tie: true, fileName: true, facts: true, withdrawn: true },
    orderBy: { takenAt: 'asc' },
  });
  return rows.flatMap(({ id, tie, fileName, facts, withdrawn }) => {
    const reading = (facts as { log?: LogReading } | null)?.log;
    return withdrawn !== null || reading === undefined
      ? []
      : [{ evidenceId: id, deviceId: (tie as EvidenceTie).deviceId, fileName, reading }];
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
  const { tx, actor } = context;
  const ticket = await tx.ticket.findUnique({
    where: { orgId_id: { orgId: actor.orgId, id: ticketId } },
    select: { snapshot: true },
  });
  if (ticket === null) return refused('not-found', 'There is no such ticket.');
  const { watches } = (ticket.snapshot as unknown as TriageSnapshot).context;
  return found({ items: await logFindingsOf(context, ticketId, watches) });
}
