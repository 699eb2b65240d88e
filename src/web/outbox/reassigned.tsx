import { useState } from 'preact/hooks';
import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import { longest } from '../../../shared/contract/limits.ts';
import type { Problem } from '../../../shared/contract/problem.ts';
import { kindOfType } from '../../../shared/contract/problem-type.ts';
import type { Ticket, TicketEvent } from '../../../shared/contract/ticket.ts';
import { write } from '../api/client.ts';
import { paths } from '../api/paths.ts';
import { Button } from '../parts/button.tsx';
import { Notice } from '../parts/notice.tsx';
import { Refusal } from '../parts/refusal.tsx';
import { refresh } from '../store/documents.ts';
import { giveUp, outbox, putCommand, sendAgain } from '../store/outbox.ts';
import { isStopped, type OutboxEntry } from '../store/outbox-entry.ts';
import { sendNow } from '../store/sender.ts';
import { clockTime, dayAndTime } from '../words/times.ts';
import { entryDetail, entryWord } from './entry-words.ts';
import { outboxWords } from './words.ts';

/** Whether an entry was refused because the ticket is with somebody else by now, or with nobody. */
export const isReassigned = ({ problem }: OutboxEntry): boolean =>
  problem !== null && kindOfType(problem.type) === 'not-assigned';

/** Who has the ticket, since when and by whom, as far as its log tells. */
export function WhoHasIt({
  ticket,
  since,
  zone,
}: {
  ticket: Ticket | null;
  since: readonly TicketEvent[];
  zone: string;
}) {
  const t = outboxWords();
  if (ticket === null) return null;
  const given = since.findLast(({ type }) => type === 'assign' || type === 'takeOver' || type === 'update');
  const holder = ticket.assigneeName;
  const when = given === undefined ? null : dayAndTime(given.at, zone);
  return (
    <p>
      <strong>{holder === null ? t.withNobody(when) : t.withSomebody(holder, when)}</strong>{' '}
      {given !== undefined && given.actorName !== holder && t.by(given.actorName)}
    </p>
  );
}

/** The ways on with steps that were done while the ticket went to somebody else. */
export function ReassignedWays({
  entry,
  ticket,
  zone,
}: {
  entry: OutboxEntry;
  ticket: Ticket;
  zone: string;
}) {
  const t = outboxWords();
  const [isBusy, setBusy] = useState(false);
  const [fault, setFault] = useState<Problem | 'unreachable' | null>(null);
  const steps = outbox.value.filter(
    ({ ticketId, order }) => ticketId === entry.ticketId && order >= entry.order,
  );
  const holder = ticket.assigneeName;
  const ask = async (address: string, body?: object): Promise<boolean> => {
    const answer = await write<Ticket>('POST', address, body === undefined ? {} : { body });
    setFault(answer.kind === 'refused' ? answer.problem : answer.kind === 'unreachable' ? answer.kind : null);
    return answer.kind === 'ok';
  };
  const takeOver = async (): Promise<boolean> => {
    if (!(await ask(addressOf(addresses.takeOver, { id: ticket.id })))) return false;
    await sendAgain(entry);
    await sendNow();
    await refresh(paths.ticket(ticket.id));
    return true;
  };
  /** On record as mine; the ticket is with the other again once they are there. */
  const handOver = async (): Promise<void> => {
    const { assigneeId } = ticket;
    if (!(await takeOver())) return;
    if (outbox.peek().some((one) => one.ticketId === ticket.id && isStopped(one))) return;
    if (await ask(addressOf(addresses.assignment, { id: ticket.id }), { assigneeId }))
      await refresh(paths.ticket(ticket.id));
  };
  const keepAsNote = async (): Promise<void> => {
    // Files come in whoever has the ticket, and so do notes.
    const done = steps.filter(
      (step) => step.kind === 'reading' || (step.kind === 'command' && step.command.type !== 'note'),
    );
    const lines = done.map((step) =>
      [clockTime(step.madeAt, zone), entryWord(step), entryDetail(step)].filter(Boolean).join(' '),
    );
    const text = `${t.noteLead} ${lines.join('; ')}`.slice(0, longest.text);
    await putCommand(ticket, { type: 'note', text });
    for (const step of done) await giveUp(step, false);
  };
  const doing = (way: () => Promise<unknown>) => () => {
    setBusy(true);
    void way().finally(() => setBusy(false));
  };
  return (
    <div class="stack">
      {fault === 'unreachable' && (
        <Notice tone="caution" announce>
          {t.needsConnection}
        </Notice>
      )}
      {fault !== null && fault !== 'unreachable' && <Refusal problem={fault} />}
      <Way lead={t.takeOverLead} label={t.takeOver} isBusy={isBusy} onDo={doing(takeOver)} isFirst />
      {holder !== null && (
        <Way lead={t.handLead(holder)} label={t.hand(holder)} isBusy={isBusy} onDo={doing(handOver)} />
      )}
      <Way lead={t.asNoteLead} label={t.asNote} isBusy={isBusy} onDo={doing(keepAsNote)} />
    </div>
  );
}

function Way({
  lead,
  label,
  isBusy,
  isFirst = false,
  onDo,
}: {
  lead: string;
  label: string;
  isBusy: boolean;
  isFirst?: boolean;
  onDo: () => void;
}) {
  return (
    <div class="stack">
      <Button kind={isFirst ? 'primary' : 'plain'} large disabled={isBusy} onClick={onDo}>
        {label}
      </Button>
      <span class="soft">{lead}</span>
    </div>
  );
}
