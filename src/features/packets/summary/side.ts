import { placeKey } from '../../../../shared/chain/place.ts';
import type { Place } from '../../../../shared/contract/chain.ts';
import type { CaseFile } from '../../../../shared/contract/packet.ts';
import type { SideObservation } from '../../../../shared/contract/triage.ts';
import { occurrencesIn, standingSides } from '../../../../state-machines/index.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, none, section } from '../../../page/parts.ts';
import { acquittals } from './acquitted.ts';
import { lookList, withoutSideWords } from './looks.ts';
import { deviceWords, placeWords, signature, struck } from './parts.ts';
import { spoken, wordsOf } from './tongue.ts';

/** Whether the segment says more than the whole chain would. */
export const isNarrowed = (file: CaseFile): boolean =>
  file.segment !== null && standingSides(file.triage).length > 0;

function conclusionWords(file: CaseFile, { side, deviceId, proof }: SideObservation): string {
  const t = wordsOf(file).side;
  const of = proof.kind === 'menu' ? t.ofTheMenu : t.ofTheDevice;
  return of(
    spoken(file, (say) => say.side(side)),
    deviceWords(file, deviceId),
  );
}

/** The sides that hold, in a sentence; without any, why work went on all the same, where it did. */
export function sideWords(file: CaseFile): string {
  const t = wordsOf(file).side;
  const sides = standingSides(file.triage);
  if (sides.length === 0) return withoutSideWords(file) ?? t.notKnown;
  return t.lies(spoken(file, (say) => say.and(sides.map((side) => conclusionWords(file, side)))));
}

/** Each side with its proof, and the segment that they leave. */
export function sideSection(file: CaseFile): Html {
  const t = wordsOf(file).side;
  const withoutSide = withoutSideWords(file);
  return section(
    'side',
    t.title,
    list(
      file.triage.sides.map(
        (side) => html`${oneSide(file, side)} <span class="quiet">${signature(file, side)}</span>`,
      ),
    ) ?? none(t.none),
    isNarrowed(file) && segmentWords(file),
    withoutSide !== null && html`<p>${withoutSide}</p>`,
    lookList(file) ?? false,
  );
}

function oneSide(file: CaseFile, side: SideObservation): string | Html {
  const t = wordsOf(file).side;
  const lies = t.lies(conclusionWords(file, side));
  if (side.withdrawn !== null) return struck(lies, t.withdrawn(side.withdrawn.reason));
  if (side.superseded !== null) return struck(lies, t.superseded(signature(file, side.superseded)));
  const proven = `${lies} ${proof(file, side)}`;
  return side.round === file.triage.round ? proven : `${proven} ${t.earlierRound}`;
}

function proof(file: CaseFile, side: SideObservation): string {
  const t = wordsOf(file).side;
  if (side.proof.kind !== 'menu') return side.proof.kind === 'trace' ? t.byTrace : t.byWitness;
  const { watchIds, occurrences } = side.proof;
  const seen = occurrencesIn(file.triage.watches.filter((watch) => watchIds.includes(watch.id)));
  const answered = (menu: 'stayed' | 'vanished') => seen.filter((one) => one.menu === menu).length;
  return side.side === 'input'
    ? t.menuStayed(answered('stayed'), occurrences)
    : t.menuVanished(answered('vanished'), occurrences);
}

function segmentWords(file: CaseFile): Html {
  const t = wordsOf(file).side;
  const { segment } = file;
  if (segment === null) return none(t.notRecorded);
  const deviceAtFault = (deviceId: string): string => {
    const device = placeWords(file, { kind: 'device', deviceId });
    const input = segment.inputHalfIds.includes(deviceId);
    const output = segment.outputHalfIds.includes(deviceId);
    return input && output ? device : input ? t.inputHalf(device) : t.outputHalf(device);
  };
  const acquitted = acquittals(file);
  const unlessAcquitted = (place: Place, name: string): string | Html => {
    const by = acquitted.get(placeKey(place));
    return by === undefined ? name : struck(name, t.acquittedBy(file.triage.changes.indexOf(by) + 1));
  };
  const suspects = [
    ...segment.deviceIds.map((deviceId) =>
      unlessAcquitted({ kind: 'device', deviceId }, deviceAtFault(deviceId)),
    ),
    ...segment.linkIds.map((linkId) => {
      const place: Place = { kind: 'link', linkId };
      return unlessAcquitted(place, placeWords(file, place));
    }),
  ];
  return html`<h3>${t.segment}</h3>${list(suspects) ?? none(t.contradiction)}`;
}
