import type { ComponentChildren } from 'preact';
import { LinkButton } from '../../parts/button.tsx';
import { DocumentView } from '../../parts/document-view.tsx';
import { Notice } from '../../parts/notice.tsx';
import { frameWords } from '../../words/frame.ts';
import { InPlaceBanner } from './in-place.tsx';
import { triageWords } from './words.ts';
import { useWork, type Work } from './work.ts';
import './triage.css';

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
