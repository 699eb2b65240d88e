/** What a clock was off by at a moment that is known, in ms: told by the clock, and to be added to that. */
export type Anchor = { toldMs: number; skewMs: number };

/** Clocks of devices gain or lose at most so much; assumed: ten times what a plain quartz does. */
const mostDrift = 1e-3;
/** And a person reads a moment off within so many ms; assumed. */
const readWithinMs = 2000;
/** Beyond the moments that are known, a clock is taken to drift on by no more than this; common practice for a quartz: 100 ppm. */
const driftsOnBy = 1e-4;

/** Whether one clock can have been off like this at two moments without having been set in between. */
export const isDrift = (one: Anchor, other: Anchor): boolean =>
  Math.abs(one.skewMs - other.skewMs) <= readWithinMs + mostDrift * Math.abs(one.toldMs - other.toldMs);

/**
 * What has to be added to a clock at each moment that it tells: on a line between the moments that are known, beyond
 * them as it drifted last, within what clocks do. 0 where none is known.
 */
export function skewBetween(anchors: readonly Anchor[]): (toldMs: number) => number {
  const inOrder = anchors.toSorted((a, b) => a.toldMs - b.toldMs);
  const [first] = inOrder;
  const last = inOrder.at(-1);
  if (first === undefined || last === undefined) return () => 0;
  if (first === last) return () => first.skewMs;
  const beyond = (from: Anchor, before: Anchor, toldMs: number) =>
    from.skewMs + bounded(driftOf(before, from), driftsOnBy) * (toldMs - from.toldMs);
  return (toldMs) => {
    const at = inOrder.findIndex((each) => each.toldMs > toldMs);
    if (at === -1) return beyond(last, inOrder.at(-2) ?? first, toldMs);
    const [before, after] = [inOrder[at - 1], inOrder[at] ?? last];
    if (before === undefined) return beyond(first, inOrder[1] ?? last, toldMs);
    return before.skewMs + driftOf(before, after) * (toldMs - before.toldMs);
  };
}

const driftOf = (one: Anchor, other: Anchor): number =>
  one.toldMs === other.toldMs ? 0 : (other.skewMs - one.skewMs) / (other.toldMs - one.toldMs);

const bounded = (drift: number, most: number): number => Math.max(-most, Math.min(most, drift));
