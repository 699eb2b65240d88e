import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Chain } from '../../../../shared/contract/chain.ts';
import type { Ticket } from '../../../../shared/contract/ticket.ts';
import { openChangeStatuses } from '../../../../shared/contract/triage-names.ts';
import { LinkButton } from '../../parts/button.tsx';
import { wordsOf } from '../../words/language.ts';

const t = wordsOf({ en: { goOn: 'Go on with the triage' }, de: { goOn: 'Mit der Fehlersuche weiter' } });

/** The way from a visit to its next question. */
export function GoOn({ ticketId }: { ticketId: string }) {
  return (
    <LinkButton href={`/app/visits/${ticketId}/triage`} kind="primary" large>
      {t().goOn}
    </LinkButton>
  );
}

/** What is in place and has to be put back, for any screen of a ticket. Its code, the machine's, is loaded beside. */
export function InPlace({ ticket, chain }: { ticket: Ticket; chain: Chain | null }) {
  const [Banner, setBanner] = useState<ComponentType<{ ticket: Ticket; chain: Chain }> | null>(null);
  const isOpen = ticket.triage.changes.some(({ status }) =>
    openChangeStatuses.some((open) => open === status),
  );
  useEffect(() => {
    if (isOpen) void import('./in-place.tsx').then((module) => setBanner(() => module.InPlaceBanner));
  }, [isOpen]);
  const shown = ticket.triage.asFound?.chain ?? chain;
  return Banner === null || shown === null ? null : <Banner ticket={ticket} chain={shown} />;
}
