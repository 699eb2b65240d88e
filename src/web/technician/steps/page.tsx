import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { LinkButton } from '../../parts/button.tsx';
import { DocumentView } from '../../parts/document-view.tsx';
import { Notice } from '../../parts/notice.tsx';
import { frameWords } from '../../words/frame.ts';
import { triageAddress } from '../common/triage-addresses.ts';
import { InPlaceBanner } from './in-place.tsx';
import { triageWords } from './words.ts';
import { useWork, type Work } from './work.ts';
import './steps.css';

/** Where a form has done what it is for, also when the tab was killed just then: to the question. */
export function ToQuestion({ ticketId }: { ticketId: string }) {
  const { route } = useLocation();
  useEffect(() => route(triageAddress(ticketId), true), [ticketId]);
  return null;
}

/** Any screen of a ticket's triage: what is in place above it, and what was not taken of what was done. */
export function TicketPage({
  ticketId,
  children,
}: {
  ticketId: string;
  children: (work: Work) => ComponentChildren;
}) {
  const t = triageWords();
  const { server, work } = useWork(ticketId);
  if (work === null)
    return (
      <DocumentView document={server}>{() => <p role="status">{frameWords().loading} …</p>}</DocumentView>
    );
  return (
    <>
      <InPlaceBanner ticket={work.ticket} chain={work.chain} />
      {work.stopped && (
        <Notice tone="refusal">
          <span>{t.stopped}</span>
          <div>
            <LinkButton href="/app/outbox">{t.look}</LinkButton>
          </div>
        </Notice>
      )}
      {children(work)}
    </>
  );
}
