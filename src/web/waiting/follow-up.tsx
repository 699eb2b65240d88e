import type { Ticket } from '../../../shared/contract/ticket.ts';
import { followUpOutcomes } from '../../../shared/contract/triage-names.ts';
import { Button } from '../parts/button.tsx';
import { typed } from '../parts/typed.tsx';
import { wordsOf } from '../words/language.ts';
import { terms } from '../words/terms.ts';
import { DueBadge } from './due-badge.tsx';

export const followUpWords = wordsOf({
  en: {
    title: 'Does the repair hold?',
    lead: 'Done on suspicion: nothing has proven it. Ask the client.',
  },
  de: {
    title: 'Hält die Reparatur?',
    lead: 'Auf Verdacht gemacht: Nichts hat es bewiesen. Frag den Kunden.',
  },
});

/** What the client says of a repair that nothing has proven: by when to ask, and what they answered. */
export function FollowUp({
  ticket,
  zone,
  record,
}: {
  ticket: Pick<Ticket, 'due' | 'triage'>;
  zone: string;
  record: (heard: (typeof followUpOutcomes)[number]) => void;
}) {
  return (
    <>
      <p class="row">
        <DueBadge due={ticket.due} zone={zone} />
      </p>
      <p>{followUpWords().lead}</p>
      {ticket.triage.remedy !== null && <p>{typed(ticket.triage.remedy.what)}</p>}
      <div class="row not-printed">
        {followUpOutcomes.map((heard) => (
          <Button key={heard} onClick={() => record(heard)}>
            {terms().followUpOutcome[heard]}
          </Button>
        ))}
      </div>
    </>
  );
}
