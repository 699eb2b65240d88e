import type { ComponentChildren } from 'preact';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { Notice } from '../parts/notice.tsx';
import { typed } from '../parts/typed.tsx';
import { changeWords } from '../words/change-words.ts';
import { terms } from '../words/terms.ts';
import { dayAndTime } from '../words/times.ts';
import { DueBadge } from './due-badge.tsx';
import { waitingWords } from './words.ts';

/** What a ticket waits for, since when and until when, who has to act, and what was left in place meanwhile. */
export function WaitFacts({
  ticket,
  zone,
  placeIn,
}: {
  ticket: Pick<Ticket, 'triage' | 'due'>;
  zone: string;
  /** A place of the chain in words. */
  placeIn: (change: Ticket['triage']['changes'][number], chain: Chain) => ComponentChildren;
}) {
  const t = waitingWords();
  const wait = ticket.triage.waits.findLast(({ ended }) => ended === null);
  const chain = ticket.triage.asFound?.chain;
  if (wait === undefined) return null;
  const left = ticket.triage.changes.filter(({ id }) => wait.leftInPlace.includes(id));
  return (
    <>
      <p class="row">
        <DueBadge due={ticket.due} zone={zone} />
        <span class="soft">{t.since(dayAndTime(wait.at, zone))}</span>
      </p>
      <p>
        <strong>{terms().waitingKind[wait.kind]}: </strong>
        {typed(wait.what)}
      </p>
      <p>
        {t.actor} <strong>{terms().actingParty[wait.actor]}</strong>
        {wait.actorName !== null && <> ({typed(wait.actorName)})</>}
      </p>
      {left.length === 0 ? (
        <p class="soft">{t.nothingInPlace}</p>
      ) : (
        <Notice tone="caution">
          <strong>{t.leftInPlace}</strong>
          {left.map((change) => (
            <span key={change.id}>
              {changeWords(change)}
              {chain !== undefined && <>, {placeIn(change, chain)}</>}
            </span>
          ))}
        </Notice>
      )}
    </>
  );
}
