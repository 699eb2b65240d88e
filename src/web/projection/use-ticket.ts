import { computed, type ReadonlySignal } from '@preact/signals';
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { paths } from '../api/paths.ts';
import { session } from '../api/session.ts';
import { type DocumentState, useDocument } from '../store/documents.ts';
import { outbox } from '../store/outbox.ts';
import type { OutboxEntry } from '../store/outbox-entry.ts';
import type { Known, Projection } from './project.ts';

export type TicketOnScreen = {
  /** As the server gave it last, with the state of reading it. */
  readonly server: DocumentState<Ticket>;
  /** With everything on top that this device has yet to send; null until there is something to show. */
  readonly projection: Projection | null;
  readonly known: Known | null;
  readonly waiting: readonly OutboxEntry[];
};
type Machine = typeof import('./project.ts');

/**
 * A ticket as the person on this device sees it: the server's, and what they did since. With its chain, audit,
 * firmware levels and the organisation's figures, which the steps need.
 *
 * @param needs `projection` where steps are taken; `shown` where the ticket is only read: the machine is then loaded
 *   once something waits to be sent, and until then the projection is null
 */
export function useTicket(ticketId: string, needs: 'projection' | 'shown' = 'projection'): TicketOnScreen {
  const server = useDocument(paths.ticket(ticketId));
  const chainId = server.body?.chainId;
  const symptom = server.body?.triage.symptom.kind;
  const chain = useDocument(chainId === undefined ? null : paths.chain(chainId)).body;
  const audit = useDocument(chainId === undefined ? null : paths.chainAudit(chainId, symptom)).body;
  const firmwareLevels = useDocument(paths.firmwareLevels).body?.items ?? null;
  const organisation = useDocument(paths.organisation).body;
  const entries: ReadonlySignal<readonly OutboxEntry[]> = useMemo(
    () => computed(() => outbox.value.filter((entry) => entry.ticketId === ticketId)),
    [ticketId],
  );
  const [machine, setMachine] = useState<Machine | null>(null);
  const member = session.value?.member;
  const waiting = entries.value;
  const isNeeded = needs === 'projection' || waiting.length > 0;
  useEffect(() => {
    if (isNeeded) void import('./project.ts').then(setMachine);
  }, [isNeeded]);
  const ticket = server.body;
  const { known, projection } = useMemo(() => {
    if (machine === null || member === undefined || ticket === null) return { known: null, projection: null };
    const all: Known = { member, chain, audit, firmwareLevels, organisation };
    return { known: all, projection: machine.project(ticket, waiting, all, new Date().toISOString()) };
  }, [machine, member, ticket, chain, audit, firmwareLevels, organisation, waiting]);
  return { server, projection, known, waiting };
}
