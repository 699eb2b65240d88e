import { useState } from 'preact/hooks';
import { findDevice, findLink } from '../../../shared/chain/look-up.ts';
import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { ChainDocument } from '../../../shared/contract/site.ts';
import type { Symptom } from '../../../shared/contract/triage.ts';
import { ChainDrawing } from '../drawing/chain-drawing.tsx';
import type { Marks } from '../drawing/marks.ts';
import { Button } from '../parts/button.tsx';
import { PlaceHistory } from './place-history.tsx';
import { PlaceKnowledge } from './place-knowledge.tsx';
import { knownWords } from './words.ts';
import './place.css';

type Properties = {
  chain: ChainDocument;
  symptom?: Symptom['kind'];
  marks?: Marks;
  /** Whose screen this is: its own changes are no history yet. */
  ticketId?: string;
};

/** A chain, and right below it what is known of the device or cable that was tapped, and what was before. */
export function DrawnChain({ chain, symptom, marks = {}, ticketId }: Properties) {
  const [place, setPlace] = useState<Place | null>(null);
  return (
    <>
      <ChainDrawing chain={chain.chain} marks={marks} selected={place} onSelect={setPlace} />
      {place !== null && (
        <section class="place-panel" aria-label={nameOf(chain.chain, place)}>
          <div class="place-panel-head">
            <h3>{nameOf(chain.chain, place)}</h3>
            <Button kind="quiet" onClick={() => setPlace(null)} aria-label={knownWords().close}>
              ✕
            </Button>
          </div>
          <PlaceKnowledge chain={chain} symptom={symptom} place={place} />
          <PlaceHistory chain={chain} place={place} exceptTicketId={ticketId} />
        </section>
      )}
    </>
  );
}

function nameOf(chain: Chain, place: Place): string {
  if (place.kind === 'chain') return chain.name;
  const device = (id: string): string => findDevice(chain, id)?.name ?? id;
  if (place.kind !== 'link') return device(place.deviceId);
  const link = findLink(chain, place.linkId);
  if (link === undefined) return place.linkId;
  return `${link.id}: ${device(link.from.deviceId)} → ${device(link.to.deviceId)}`;
}
