import type { VideoFormat } from '../../contract/chain.ts';
import { ctaTimings } from './cta-861.ts';
import { type CvtBlanking, cvtTiming } from './cvt.ts';
import { dmtTimings } from './dmt.ts';
import { atPixelClock, refreshHz, type Timing } from './timing.ts';

/** Size and rate of a picture; frames a second, or fields when interlaced. */
export type Picture = Pick<VideoFormat, 'widthPx' | 'heightPx' | 'interlaced' | 'refreshHz'>;

export type TimingSource =
  /** Every code with this size and rate, whatever its aspect ratio; the lowest first. */
  | { kind: 'cta861'; vics: number[] }
  | { kind: 'dmt'; dmtId: number }
  | { kind: 'cvt'; blanking: CvtBlanking }
  /** Described by the sink's own EDID. */
  | { kind: 'edid' };
export type FoundTiming = { timing: Timing; source: TimingSource };

/** How far a rate may lie from a table's and still be it: `59.94` for 60/1.001, `60` for the DMT's 59.81 (assumed). */
const ctaTolerance = 0.0004;
const dmtTolerance = 0.004;

/** The rates that CTA-861 lists both whole and divided by 1.001 (tables 1 and 2). */
const ratesWithTwin = [24, 30, 48, 60, 120, 240];

/**
 * The timing that a picture of this size and rate is sent with: the CTA-861 one when there is one, else the DMT one,
 * else CVT. At a rate divided by 1.001, or times 1.001, the CTA-861 pixel clock is scaled with it.
 *
 * @param fallback the CVT blanking for what isn't in a table; assumed: the first reduced blanking, which most
 *   displays describe such pictures with (common practice, no source)
 */
export function findTiming(picture: Picture, fallback: CvtBlanking = 'reduced1'): FoundTiming {
  return ctaMatch(picture) ?? dmtMatch(picture) ?? cvtMatch(picture, fallback);
}

type Candidate = { id: number; timing: Timing; rateHz: number };

const ctaBySize = bySize(ctaTimings, withTwin);
const dmtBySize = bySize(dmtTimings, (candidate) => [candidate]);

function ctaMatch(picture: Picture): FoundTiming | null {
  const near = nearest(ctaBySize.get(sizeKey(asSent(picture))), picture.refreshHz, ctaTolerance);
  const [first] = near;
  if (first === undefined) return null;
  return { timing: first.timing, source: { kind: 'cta861', vics: near.map(({ id }) => id) } };
}

function dmtMatch(picture: Picture): FoundTiming | null {
  const [first] = nearest(dmtBySize.get(sizeKey(picture)), picture.refreshHz, dmtTolerance);
  return first === undefined ? null : { timing: first.timing, source: { kind: 'dmt', dmtId: first.id } };
}

function cvtMatch(picture: Picture, blanking: CvtBlanking): FoundTiming {
  return { timing: cvtTiming({ ...picture, blanking }), source: { kind: 'cvt', blanking } };
}

/** Pictures of 720 pixels in 480 or 576 interlaced lines go out with every pixel twice (CTA-861, pixel repetition). */
function asSent(picture: Picture): Picture {
  const doubled = picture.widthPx === 720 && picture.interlaced;
  return doubled ? { ...picture, widthPx: 1440 } : picture;
}

type Size = Omit<Picture, 'refreshHz'>;
function sizeKey({ widthPx, heightPx, interlaced }: Size): string {
  return `${widthPx}x${heightPx}${interlaced ? 'i' : 'p'}`;
}

function bySize(table: ReadonlyMap<number, Timing>, spread: (candidate: Candidate) => Candidate[]) {
  const found = new Map<string, Candidate[]>();
  for (const [id, timing] of table) {
    const candidates = spread({ id, timing, rateHz: refreshHz(timing) });
    const key = sizeKey(timing);
    found.set(key, [...(found.get(key) ?? []), ...candidates]);
  }
  return found;
}

function withTwin(candidate: Candidate): Candidate[] {
  const { timing, rateHz } = candidate;
  const at = (times: number, over: number): Candidate => ({
    ...candidate,
    timing: atPixelClock(timing, (timing.pixelClockKHz * times) / over),
    rateHz: (rateHz * times) / over,
  });
  const [down, up] = [at(1000, 1001), at(1001, 1000)];
  return [candidate, ...(isWholeTwin(rateHz) ? [down] : []), ...(isWholeTwin(up.rateHz) ? [up] : [])];
}

function isWholeTwin(rateHz: number): boolean {
  return ratesWithTwin.some((whole) => Math.abs(rateHz / whole - 1) < 1e-4);
}

/** Of those within the tolerance the nearest, and all that run at the very rate and clock of it. */
function nearest(candidates: Candidate[] = [], rateHz: number, tolerance: number): Candidate[] {
  const distance = (candidate: Candidate): number => Math.abs(candidate.rateHz / rateHz - 1);
  const [first, ...others] = candidates
    .filter((candidate) => distance(candidate) <= tolerance)
    .sort((a, b) => distance(a) - distance(b));
  if (first === undefined) return [];
  const same = others.filter(
    ({ timing }) => Math.abs(timing.pixelClockKHz / first.timing.pixelClockKHz - 1) < 1e-9,
  );
  return [first, ...same].sort((a, b) => a.id - b.id);
}
