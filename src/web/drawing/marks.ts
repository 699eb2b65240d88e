import type { Place } from '../../../shared/contract/chain.ts';

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
