import type { Chain, Place } from '../../../shared/contract/chain.ts';

/** A place where the fault can still be, and how likely that is (0..1); null where nobody has worked it out. */
export type SuspectMark = { place: Place; chance: number | null };
/** What a drawing says of the places of a chain, beside what the chain is. */
export type Marks = {
  suspects?: readonly SuspectMark[];
  /** The open change: dashed, with its sign. */
  change?: Place | null;
  /** The place that was shown to be the cause. */
  culprit?: Place | null;
  /** What is to be done or looked at next. */
  next?: Place | null;
  /** Where the chain is no longer as it was found. */
  differs?: readonly Place[];
  /** Where a reading of the signal was as it should be, and where not. */
  right?: readonly Place[];
  wrong?: readonly Place[];
  /** What can't be as it is drawn; and, while something is plugged, where it can go. */
  fault?: readonly Place[];
  goal?: readonly Place[];
  /** One place a photo or other piece of evidence. */
  evidence?: readonly Place[];
};
/** In the order in which signs stand, what matters most first. */
export const markNames = [
  'goal',
  'fault',
  'culprit',
  'change',
  'next',
  'suspect',
  'wrong',
  'right',
  'differs',
  'evidence',
] as const;
export type Mark = (typeof markNames)[number];
/** Signs beside the shading, so that a mark is there without colour. */
export const markSigns: Record<Mark, string> = {
  goal: '+',
  fault: '✕',
  culprit: '!',
  change: 'Δ',
  next: '◆',
  suspect: '?',
  wrong: '✗',
  right: '✓',
  differs: '≠',
  evidence: '▣',
};
/** A mark at a place: `chance` of a suspect, `count` of evidence. */
export type Sign = { mark: Mark; chance: number | null; count: number };

const isAt = (place: Place, kind: 'device' | 'link', id: string): boolean =>
  (place.kind === 'link' && kind === 'link' && place.linkId === id) ||
  (place.kind === 'device' && kind === 'device' && place.deviceId === id) ||
  (place.kind === 'port' && kind === 'device' && place.deviceId === id);

const placesOf = (marks: Marks, mark: Mark): readonly Place[] => {
  if (mark === 'suspect') return (marks.suspects ?? []).map(({ place }) => place);
  if (mark === 'culprit' || mark === 'change' || mark === 'next') {
    const place = marks[mark];
    return place === null || place === undefined ? [] : [place];
  }
  return marks[mark] ?? [];
};

/** The signs at a device or link; a port's are shown at its device. */
export function marksAt(marks: Marks, kind: 'device' | 'link', id: string): Sign[] {
  return markNames.flatMap((mark): Sign[] => {
    const count = placesOf(marks, mark).filter((place) => isAt(place, kind, id)).length;
    if (count === 0) return [];
    const chances =
      mark === 'suspect'
        ? (marks.suspects ?? []).flatMap(({ place, chance }) => (isAt(place, kind, id) ? (chance ?? []) : []))
        : [];
    return [{ mark, count, chance: chances.length === 0 ? null : Math.max(...chances) }];
  });
}

/** The marks that a drawing has somewhere, for its legend. */
export const usedMarks = (marks: Marks): Mark[] =>
  markNames.filter((mark) => placesOf(marks, mark).some(({ kind }) => kind !== 'chain'));

/** The places that something is asked or said of, the one that matters most first. */
export const placesByWeight = (marks: Marks): Place[] => [
  ...placesOf(marks, 'fault'),
  ...placesOf(marks, 'culprit'),
  ...placesOf(marks, 'change'),
  ...placesOf(marks, 'next'),
  ...(marks.suspects ?? [])
    .toSorted((one, other) => (other.chance ?? 0) - (one.chance ?? 0))
    .map(({ place }) => place),
  ...placesOf(marks, 'wrong'),
  ...placesOf(marks, 'differs'),
];

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

/** Cables that have a sign of their own. */
export const signedLinks = (chain: Chain, marks: Marks): Set<string> =>
  new Set(chain.links.filter(({ id }) => marksAt(marks, 'link', id).length > 0).map(({ id }) => id));
