import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { EvidenceRef } from '../../../shared/contract/evidence.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import type { MissingItem } from '../../../shared/contract/triage.ts';
import { LinkButton } from '../parts/button.tsx';
import { List } from '../parts/card.tsx';
import { Notice } from '../parts/notice.tsx';
import { terms } from '../words/terms.ts';
import { evidenceAddress, placeAddress } from './addresses.ts';
import { CaptureButton } from './capture.tsx';
import { captureWords } from './capture-words.ts';
import type { OnTicket } from './keep-files.ts';
import { triageAddress } from './triage/addresses.ts';
import { placeWords } from './triage/place-words.ts';
import { technicianWords } from './words.ts';

type LinkView = 'sourceEnd' | 'sinkEnd' | 'label';
const linkViews: readonly LinkView[] = ['sourceEnd', 'sinkEnd', 'label'];

/** The views of a cable of which there is no photo that counts. */
export function viewsLacking(evidence: readonly EvidenceRef[], linkId: string): LinkView[] {
  const shown = new Set(
    evidence
      .filter(({ kind, tie, withdrawn }) => kind === 'photo' && withdrawn === null && tie.linkId === linkId)
      .map(({ tie }) => tie.shows),
  );
  return linkViews.filter((view) => !shown.has(view));
}

type Properties = { ticket: Ticket; onTicket: OnTicket; chain: Chain };

/** What a case would still miss, each with the way to the camera or the reading that gets it. */
export function StillMissing({ ticket, onTicket, chain }: Properties) {
  const t = technicianWords();
  if (ticket.missing.length === 0) return <Notice tone="good">{t.nothingMissing}</Notice>;
  return (
    <>
      <p class="soft">{t.missingLead}</p>
      <List>
        {ticket.missing.map((missing) => (
          <li key={`${missing.item} ${missing.text}`} class="missing">
            <strong>{terms().items[missing.item]}</strong>
            <span>{missing.place === null ? missing.text : placeWords(chain, missing.place)}</span>
            <WayToGetIt missing={missing} ticket={ticket} onTicket={onTicket} chain={chain} />
          </li>
        ))}
      </List>
    </>
  );
}

function WayToGetIt({ missing, ticket, onTicket, chain }: Properties & { missing: MissingItem }) {
  const t = technicianWords();
  const { item, place } = missing;
  if (item === 'linkPhotos' && place?.kind === 'link') {
    return (
      <div class="row">
        {viewsLacking(ticket.triage.evidence, place.linkId).map((view) => (
          <CaptureButton
            key={view}
            ticket={onTicket}
            tie={{ linkId: place.linkId, shows: view }}
            label={captureWords().photoOf(captureWords().views[view], placeWords(chain, place))}
          >
            {t.views[view]}
          </CaptureButton>
        ))}
      </div>
    );
  }
  return (
    <div>
      <LinkButton href={wayTo(ticket.id, item, place)}>{wordFor(item, place)}</LinkButton>
    </div>
  );
}

function wayTo(ticketId: string, item: MissingItem['item'], place: Place | null): string {
  switch (item) {
    case 'firmware':
    case 'settings':
      return place === null ? '#chain' : placeAddress(ticketId, place, item);
    case 'edid':
      return place === null ? '#chain' : placeAddress(ticketId, place, 'files');
    case 'linkPhotos':
      return '#chain';
    case 'logs':
      return evidenceAddress(ticketId, 'log');
    default:
      return triageAddress(ticketId);
  }
}

function wordFor(item: MissingItem['item'], place: Place | null): string {
  const { go } = technicianWords();
  if (item === 'logs') return go.logs;
  if (item === 'firmware' || item === 'settings' || item === 'edid')
    return place === null ? go.drawing : go[item];
  return item === 'linkPhotos' ? go.drawing : go.triage;
}
