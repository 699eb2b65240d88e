import { namedPlace } from '../../../../shared/chain/named-place.ts';
import type { TicketCommand } from '../../../../shared/contract/commands.ts';
import type { Ticket } from '../../../../shared/contract/ticket.ts';
import { message } from '../../../../shared/message/message.ts';
import { paths } from '../../api/paths.ts';
import { Button } from '../../parts/button.tsx';
import { Card } from '../../parts/card.tsx';
import { SendingResult, useSending } from '../../parts/sending.tsx';
import { keepDocument } from '../../store/documents.ts';
import { WaitFacts } from '../../waiting/wait-facts.tsx';
import { WaitForm } from '../../waiting/wait-form.tsx';
import { waitingWords } from '../../waiting/words.ts';
import { inWords } from '../../words/sentence.tsx';

/** What the ticket waits for, and the desk's way to let it wait or go on; nothing where neither can be. */
export function WaitingCard({ ticket, zone }: { ticket: Ticket; zone: string }) {
  const t = waitingWords();
  const sending = useSending();
  const path = paths.ticket(ticket.id);
  const may = (type: string) => ticket.allowedNow.some((command) => command.type === type);
  const send = async (body: TicketCommand): Promise<boolean> => {
    const done = await sending.send<Ticket>('POST', `${path}/commands`, { body });
    if (done === null) return false;
    await keepDocument({ path, body: done.body, etag: done.etag, readAt: new Date().toISOString() });
    return true;
  };
  const isWaiting = may('resumeWork');
  if (!isWaiting && !may('waitFor')) return null;
  return (
    <Card {...(isWaiting ? { title: t.waitingTitle } : {})}>
      {isWaiting && (
        <>
          <WaitFacts
            ticket={ticket}
            zone={zone}
            placeIn={({ target }, chain) => inWords(message('suspect', { place: namedPlace(chain, target) }))}
          />
          <div class="not-printed">
            <Button kind="primary" onClick={() => void send({ type: 'resumeWork', note: '' })}>
              {t.goOn}
            </Button>
          </div>
        </>
      )}
      <details class="more not-printed">
        <summary>{isWaiting ? t.otherDate : t.putOff}</summary>
        <p class="soft">{t.lead}</p>
        <WaitForm ticketId={ticket.id} zone={zone} send={send} />
      </details>
      <SendingResult sending={sending} />
    </Card>
  );
}
