import type { LogReading } from './reading.ts';

/** A stretch of true time in ms since 1970, `toMs` not before `fromMs`. */
export type StretchMs = { fromMs: number; toMs: number };

/** What the log covers, its gaps taken out, in order; empty where no line is tied to a time. */
export function coveredTime({ span, gaps }: LogReading): StretchMs[] {
  if (span === null) return [];
  const starts = [span.from, ...gaps.map((gap) => gap.to)];
  const ends = [...gaps.map((gap) => gap.from), span.to];
  return starts.map((from, index) => ({ fromMs: Date.parse(from), toMs: Date.parse(ends[index] as string) }));
}

/** What lies both in `stretches` (in order, apart) and in `within`. */
export function clipped(stretches: readonly StretchMs[], within: StretchMs): StretchMs[] {
  return stretches
    .map(({ fromMs, toMs }) => ({
      fromMs: Math.max(fromMs, within.fromMs),
      toMs: Math.min(toMs, within.toMs),
    }))
    .filter(({ fromMs, toMs }) => toMs > fromMs);
}

/** What is left of `stretches` when `taken` are cut out; both in order, `taken` may overlap. */
export function without(stretches: readonly StretchMs[], taken: readonly StretchMs[]): StretchMs[] {
  return stretches.flatMap(({ fromMs, toMs }) => {
    const left: StretchMs[] = [];
    let at = fromMs;
    for (const cut of taken) {
      if (cut.toMs <= at || cut.fromMs >= toMs) continue;
      if (cut.fromMs > at) left.push({ fromMs: at, toMs: cut.fromMs });
      at = cut.toMs;
    }
    if (at < toMs) left.push({ fromMs: at, toMs });
    return left;
  });
}

export function lengthMs(stretches: readonly StretchMs[]): number {
  return stretches.reduce((sum, { fromMs, toMs }) => sum + toMs - fromMs, 0);
}
