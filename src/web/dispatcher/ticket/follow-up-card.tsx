import type { Ticket } from '../../../../shared/contract/ticket.ts';
import { followUpOutcomes } from '../../../../shared/contract/triage-names.ts';
import { paths } from '../../api/paths.ts';
import { Button } from '../../parts/button.tsx';
import { Card } from '../../parts/card.tsx';
import { SendingResult, useSending } from '../../parts/sending.tsx';
import { typed } from '../../parts/typed.tsx';
import { keepDocument } from '../../store/documents.ts';
import { DueBadge } from '../../waiting/due-badge.tsx';
import { wordsOf } from '../../words/language.ts';
import { terms } from '../../words/terms.ts';

const followUpWords = wordsOf({
  en: {
    title: 'Does the repair hold?',
    lead: 'Replaced on suspicion: nothing has proven it. Ask the client.',
  },
  de: {
    title: 'Hält die Reparatur?',
    lead: 'Auf Verdacht ersetzt: Nichts hat es bewiesen. Frag den Kunden.',
  },
});

/** Asking after a repair that nothing has proven; nothing where there is nothing to ask. */
export function FollowUpCard({ ticket, zone }: { ticket: Ticket; zone: string }) {
  const t = followUpWords();
  const sending = useSending();
  if (!ticket.allowedNow.some(({ type }) => type === 'recordFollowUp')) return null;
  const path = paths.ticket(ticket.id);
  const record = async (heard: (typeof followUpOutcomes)[number]) => {
    const body = { type: 'recordFollowUp', heard };
    const done = await sending.send<Ticket>('POST', `${path}/commands`, { body });
    if (done !== null)
      await keepDocument({ path, body: done.body, etag: done.etag, readAt: new Date().toISOString() });
  };
  return (
    <Card title={t.title}>
      <p class="row">
        <DueBadge due={ticket.due} zone={zone} />
      </p>
      <p>{t.lead}</p>
      {ticket.triage.remedy !== null && <p>{typed(ticket.triage.remedy.what)}</p>}
      <div class="row not-printed">
        {followUpOutcomes.map((heard) => (
          <Button key={heard} onClick={() => void record(heard)}>
            {terms().followUpOutcome[heard]}
          </Button>
        ))}
      </div>
      <SendingResult sending={sending} />
    </Card>
  );
}
