import { useEffect, useRef } from 'preact/hooks';
import type { Chain } from '../../../../shared/contract/chain.ts';
import type { Ticket } from '../../../../shared/contract/ticket.ts';
import { openChange } from '../../../../state-machines/triage/record.ts';
import { changeWords } from '../../words/change-words.ts';
import { placeWords } from '../common/place-words.ts';
import { triageWords } from './words.ts';
import './steps.css';

/** What was done to the chain and is not finished: on every screen of the ticket, so that nobody drives off with it. */
export function InPlaceBanner({ ticket, chain }: { ticket: Ticket; chain: Chain }) {
  const t = triageWords();
  const change = openChange(ticket.triage);
  const banner = useRef<HTMLElement>(null);
  useBelowHead(banner, change?.id);
  if (change === null) return null;
  const isDeclared = change.status === 'declared';
  const lead = isDeclared ? t.declaredOnly : change.diagnostic ? t.inPlace : t.inPlaceMayStay;
  return (
    <aside class={`in-place ${isDeclared ? 'in-place-declared' : ''}`} ref={banner}>
      <span aria-hidden="true" class="in-place-sign">
        Δ
      </span>
      <span>
        <strong>{lead}</strong> {changeWords(change)}, {placeWords(chain, change.target)}
      </span>
    </aside>
  );
}

/** Keeps the banner in sight under the frame's head, which is as tall as its words need. */
function useBelowHead(banner: { current: HTMLElement | null }, id: string | undefined): void {
  useEffect(() => {
    const head = document.querySelector('.frame-head');
    if (head === null) return undefined;
    const watcher = new ResizeObserver(() => {
      if (banner.current !== null) banner.current.style.insetBlockStart = `${head.clientHeight}px`;
    });
    watcher.observe(head);
    return () => watcher.disconnect();
  }, [id]);
}
