import type { Finding, Place } from '../../../shared/contract/chain.ts';
import type { ChainDocument } from '../../../shared/contract/site.ts';
import type { Symptom } from '../../../shared/contract/triage.ts';
import { paths } from '../api/paths.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { Badge } from '../parts/notice.tsx';
import { PlaceFacts } from '../place/place-facts.tsx';
import { useDocument } from '../store/documents.ts';
import { placeAddress } from './common/addresses.ts';
import { CaptureButton } from './common/capture.tsx';
import type { OnTicket } from './common/keep-files.ts';
import { placeWords } from './common/place-words.ts';
import { tieOf } from './place-tie.ts';
import { technicianWords } from './words.ts';

type Properties = {
  onTicket: OnTicket;
  symptom: Symptom['kind'];
  chain: ChainDocument;
  place: Place;
  onClose: () => void;
};

/** What was tapped in the drawing, right below it: its facts, a camera for it, and the way to everything else. */
export function Peek({ onTicket, symptom, chain, place, onClose }: Properties) {
  const t = technicianWords();
  const audit = useDocument(paths.chainAudit(chain.id, symptom)).body;
  const findings = (audit?.findings ?? []).filter((finding) => isAt(finding, place));
  return (
    <section class="peek" aria-label={placeWords(chain.chain, place)}>
      <div class="peek-head">
        <h3>{placeWords(chain.chain, place)}</h3>
        <Button kind="quiet" onClick={onClose} aria-label={t.closePeek}>
          ✕
        </Button>
      </div>
      <PlaceFacts chain={chain.chain} place={place} />
      {findings.length > 0 && (
        <div>
          <Badge tone="caution">{t.findings(findings.length)}</Badge>
        </div>
      )}
      <LinkButton href={placeAddress(onTicket.id, place)} kind="primary">
        {t.everything}
      </LinkButton>
      <CaptureButton ticket={onTicket} tie={tieOf(place)}>
        {t.photo}
      </CaptureButton>
    </section>
  );
}

/** Whether a finding is about a device, one of its ports, or a cable. */
export const isAt = ({ place: at }: Finding, place: Place): boolean =>
  (place.kind === 'link' && at.kind === 'link' && at.linkId === place.linkId) ||
  (place.kind === 'device' && (at.kind === 'device' || at.kind === 'port') && at.deviceId === place.deviceId);
