import type { Placed, Placement, Track } from './placement.ts';

/** A stretch in which lines follow one another closely, in places of one track. */
type Stretch = { track: Track; from: number; to: number; fromLine: number; toLine: number };

/** A stretch in true time, ms since 1970. */
export type Covered = { fromMs: number; toMs: number; fromLine: number; toLine: number };

export type ClockStep = { line: number; track: Track; from: number; to: number };

/** What counts as a hole in a log. All assumed. */
export type SilenceRule = {
  /** Silences below this are none, in seconds. */
  leastGapS: number;
  /** A silence is a gap when longer than this many of the spacings usual in the log. */
  timesUsual: number;
};
export const defaultSilenceRule: SilenceRule = { leastGapS: 60, timesUsual: 5 };

/** Which of the spacings of at least a second is the usual one: all but the longest twentieth are shorter. Assumed. */
const usualShare = 0.95;
/** With fewer spacings there is no telling what is usual: assumed. */
const fewestSpacings = 20;
/** Lines of several writers may come out of order by this much: assumed. */
const disorderMs = 60_000;
/** No silence but a clock being set is longer than this: assumed. */
const longestSilenceMs = 180 * 86_400_000;
const mostStretches = 4096;
const mostSteps = 100;
const bucketsPerOctave = 8;

export type SilenceKeeper = {
  /** Takes the place of the next stamped line. */
  note(placed: Placed, line: number): void;
  /** Silences longer than this are gaps, in ms. */
  thresholdMs(): number;
  /** What the log covers, in order of time, and its gaps between; stretches nothing ties to a moment are left out. */
  covered(momentMs: Placement['momentMs']): Covered[];
  steps(): { kept: readonly ClockStep[]; count: number };
};

/** Keeps track of where a log has lines and where it has none, in bounded memory. */
export function createSilenceKeeper(rule: SilenceRule = defaultSilenceRule): SilenceKeeper {
  let stretches: Stretch[] = [];
  const ends = new Map<Track, { stretch: Stretch; last: number }>();
  const spacings = new Float64Array(40 * bucketsPerOctave);
  let spacingCount = 0;
  let splitMs = rule.leastGapS * 1000;
  const steps: ClockStep[] = [];
  let stepCount = 0;

  const begin = ({ track, place }: Placed, line: number): void => {
    const stretch = { track, from: place, to: place, fromLine: line, toLine: line };
    ends.set(track, { stretch, last: place });
    stretches.push(stretch);
    while (stretches.length > mostStretches) {
      splitMs *= 2;
      stretches = mergeClose(stretches, splitMs);
      for (const end of ends.values()) {
        end.stretch = stretches.find((kept) => holds(kept, end.stretch)) ?? end.stretch;
      }
    }
  };
  const countSpacing = (spacingMs: number): void => {
    const bucket = bucketOf(spacingMs);
    spacings[bucket] = (spacings[bucket] as number) + 1;
    spacingCount += 1;
  };
  const noteStep = (from: number, placed: Placed, line: number): void => {
    if (placed.track === 'boot') return;
    stepCount += 1;
    if (steps.length < mostSteps) steps.push({ line, track: placed.track, from, to: placed.place });
  };
  const thresholdMs = (): number => {
    const usualMs = spacingCount < fewestSpacings ? 0 : quantileMs(spacings, spacingCount, usualShare);
    return Math.max(rule.timesUsual * usualMs, splitMs);
  };

  return {
    note(placed, line) {
      const end = ends.get(placed.track);
      if (end === undefined) return begin(placed, line);
      const spacingMs = placed.place - end.last;
      if (spacingMs < 0 && spacingMs >= -disorderMs) return;
      const isStep = spacingMs < 0 || spacingMs > longestSilenceMs;
      if (isStep) noteStep(end.last, placed, line);
      else if (spacingMs >= 1000) countSpacing(spacingMs);
      if (isStep || spacingMs >= splitMs) return begin(placed, line);
      end.last = placed.place;
      if (placed.place < end.stretch.to) return;
      end.stretch.to = placed.place;
      end.stretch.toLine = line;
    },
    thresholdMs,
    covered: (momentMs) => unionOf(stretches, momentMs, thresholdMs()),
    steps: () => ({ kept: steps, count: stepCount }),
  };
}

function bucketOf(spacingMs: number): number {
  return Math.floor(Math.log2(spacingMs / 1000) * bucketsPerOctave);
}

/** Upper edge of the bucket in which the quantile lies. */
function quantileMs(spacings: Float64Array, count: number, share: number): number {
  let seen = 0;
  for (let bucket = 0; bucket < spacings.length; bucket += 1) {
    seen += spacings[bucket] as number;
    if (seen >= share * count) return 1000 * 2 ** ((bucket + 1) / bucketsPerOctave);
  }
  return 0;
}

/** Joins what lies closer than `splitMs` to other stretches of its track. */
function mergeClose(stretches: readonly Stretch[], splitMs: number): Stretch[] {
  const sorted = stretches.toSorted((a, b) =>
    a.track === b.track ? a.from - b.from : a.track < b.track ? -1 : 1,
  );
  const merged: Stretch[] = [];
  for (const stretch of sorted) {
    const before = merged.at(-1);
    if (before === undefined || before.track !== stretch.track || stretch.from - before.to >= splitMs) {
      merged.push({ ...stretch });
    } else if (stretch.to > before.to) {
      before.to = stretch.to;
      before.toLine = stretch.toLine;
    }
  }
  return merged;
}

function holds(outer: Stretch, inner: Stretch): boolean {
  return outer.track === inner.track && outer.from <= inner.from && inner.to <= outer.to;
}

function unionOf(
  stretches: readonly Stretch[],
  momentMs: Placement['momentMs'],
  thresholdMs: number,
): Covered[] {
  const timed: Covered[] = [];
  for (const { track, from, to, fromLine, toLine } of stretches) {
    const fromMs = momentMs(track, from);
    const toMs = momentMs(track, to);
    if (fromMs !== null && toMs !== null) timed.push({ fromMs, toMs, fromLine, toLine });
  }
  timed.sort((a, b) => a.fromMs - b.fromMs || a.fromLine - b.fromLine);
  const merged: Covered[] = [];
  for (const stretch of timed) {
    const before = merged.at(-1);
    if (before === undefined || stretch.fromMs - before.toMs >= thresholdMs) {
      merged.push({ ...stretch });
    } else if (stretch.toMs > before.toMs) {
      before.toMs = stretch.toMs;
      before.toLine = stretch.toLine;
    }
  }
  return merged;
}
