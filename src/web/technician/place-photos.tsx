import { findDevice } from '../../../shared/chain/look-up.ts';
import type { Place } from '../../../shared/contract/chain.ts';
import type { EvidenceTie } from '../../../shared/contract/evidence.ts';
import { linkViews } from '../../../shared/contract/evidence-names.ts';
import type { ChainDocument } from '../../../shared/contract/site.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { runningWatch, standingEvidence } from '../../../state-machines/triage/record.ts';
import { chainWords } from '../place/chain-words.ts';
import { CaptureButton } from './common/capture.tsx';
import { captureWords } from './common/capture-words.ts';
import type { OnTicket } from './common/keep-files.ts';
import { placeWords } from './common/place-words.ts';
import { placeScreenWords } from './place-screen-words.ts';

type Properties = { ticket: Ticket; onTicket: OnTicket; chain: ChainDocument; place: Place };
type View = { name: string; tie: Partial<EvidenceTie> };

/** A camera for each thing worth a photo here: the ends and the label of a cable; a device, its screen, its sockets. */
export function PlacePhotos({ ticket, onTicket, chain, place }: Properties) {
  const t = placeScreenWords();
  const photos = standingEvidence(ticket.triage).filter(({ kind }) => kind === 'photo');
  const wanted = new Set(
    ticket.missing.flatMap(({ item, place: at }) =>
      item === 'linkPhotos' && at?.kind === 'link' ? [at.linkId] : [],
    ),
  );
  const views = viewsAt(ticket, chain, place);
  return (
    <>
      <div class="views">
        {views.map(({ name, tie }) => {
          const count = photos.filter((photo) => isOf(photo.tie, tie)).length;
          const isWanted =
            count === 0 && tie.linkId != null && wanted.has(tie.linkId) && tie.shows !== 'other';
          return (
            <div key={name} class="view">
              <CaptureButton
                ticket={onTicket}
                tie={tie}
                kind={isWanted ? 'primary' : 'plain'}
                label={captureWords().photoOf(name, placeWords(chain.chain, place))}
              >
                {name}
              </CaptureButton>
              <span class="soft">{count > 0 ? t.photographed(count) : isWanted ? t.wanted : t.noPhoto}</span>
            </div>
          );
        })}
      </div>
      <CaptureButton ticket={onTicket} tie={views.at(-1)?.tie ?? {}} fromGallery>
        {t.fromGallery}
      </CaptureButton>
    </>
  );
}

function viewsAt(ticket: Ticket, { chain }: ChainDocument, place: Place): View[] {
  const { shows } = chainWords();
  if (place.kind === 'link') {
    const { linkId } = place;
    return ([...linkViews, 'other'] as const).map((view) => ({
      name: shows[view],
      tie: { linkId, shows: view },
    }));
  }
  if (place.kind === 'chain') return [];
  const { deviceId } = place;
  // What the screen shows while somebody watches belongs to that watch.
  const watchId = runningWatch(ticket.triage)?.id ?? null;
  const ports = findDevice(chain, deviceId)?.ports ?? [];
  return [
    { name: shows.screen, tie: { deviceId, shows: 'screen', watchId } },
    ...ports.map(({ id, label }): View => ({ name: label, tie: { deviceId, portId: id, shows: 'port' } })),
    { name: placeScreenWords().device, tie: { deviceId, shows: 'other' } },
  ];
}

const isOf = (tie: EvidenceTie, view: Partial<EvidenceTie>): boolean =>
  tie.linkId === (view.linkId ?? null) &&
  tie.deviceId === (view.deviceId ?? null) &&
  tie.portId === (view.portId ?? null) &&
  // Taken straight from the drawing, a photo says no view: it is one of the whole.
  (tie.shows ?? 'other') === view.shows;
