import { paths } from '../api/paths.ts';
import { bringIn, keptBody, readAhead } from '../store/documents.ts';

/** Everything of a visit that its screens read, so that all of them work without a connection afterwards. */
async function documentsOf(ticketId: string): Promise<readonly string[] | null> {
  const ticket = await keptBody(paths.ticket(ticketId));
  if (ticket === null) return null;
  return [
    paths.site(ticket.siteId),
    paths.chain(ticket.chainId),
    paths.chainAudit(ticket.chainId, ticket.triage.symptom.kind),
    paths.organisation,
    paths.firmwareLevels,
    paths.evidence(ticketId),
    paths.chainBudget(ticket.chainId),
    paths.chainEdids(ticket.chainId),
    paths.logFindings(ticketId),
    paths.applicableChanges(ticketId),
    paths.phonePlan(ticketId, []),
    paths.plan(ticketId),
  ];
}

/** Reads a visit ahead. @returns whether all of it is on this device now, read at this time or before */
export async function readVisitAhead(ticketId: string): Promise<boolean> {
  await readAhead([paths.ticket(ticketId)]);
  const wanted = await documentsOf(ticketId);
  if (wanted === null) return false;
  await readAhead(wanted);
  return isKept(wanted);
}

/** Whether all of a visit is on this device already. */
export async function isVisitKept(ticketId: string): Promise<boolean> {
  const wanted = await documentsOf(ticketId);
  return wanted !== null && isKept(wanted);
}

async function isKept(wanted: readonly string[]): Promise<boolean> {
  for (const path of wanted) if ((await keptBody(path)) === null) return false;
  return true;
}

/** Today's visits are read ahead from the list: whoever drives off without having opened one has it all the same. */
export async function readVisitsAhead(ticketIds: readonly string[]): Promise<void> {
  for (const ticketId of ticketIds) {
    if (!(await isVisitKept(ticketId))) await readVisitAhead(ticketId);
    await bringIn([paths.ticket(ticketId), ...((await documentsOf(ticketId)) ?? [])]);
  }
}
