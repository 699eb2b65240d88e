import type { VideoFormat } from '../../contract/chain.ts';
import type { Message } from '../../message/index.ts';
import { type CompressedFit, compressedFit, type FormatNeed, tmdsBitRateGbps } from '../format/index.ts';
import { refusals } from './admission.ts';
import { type Capacity, frlGbps, leastOf } from './capacity.ts';
import type { EdidOffer } from './edid-offer.ts';
import type { ElementKind, LinkElement } from './elements.ts';
import type { Loss } from './losses.ts';

/**
 * `fits`: it can be counted on. `doubtful`: only if what was assumed against it doesn't hold, or only compressed.
 * `reduced`: it goes, but not all that was asked for with it, such as HDR.
 * `notOffered`: the link would carry it, but the source isn't told that it may send it. `short`: it can't be carried.
 */
export const linkVerdicts = ['fits', 'doubtful', 'reduced', 'notOffered', 'short'] as const;
export type LinkVerdict = (typeof linkVerdicts)[number];

/** Figures of one way to send a format over a link. */
export type Figures = {
  way: 'tmds' | 'frl';
  needGbps: number;
  /** Of the narrowest element, that way. */
  capacityGbps: number;
  narrowest: ElementKind;
  /** Capacity less need; below zero what is short. */
  headroomGbps: number;
  /**
   * The same over the lesser of the two: 0.14 where it carries 14 % more than is needed, -0.24 where 24 % more is needed
   * than it carries; null where it carries nothing.
   */
  headroomFraction: number | null;
};

export type FormatVerdict = {
  /** What travels on this link. */
  format: VideoFormat;
  verdict: LinkVerdict;
  /** Null where a format can't be sent at all. */
  figures: Figures | null;
  /** What the narrowest element is sold for, where that would carry the format and less is counted on. */
  ratedGbps: number | null;
  /** Why the EDID doesn't offer it, as clauses; empty when it does or isn't known. */
  refusals: Message[];
  /** How it would go compressed where it doesn't go plain: whether the source can isn't known. */
  compressed: CompressedFit | null;
  /** What of it gets lost on this link while the picture goes. */
  losses: Loss[];
};

/** What is narrowest on a link on each way, and how much it passes. */
type Narrowest = Pick<Figures, 'narrowest' | 'capacityGbps'>;

/** A link as one whole, either as it can be counted on or as it is rated. */
type View = {
  whole: Capacity;
  tmds: Narrowest;
  frl: Narrowest;
  /** Of the elements that pass no fixed rate, by what they pass of TMDS; null when all do. */
  tmdsOnly: Narrowest | null;
};

/** All that limits what a link carries, worked out once for all formats. */
export type LinkLimits = {
  elements: readonly LinkElement[];
  offer: EdidOffer | null;
  sure: View;
  rated: View;
};

/** @param elements at least one; of several that limit alike the first is named */
export const limitsOf = (elements: readonly LinkElement[], offer: EdidOffer | null): LinkLimits => ({
  elements,
  offer,
  sure: viewOf(elements, ({ sure }) => sure),
  rated: viewOf(elements, ({ rated }) => rated),
});

function viewOf(elements: readonly LinkElement[], capacity: (element: LinkElement) => Capacity): View {
  const tmds = (each: LinkElement): number => tmdsBitRateGbps(capacity(each).tmdsMHz);
  const frl = (each: LinkElement): number => frlGbps(capacity(each).frl);
  const tmdsOnly = elements.filter((each) => capacity(each).frl === null);
  return {
    whole: leastOf(elements.map(capacity)),
    tmds: narrowestBy(elements, tmds),
    frl: narrowestBy(elements, frl),
    tmdsOnly: tmdsOnly.length > 0 ? narrowestBy(tmdsOnly, tmds) : null,
  };
}

function narrowestBy(elements: readonly LinkElement[], gbps: (element: LinkElement) => number): Narrowest {
  const narrowest = elements.reduce((least, each) => (gbps(each) < gbps(least) ? each : least));
  return { narrowest: narrowest.kind, capacityGbps: gbps(narrowest) };
}

/** Judges one format on one link. */
export function judgeFormat(need: FormatNeed, limits: LinkLimits): FormatVerdict {
  const { format } = need;
  const { elements, offer } = limits;
  const why = offer === null ? [] : refusals(offer, format, need);
  const plain = attempt(need, limits.sure);
  const rated = plain.fits ? plain : attempt(need, limits.rated);
  // What may go one way is counted on for that way.
  const sure = rated.fits && !plain.fits ? attempt(need, limits.sure, rated.figures?.way) : plain;
  const compressed = rated.fits ? null : compression(need, limits);
  const carried = sure.fits ? 'fits' : rated.fits || compressed !== null ? 'doubtful' : 'short';
  // What is short for certain is said by what is certain: the figures without anything assumed.
  const figures = carried === 'short' ? rated.figures : sure.figures;
  return {
    format,
    verdict: carried !== 'short' && why.length > 0 ? 'notOffered' : carried,
    figures,
    ratedGbps: figures !== null && !sure.fits && rated.fits ? ratedGbpsOf(figures, elements) : null,
    refusals: why,
    compressed,
    losses: [],
  };
}

/** The verdict with what gets lost: what can't be sent at all, or isn't offered, stays that. */
export function withLosses(judged: FormatVerdict, losses: Loss[]): FormatVerdict {
  const goes = judged.verdict === 'fits' || judged.verdict === 'doubtful';
  return { ...judged, losses, verdict: goes && losses.length > 0 ? 'reduced' : judged.verdict };
}

/** Whether a format would be judged `fits`, without the figures. */
export function surelyFits(need: FormatNeed, { sure, offer }: LinkLimits): boolean {
  return (
    wayOver(need, sure.whole) !== null && (offer === null || refusals(offer, need.format, need).length === 0)
  );
}

/** What a picture asks of a link, whichever way it is sent. */
export type RateNeed = {
  tmds: Pick<NonNullable<FormatNeed['tmds']>, 'characterRateMHz'> | null;
  frl: { threeLanes: { bitRateGbps: number }; fourLanes: { bitRateGbps: number } } | null;
};

/** TMDS where that fits, else a fixed rate, else null. */
export function wayOver({ tmds, frl }: RateNeed, whole: Capacity): Figures['way'] | null {
  if (tmds === null || frl === null) return null;
  if (tmds.characterRateMHz <= whole.tmdsMHz) return 'tmds';
  return whole.frl !== null && frlNeedGbps(frl, whole) <= frlGbps(whole.frl) ? 'frl' : null;
}

export const frlNeedGbps = (frl: NonNullable<RateNeed['frl']>, whole: Capacity): number =>
  (whole.frl?.lanes === 3 ? frl.threeLanes : frl.fourLanes).bitRateGbps;

type Attempt = { fits: boolean; figures: Figures | null };

/** The figures of the way that a format goes; where it goes neither, of the way asked for, or that comes nearest. */
function attempt(
  need: FormatNeed,
  { whole, tmds, frl, tmdsOnly }: View,
  asked: Figures['way'] | undefined = undefined,
): Attempt {
  if (need.tmds === null || need.frl === null) return { fits: false, figures: null };
  const way = wayOver(need, whole);
  const fits = way !== null;
  if (asked === 'frl' && !fits) return { fits, figures: figuresOf('frl', frlNeedGbps(need.frl, whole), frl) };
  if (way === 'tmds' || tmdsOnly !== null) {
    // Past what TMDS passes at all, what has no other way is what keeps it out.
    const narrowest = need.tmds.fits ? tmds : (tmdsOnly ?? tmds);
    return { fits, figures: figuresOf('tmds', need.tmds.bitRateGbps, narrowest) };
  }
  return { fits, figures: figuresOf('frl', frlNeedGbps(need.frl, whole), frl) };
}

function figuresOf(way: Figures['way'], needGbps: number, { narrowest, capacityGbps }: Narrowest): Figures {
  const headroomGbps = capacityGbps - needGbps;
  const headroomFraction = capacityGbps === 0 ? null : headroomGbps / Math.min(needGbps, capacityGbps);
  return { way, needGbps, capacityGbps, narrowest, headroomGbps, headroomFraction };
}

function ratedGbpsOf({ way, narrowest }: Figures, elements: readonly LinkElement[]): number | null {
  const rated = elements.find(({ kind }) => kind === narrowest)?.rated;
  if (rated === undefined) return null;
  return way === 'frl' && rated.frl !== null ? frlGbps(rated.frl) : tmdsBitRateGbps(rated.tmdsMHz);
}

function compression({ timing, format, frl }: FormatNeed, { sure, offer }: LinkLimits): CompressedFit | null {
  const rate = sure.whole.frl;
  if (frl === null || rate === null || offer === null || offer.compression === null) return null;
  return compressedFit(timing, format, rate, offer.compression);
}
