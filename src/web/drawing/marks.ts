import type { Chain, Place } from '../../../shared/contract/chain.ts';

/** What a drawing says of the places of a chain, beside what the chain is. */
export type Marks = {
  /** Where the fault can still be: shaded. */
  suspects?: readonly Place[];
  /** The open change: dashed, with its sign. */
  change?: Place | null;
  /** The place that was shown to be the cause. */
  culprit?: Place | null;
};
export type Mark = 'suspect' | 'change' | 'culprit';
/** Signs beside the shading, so that a mark is there without colour. */
export const markSigns: Record<Mark, string> = { suspect: '?', change: 'Δ', culprit: '!' };

const isAt = (place: Place, kind: 'device' | 'link', id: string): boolean =>
  (place.kind === 'link' && kind === 'link' && place.linkId === id) ||
  (place.kind === 'device' && kind === 'device' && place.deviceId === id) ||
  (place.kind === 'port' && kind === 'device' && place.deviceId === id);

/** The marks at a device or link; a port's are shown at its device. */
export function marksAt(marks: Marks, kind: 'device' | 'link', id: string): Mark[] {
  const found: Mark[] = [];
  if (marks.suspects?.some((place) => isAt(place, kind, id))) found.push('suspect');
  if (marks.change && isAt(marks.change, kind, id)) found.push('change');
  if (marks.culprit && isAt(marks.culprit, kind, id)) found.push('culprit');
  return found;
}

/** The places that are marked, the one that matters most first. */
export const placesByWeight = ({ culprit, change, suspects }: Marks): Place[] =>
  [culprit, change, ...(suspects ?? [])].filter((place) => place !== null && place !== undefined);

/** How much each device matters for what is drawn large, by the marks at it and at its cables. */
export function weightsOf(chain: Chain, marks: Marks): Map<string, number> {
  const weights = new Map<string, number>();
  const places = placesByWeight(marks);
  const add = (id: string, weight: number) => weights.set(id, Math.max(weights.get(id) ?? 0, weight));
  for (const [at, place] of places.entries()) {
    const weight = places.length - at;
    if (place.kind === 'device' || place.kind === 'port') add(place.deviceId, weight);
    const link = place.kind === 'link' ? chain.links.find(({ id }) => id === place.linkId) : undefined;
    if (link === undefined) continue;
    add(link.from.deviceId, weight);
    add(link.to.deviceId, weight);
  }
  return weights;
}
