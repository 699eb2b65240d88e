import { findingAsToday } from '../../../shared/audit/stored-finding.ts';
import type { Packet } from '../../../shared/contract/packet.ts';
import type { ChainAudit } from '../../../shared/contract/site.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { recordAsToday } from '../../../state-machines/triage/versions/record.ts';

/** What an older version of this program kept of a document, in today's form. */
export function bodyAsToday(path: string, body: unknown): unknown {
  if (/^\/tickets\/[^/?]+$/.test(path)) {
    const ticket = body as Ticket;
    return { ...ticket, triage: recordAsToday(ticket.triage) };
  }
  if (/^\/packets\/[^/?]+$/.test(path)) {
    const packet = body as Packet;
    const { caseFile } = packet;
    const { prerequisites, triage } = caseFile;
    const findings = prerequisites.findings.map(findingAsToday);
    const today = { prerequisites: { ...prerequisites, findings }, triage: recordAsToday(triage) };
    return { ...packet, caseFile: { ...caseFile, ...today } };
  }
  if (/^\/chains\/[^/?]+\/audit(\?|$)/.test(path)) {
    const audit = body as ChainAudit;
    return { ...audit, findings: audit.findings.map(findingAsToday) };
  }
  return body;
}
