import { findingAsToday } from '../../../shared/audit/stored-finding.ts';
import type { Items } from '../../../shared/contract/primitives.ts';
import type { ChainAudit, ChainDocument } from '../../../shared/contract/site.ts';
import type { Ticket, TicketSummary } from '../../../shared/contract/ticket.ts';
import { storedMessage } from '../../../shared/message/stored.ts';
import { recordAsToday } from '../../../state-machines/triage/versions/record.ts';
import { allowedAsToday, missingAsToday } from '../../../state-machines/triage/versions/said.ts';

type Reader = (body: unknown) => unknown;
const asItIs: Reader = (body) => body;

/** What a technician needs on site without a connection, by the document's path, from version 1's form. */
const readers: readonly (readonly [RegExp, Reader])[] = [
  [/^\/(me|members|organisation|firmware-levels)$/, asItIs],
  [/^\/sites(\/|\?|$)/, asItIs],
  [/^\/tickets\?/, (body) => withoutDue(body as Items<TicketSummary>)],
  [/^\/tickets\/[^/?]+\/evidence\?/, asItIs],
  [/^\/tickets\/[^/?]+$/, (body) => withRecord(body as Ticket)],
  [/^\/chains\/[^/?]+$/, (body) => withChanges(body as ChainDocument)],
  [/^\/chains\/[^/?]+\/audit(\?|$)/, (body) => withFindings(body as ChainAudit)],
];

/** In version 1 no ticket waited, no repair was asked after, and nobody said how long a visit takes. */
const withoutDue = (list: Items<TicketSummary>): Items<TicketSummary> => ({
  ...list,
  items: list.items.map((ticket) => ({ ...ticket, due: null, visitMin: null })),
});
const withRecord = (ticket: Ticket): Ticket => ({
  ...ticket,
  due: null,
  visitMin: null,
  intake: { ...ticket.intake, promised: '' },
  triage: recordAsToday(ticket.triage),
  allowedNow: ticket.allowedNow.map(allowedAsToday),
  missing: ticket.missing.map(missingAsToday),
});
const withFindings = (audit: ChainAudit): ChainAudit => ({
  ...audit,
  findings: audit.findings.map(findingAsToday),
});
const withChanges = (chain: ChainDocument): ChainDocument => ({
  ...chain,
  changes: chain.changes.map(storedMessage),
});

/** What an older version kept of a document, in today's form; null where it has to be read from the server again. */
export function bodyAsToday(path: string, body: unknown): unknown {
  const read = readers.find(([form]) => form.test(path))?.[1];
  return read === undefined ? null : read(body);
}
