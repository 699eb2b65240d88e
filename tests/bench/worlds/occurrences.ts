import type { Case } from '../../../shared/isolation/case.ts';
import { independentOf } from '../../../shared/isolation/rhythm.ts';
import { worldFigures as figures } from './figures.ts';
import type { WorldKind } from './worlds.ts';

export type Random = () => number;
export const exponential = (random: Random, mean: number): number => -Math.log(1 - random()) * mean;
export const between = (random: Random, [low, high]: readonly [number, number]): number =>
  low + random() * (high - low);
/** Standard normal (Box and Muller 1958, Ann. Math. Stat. 29). */
export const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** How a fault comes in one house. */
export type Rhythm =
  | { mode: 'trigger'; chance: number }
  | { mode: 'time'; perMin: number; bursts: boolean; warmAfterMin: number };

export function rhythmIn(kind: WorldKind, random: Random): Rhythm {
  if (random() < figures.triggerShare) return { mode: 'trigger', chance: between(random, figures.perTry) };
  const [low, high] = figures.perHour;
  const perHour = low * (high / low) ** random();
  return {
    mode: 'time',
    perMin: perHour / 60,
    bursts: random() < kind.bursts,
    warmAfterMin: random() < kind.warm ? between(random, figures.warm.afterMin) : 0,
  };
}

/** Minutes from the start of a watch at which the fault comes, given how long the devices have been on by then. */
export function timesIn(
  rhythm: Extract<Rhythm, { mode: 'time' }>,
  { lengthMin, onMin }: { lengthMin: number; onMin: number },
  random: Random,
): number[] {
  const times: number[] = [];
  const from = Math.max(0, rhythm.warmAfterMin - onMin);
  for (
    let start = from + exponential(random, 1 / rhythm.perMin);
    start < lengthMin;
    start += exponential(random, 1 / rhythm.perMin)
  ) {
    times.push(start);
    if (!rhythm.bursts) continue;
    for (
      let at = start + exponential(random, figures.burst.afterMin);
      random() < figures.burst.follows && at < lengthMin;
      at += exponential(random, figures.burst.afterMin)
    )
      times.push(at);
  }
  return times.toSorted((a, b) => a - b);
}

export type Reproduced = {
  baseline: NonNullable<Case['baseline']>;
  pattern: Case['symptom']['pattern'];
};

/** Reproduces the fault; null where it did not come in the time that a visit has. */
export function reproduce(kind: WorldKind, rhythm: Rhythm, random: Random) {
  const { wanted, mostMin, mostTries } = figures.baseline;
  const isMissed = () => kind.observersErr && random() < figures.errors.missed;
  if (rhythm.mode === 'trigger') {
    let [tries, failures] = [0, 0];
    while (tries < mostTries && failures < wanted) {
      tries += 1;
      if (random() < rhythm.chance && !isMissed()) failures += 1;
    }
    const baseline = { mode: 'trigger' as const, tries, failures };
    const pattern = { kind: 'notKnown' } as const;
    return failures === 0 ? null : ({ baseline, pattern } satisfies Reproduced);
  }
  const seen = timesIn(rhythm, { lengthMin: mostMin, onMin: 0 }, random).filter(() => !isMissed());
  const first = seen.slice(0, wanted);
  if (first.length === 0) return null;
  const minutes = first.length === wanted ? (first.at(-1) ?? mostMin) : mostMin;
  const isTold = rhythm.warmAfterMin > 0 && random() < figures.warm.told;
  const pattern: Reproduced['pattern'] = isTold
    ? { kind: 'warm', afterMin: Math.round(rhythm.warmAfterMin) }
    : { kind: 'notKnown' };
  // The rate of a fault that comes once warm begins when it is warm; the ticket reckons so too, where it is told.
  const cold = isTold ? Math.min(rhythm.warmAfterMin, (first[0] ?? 0) - 1e-6) : 0;
  const watched = Math.max(1, minutes - cold);
  const independent = independentOf(
    first.map((at) => at - cold),
    watched,
    pattern.kind,
  );
  return {
    baseline: { mode: 'time' as const, minutes: watched, occurrences: first.length, independent },
    pattern,
  } satisfies Reproduced;
}
