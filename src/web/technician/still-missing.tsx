import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import type { MissingItem } from '../../../shared/contract/triage.ts';
import { messageKey } from '../../../shared/message/same.ts';
import { viewsLacking } from '../../../state-machines/triage/link-views.ts';
import { LinkButton } from '../parts/button.tsx';
import { List } from '../parts/card.tsx';
import { Notice } from '../parts/notice.tsx';
import { inWords } from '../words/sentence.tsx';
import { terms } from '../words/terms.ts';
import { evidenceAddress, placeAddress } from './common/addresses.ts';
import { CaptureButton } from './common/capture.tsx';
import { captureWords } from './common/capture-words.ts';
import type { OnTicket } from './common/keep-files.ts';
import { placeWords } from './common/place-words.ts';
import { triageAddress } from './common/triage-addresses.ts';
import { technicianWords } from './words.ts';

type Properties = { ticket: Ticket; onTicket: OnTicket; chain: Chain };

/**
 * What a case would still miss, with the way to the camera or the reading that gets it. What the questions of the
 * triage get, and what has yet to be chosen in the drawing, stands together: one way leads to all of it.
 */
export function StillMissing({ ticket, onTicket, chain }: Properties) {
  const t = technicianWords();
  if (ticket.missing.length === 0) return <Notice tone="good">{t.nothingMissing}</Notice>;
  const by = (way: Way) => ticket.missing.filter((missing) => wayOf(missing) === way);
  return (
    <>
      <p class="soft">{t.missingLead}</p>
      <List>
        {by('here').map((missing) => (
          <li key={`${missing.item} ${messageKey(missing.text)}`} class="missing">
            <strong>{terms().completenessItem[missing.item]}</strong>
            <span>{missing.place === null ? inWords(missing.text) : placeWords(chain, missing.place)}</span>
            <WayToGetIt missing={missing} ticket={ticket} onTicket={onTicket} chain={chain} />
          </li>
        ))}
        <Together missing={by('drawing')} lead={t.missingIn.drawing} href="#chain" go={t.go.drawing} />
        <Together
          missing={by('triage')}
          lead={t.missingIn.triage}
          href={triageAddress(ticket.id)}
          go={t.go.triage}
        />
      </List>
    </>
  );
}

type Way = 'here' | 'drawing' | 'triage';
const placed: ReadonlySet<MissingItem['item']> = new Set(['firmware', 'settings', 'edid', 'linkPhotos']);
function wayOf({ item, place }: MissingItem): Way {
  if (item === 'logs') return 'here';
  if (!placed.has(item)) return 'triage';
  return place === null ? 'drawing' : 'here';
}

function Together({
  missing,
  lead,
  href,
  go,
}: {
  missing: readonly MissingItem[];
  lead: string;
  href: string;
  go: string;
}) {
  if (missing.length === 0) return null;
  return (
    <li class="missing">
      <span>{lead}</span>
      <ul>
        {missing.map(({ item, text }) => (
          <li key={item + text}>
            <a href={href}>{terms().completenessItem[item]}</a>
          </li>
        ))}
      </ul>
      <div>
        <LinkButton href={href}>{go}</LinkButton>
      </div>
    </li>
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
      <LinkButton href={wayTo(ticket.id, item, place)}>
        {item === 'logs' || item === 'firmware' || item === 'settings' || item === 'edid'
          ? t.go[item]
          : t.go.triage}
      </LinkButton>
    </div>
  );
}

function wayTo(ticketId: string, item: MissingItem['item'], place: Place | null): string {
  if (place === null) return evidenceAddress(ticketId, 'log');
  return placeAddress(ticketId, place, item === 'edid' ? 'files' : item === 'settings' ? item : 'firmware');
}
