import { placeKey } from '../../../../shared/chain/place.ts';
import type { Place } from '../../../../shared/contract/chain.ts';
import type { CaseFile } from '../../../../shared/contract/packet.ts';
import type { ChangeRecord } from '../../../../shared/contract/triage.ts';
import { changesOfRound, isOfOnePart, occurrencesIn, whyNoProof } from '../../../../state-machines/index.ts';
import { type Html, html } from '../../../page/html.ts';
import { acquittals } from './acquitted.ts';
import { changeWords } from './changes.ts';
import { facts, placeWords, signature } from './parts.ts';
import { isNarrowed, sideWords } from './side.ts';
import { spoken, wordsOf } from './tongue.ts';
import { joined } from './words.ts';

/** A part that a change, or second line, has shown to be the cause; null while none has. */
export function shownPlace({ triage }: CaseFile): Place | null {
  if (triage.culprit !== null) return triage.culprit.place;
  return shownBy(triage)?.target ?? null;
}

/** The last change that the fault went away with, and that it can be put down to. */
const clearing = (triage: CaseFile['triage']): ChangeRecord | null =>
  changesOfRound(triage).findLast((change) => whyNoProof(change) === null) ?? null;

/** A change that takes a whole stretch out of the way shows the stretch, and not which part of it. */
const shownBy = (triage: CaseFile['triage']): ChangeRecord | null =>
  changesOfRound(triage).findLast((change) => whyNoProof(change) === null && isOfOnePart(change.kind)) ??
  null;

/** Ids of devices and links that can still be at fault: within what the sides leave, and not acquitted since. */
export function suspectIds(file: CaseFile): string[] {
  const { segment } = file;
  if (!isNarrowed(file) || segment === null || shownPlace(file) !== null) return [];
  const acquitted = acquittals(file);
  const left = (kind: 'device' | 'link') => (id: string) =>
    !acquitted.has(placeKey(kind === 'device' ? { kind, deviceId: id } : { kind, linkId: id }));
  return [...segment.deviceIds.filter(left('device')), ...segment.linkIds.filter(left('link'))];
}

/** More places than these are not named. */
const mostNamed = 6;

/** What second line is told first: what is at fault or may be, what shows it, and the question. */
export function leading(file: CaseFile): Html {
  const { opening: t } = wordsOf(file);
  const shown = shownPlace(file);
  return html`<div class="box">${facts([
    shown === null ? [t.suspect, suspectWords(file)] : [t.shown, placeWords(file, shown)],
    [t.proof, shown === null ? narrowedBy(file) : proofWords(file)],
  ])}<p><strong>${t.question}</strong></p><p class="typed">${file.packet.question}</p></div>`;
}

/** Less than this is not worth naming; assumed. */
const worthNaming = 0.01;

/** What can be at fault by the sides and by what was acquitted, the likeliest first; older packets know no chances. */
function suspectsByChance(file: CaseFile): { place: Place; probability: number | null }[] {
  const { segment, suspects } = file;
  const acquitted = acquittals(file);
  const left = new Set(suspectIds(file));
  const devices = new Set(segment?.deviceIds);
  if (suspects.length === 0)
    return [...left].map((id) => ({
      place: devices.has(id) ? { kind: 'device', deviceId: id } : { kind: 'link', linkId: id },
      probability: null,
    }));
  const isLeft = (place: Place): boolean => {
    if (acquitted.has(placeKey(place))) return false;
    if (!isNarrowed(file) || place.kind === 'chain') return true;
    return left.has(place.kind === 'link' ? place.linkId : place.deviceId);
  };
  return suspects.flatMap(({ place, probability }) =>
    place === null || probability < worthNaming || !isLeft(place) ? [] : [{ place, probability }],
  );
}

function suspectWords(file: CaseFile): string {
  const t = wordsOf(file).opening;
  const suspects = suspectsByChance(file);
  if (suspects.length === 0) {
    if (isNarrowed(file)) return t.allAcquitted;
    const but = [...acquittals(file).values()].map(({ target }) => placeWords(file, target));
    return but.length === 0 ? t.noSuspect : t.anythingBut(but.join('; '));
  }
  const named = suspects.slice(0, mostNamed).map(({ place, probability }) => {
    const name = placeWords(file, place);
    return probability === null
      ? name
      : t.atChance(
          name,
          spoken(file, (say) => say.percent(probability)),
        );
  });
  const others = suspects.length - mostNamed;
  return joined([...named, others > 0 ? t.andOthers(others) : ''], '; ');
}

/** What narrowed it down while no part is shown to be the cause: the change that it went away with, and the side. */
function narrowedBy(file: CaseFile): string {
  const change = clearing(file.triage);
  if (change === null) return sideWords(file);
  return joined([wentAwayWith(file, change), isNarrowed(file) ? sideWords(file) : ''], ' ');
}

function wentAwayWith(file: CaseFile, change: ChangeRecord): string {
  const returned = file.triage.watches.filter(
    ({ purpose, changeId }) => purpose === 'confirm' && changeId === change.id,
  );
  return wordsOf(file).opening.clearedBy(changeWords(file, change), occurrencesIn(returned).length > 0);
}

/** How what is at fault was shown: by a change, and whether the fault came back without it; or by whoever said so. */
function proofWords(file: CaseFile): string {
  const { opening: t, standing } = wordsOf(file);
  const { culprit } = file.triage;
  const change = shownBy(file.triage);
  if (change === null) return culprit === null ? '' : standing.secondLine(signature(file, culprit));
  return joined([wentAwayWith(file, change), culprit === null ? t.notNamedYet : ''], ' ');
}
