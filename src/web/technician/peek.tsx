import type { Place } from '../../../shared/contract/chain.ts';
import type { ChainDocument } from '../../../shared/contract/site.ts';
import type { Symptom } from '../../../shared/contract/triage.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { lazyPart } from '../parts/lazy-part.tsx';
import '../place/place.css';
import { placeAddress } from './common/addresses.ts';
import { CaptureButton } from './common/capture.tsx';
import type { OnTicket } from './common/keep-files.ts';
import { placeWords } from './common/place-words.ts';
import { tieOf } from './place-tie.ts';
import { technicianWords } from './words.ts';

const Knowledge = lazyPart(() =>
  import('../place/place-knowledge.tsx').then((module) => module.PlaceKnowledge),
);

type Properties = {
  onTicket: OnTicket;
  symptom: Symptom['kind'];
  chain: ChainDocument;
  place: Place;
  onClose: () => void;
};

/** What was tapped in the drawing, right below it: the way to everything, a camera for it, and what is known of it. */
export function Peek({ onTicket, symptom, chain, place, onClose }: Properties) {
  const t = technicianWords();
  return (
    <section class="place-panel" aria-label={placeWords(chain.chain, place)}>
      <div class="place-panel-head">
        <h3>{placeWords(chain.chain, place)}</h3>
        <Button kind="quiet" onClick={onClose} aria-label={t.closePeek}>
          ✕
        </Button>
      </div>
      <LinkButton href={placeAddress(onTicket.id, place)} kind="primary">
        {t.everything}
      </LinkButton>
      <CaptureButton ticket={onTicket} tie={tieOf(place)}>
        {t.photo}
      </CaptureButton>
      <Knowledge chain={chain} symptom={symptom} place={place} />
    </section>
  );
}
