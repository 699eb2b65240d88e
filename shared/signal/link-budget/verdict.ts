import type { VideoFormat } from '../../contract/chain.ts';
import { type CompressedFit, compressedFit, type FormatNeed, tmdsBitRateGbps } from '../format/index.ts';
import { type Capacity, frlGbps, leastOf } from './capacity.ts';
import { type EdidOffer, refusals } from './edid-offer.ts';
import { type ElementKind, elementKinds, type LinkElement } from './elements.ts';

/**
 * `fits`: it can be counted on. `doubtful`: only if what was assumed against it doesn't hold, or only compressed.
 * `notOffered`: the link would carry it, but the source isn't told that it may send it. `short`: it can't be carried.
 */
export const linkVerdicts = ['fits', 'doubtful', 'notOffered', 'short'] as const;
export type LinkVerdict = (typeof linkVerdicts)[number];

/** Figures of one way to send a format over a link. */
export type Figures = {
  way: 'tmds' | 'frl';
  needGbps: number;
  /** Of the narrowest element, that way. */
  capacityGbps: number;
  narrowest: ElementKind;
};

export type FormatVerdict = {
  /** What travels on this link. */
  format: VideoFormat;
  verdict: LinkVerdict;
  /** Null where a format can't be sent at all. */
  figures: (Figures & { headroomGbps: number; headroomFraction: number }) | null;
  /** What the narrowest element is sold for, where that would carry the format and less is counted on. */
  ratedGbps: number | null;
  /** Why the EDID doesn't offer it, as clauses; empty when it does or isn't known. */
  refusals: string[];
  /** How it would go compressed where it doesn't go plain: whether the source can isn't known. */
  compressed: CompressedFit | null;
};

/** Judges one format on one link. */
export function judgeFormat(
  need: FormatNeed,
  elements: readonly LinkElement[],
  offer: EdidOffer | null,
): FormatVerdict {
  const { format } = need;
  const why = offer === null ? [] : refusals(offer, format, need);
  const sure = attempt(need, elements, ({ sure }) => sure);
  const rated = sure.fits ? sure : attempt(need, elements, ({ rated }) => rated);
  const compressed = rated.fits ? null : compression(need, elements, offer);
  const carried = sure.fits ? 'fits' : rated.fits || compressed !== null ? 'doubtful' : 'short';
  // What is short for certain is said by what is certain: the figures without anything assumed.
  const figures = carried === 'short' ? rated.figures : sure.figures;
  return {
    format,
    verdict: carried !== 'short' && why.length > 0 ? 'notOffered' : carried,
    figures: figures && withHeadroom(figures),
    ratedGbps: figures !== null && !sure.fits && rated.fits ? ratedGbpsOf(figures, elements) : null,
    refusals: why,
    compressed,
  };
}

function withHeadroom(figures: Figures) {
  const headroomGbps = figures.capacityGbps - figures.needGbps;
  return { ...figures, headroomGbps, headroomFraction: headroomGbps / figures.needGbps };
}

type Pick = (element: LinkElement) => Capacity;
type Attempt = { fits: boolean; figures: Figures | null };

/** TMDS where it fits, else a fixed rate; where neither does, the figures of the way that comes nearest to it. */
function attempt(need: FormatNeed, elements: readonly LinkElement[], capacity: Pick): Attempt {
  const { tmds, frl } = need;
  if (tmds === null || frl === null) return { fits: false, figures: null };
  const whole = leastOf(elements.map(capacity));
  if (tmds.characterRateMHz <= whole.tmdsMHz)
    return { fits: true, figures: tmdsFigures(tmds.bitRateGbps, elements, capacity) };
  const frlNeedGbps = (whole.frl?.lanes === 3 ? frl.threeLanes : frl.fourLanes).bitRateGbps;
  if (whole.frl !== null) {
    const fits = frlNeedGbps <= frlGbps(whole.frl);
    return { fits, figures: frlFigures(frlNeedGbps, elements, capacity) };
  }
  if (tmds.fits) return { fits: false, figures: tmdsFigures(tmds.bitRateGbps, elements, capacity) };
  const tmdsOnly = elements.filter((each) => capacity(each).frl === null);
  return { fits: false, figures: { ...tmdsFigures(frlNeedGbps, tmdsOnly, capacity), way: 'frl' } };
}

const tmdsFigures = (needGbps: number, elements: readonly LinkElement[], capacity: Pick): Figures => ({
  way: 'tmds',
  needGbps,
  ...narrowestBy(elements, (each) => tmdsBitRateGbps(capacity(each).tmdsMHz)),
});

const frlFigures = (needGbps: number, elements: readonly LinkElement[], capacity: Pick): Figures => ({
  way: 'frl',
  needGbps,
  ...narrowestBy(elements, (each) => frlGbps(capacity(each).frl)),
});

function narrowestBy(elements: readonly LinkElement[], gbps: (element: LinkElement) => number) {
  const inOrder = elementKinds.flatMap((kind) => elements.filter((each) => each.kind === kind));
  const narrowest = inOrder.reduce((least, each) => (gbps(each) < gbps(least) ? each : least));
  return { narrowest: narrowest.kind, capacityGbps: gbps(narrowest) };
}

function ratedGbpsOf({ way, narrowest }: Figures, elements: readonly LinkElement[]): number | null {
  const rated = elements.find(({ kind }) => kind === narrowest)?.rated;
  if (rated === undefined) return null;
  return way === 'frl' && rated.frl !== null ? frlGbps(rated.frl) : tmdsBitRateGbps(rated.tmdsMHz);
}

function compression(
  need: FormatNeed,
  elements: readonly LinkElement[],
  offer: EdidOffer | null,
): CompressedFit | null {
  const rate = leastOf(elements.map(({ sure }) => sure)).frl;
  if (rate === null || offer === null || offer.compression === null) return null;
  return compressedFit(need.timing, need.format, rate, offer.compression);
}
