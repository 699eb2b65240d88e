import { changeCatalogue } from './change-catalogue.ts';
import type { TestKind } from './effect-table.ts';
import { type FaultRate, quietChance } from './fault-rate.ts';
import type { FaultTable } from './fault-table.ts';
import { figureOf } from './figures.ts';
import type { TestRecord } from './test-record.ts';

/**
 * Chance that the fault stays away with a change in place: because of what it changes, or by coincidence; and that the
 * change itself brings it on.
 */
export type Effect = { because: number; coincidence: number; provoked: number };

/**
 * Minutes or tries, by how the fault comes, in which a change that may bring it on is watched; null for every other
 * change, which is watched for as long as quiet takes to mean something.
 */
export function provokingExposure({ planning }: FaultTable, test: TestKind, mode: FaultRate['mode']) {
  const { provokingMin } = changeCatalogue[test];
  if (provokingMin === null) return null;
  return mode === 'trigger' || mode === 'look'
    ? Math.ceil(provokingMin / figureOf(planning.oneTry, 'minutes'))
    : provokingMin;
}

/** Chance that the fault stays away for either reason, 0..1. */
export const staysAway = ({ because, coincidence }: Omit<Effect, 'provoked'>): number =>
  because + (1 - because) * coincidence;

/**
 * What a change leaves of the rate of a fault that it is meant to keep away: some only thin it out. And while it is away,
 * something else is taken for it now and then, as a share of its rate.
 */
type Left = { thinsShare: number; thinned: number; mistaken: number };

function leftIn({ weighing }: FaultTable, mode: FaultRate['mode']): Left {
  // what is always there can't come more rarely
  const thinsShare = mode === 'look' ? 0 : figureOf(weighing.thins, 'share');
  return {
    thinsShare,
    thinned: figureOf(weighing.thins, 'left'),
    mistaken: figureOf(weighing.mistaken, 'share'),
  };
}

/** Chances, 0..1, of the courses that a change can take: the fault is away, thinned out, or as before. */
function coursesOf(effect: Effect, { thinsShare }: Left) {
  const thinned = effect.because * thinsShare;
  const away = staysAway(effect) - thinned;
  return { away, thinned, asBefore: 1 - away - thinned };
}

/** Chance, 0..1, that nothing is seen in a watch, by the course that the change has taken; and that it comes by itself. */
export type QuietByCourse = { left: Left; away: number; thinned: number; asBefore: number };

/** The same for a watch from so much quiet on to so much: what was quiet before counts in each. */
export function quietFor(table: FaultTable, rate: FaultRate, exposure: number): QuietByCourse {
  const left = leftIn(table, rate.mode);
  return {
    left,
    away: quietChance(rate, amountIn(rate, left.mistaken * exposure)),
    thinned: quietChance(rate, amountIn(rate, left.thinned * exposure)),
    asBefore: quietChance(rate, exposure),
  };
}

/** Chance that nothing is seen in a watch of a change, 0..1. */
export function quietWith(effect: Effect, quiet: QuietByCourse): number {
  const { away, thinned, asBefore } = coursesOf(effect, quiet.left);
  return (1 - effect.provoked) * (away * quiet.away + thinned * quiet.thinned + asBefore * quiet.asBefore);
}

/** Tries and looks are whole. */
const amountIn = ({ mode }: FaultRate, amount: number): number =>
  mode === 'time' ? amount : Math.round(amount);

/**
 * One way in which a test can have come out: its chance, and how much quiet with the fault there it takes. Below 0 for
 * watching that the rate was reckoned from, though the fault was not there in it as it was before.
 */
type Way = { chance: number; quiet: number };

/** In what ways a test can have come out as it did, under one hypothesis. @param rate with what was watched while the fault was there */
export function waysOf(table: FaultTable, rate: FaultRate, record: TestRecord): (effect: Effect) => Way[] {
  const left = leftIn(table, rate.mode);
  const provoking = provokingExposure(table, record.test, rate.mode);
  if (provoking !== null && !record.surelyAway && record.putBack === null) {
    const quiet = quietFor(table, rate, record.exposure > 0 ? record.exposure : provoking);
    return (effect) => {
      const chance = quietWith(effect, quiet);
      return [{ chance: record.seen ? 1 - chance : chance, quiet: 0 }];
    };
  }
  if (record.seen) return waysWhenSeen(rate, record, left);
  if (record.surelyAway) return (effect) => [{ chance: staysAway(effect), quiet: 0 }];
  const { quiet, putBack } = record;
  const amount = (share: number, of: number) => amountIn(rate, share * of);
  if (putBack === null)
    return (effect) => {
      const { away, thinned, asBefore } = coursesOf(effect, left);
      return [
        { chance: away, quiet: amount(left.mistaken, quiet) },
        { chance: thinned, quiet: amount(left.thinned, quiet) },
        { chance: asBefore, quiet },
      ];
    };
  const { returned, quiet: quietAfter } = putBack;
  return (effect) => {
    const { because, coincidence } = effect;
    const { thinned, asBefore } = coursesOf(effect, left);
    const byItself = (1 - because) * coincidence;
    const then = returned ? 0 : quietAfter;
    return [
      { chance: because - thinned, quiet: amount(left.mistaken, quiet) + then },
      { chance: thinned, quiet: amount(left.thinned, quiet) + then },
      ...(returned ? [] : [{ chance: byItself, quiet: amount(left.mistaken, quiet) }]),
      { chance: asBefore, quiet: quiet + then },
    ];
  };
}

/** The fault came in spite of the change: it does nothing about it, it thins it out, or something else was taken for it. */
function waysWhenSeen(rate: FaultRate, record: TestRecord, left: Left): (effect: Effect) => Way[] {
  const { occurrences, exposure, isInRate } = record;
  // an outcome that was told tells nothing of when it came
  if (exposure === 0) return (effect) => [{ chance: coursesOf(effect, left).asBefore, quiet: 0 }];
  const before = isInRate ? exposure : 0;
  const passed = rate.mode === 'time' ? exposure : exposure - occurrences;
  const way = (chance: number, share: number): Way => ({
    chance: chance * share ** occurrences,
    quiet: amountIn(rate, share * passed) - (before === 0 ? 0 : passed),
  });
  return (effect) => {
    const { away, thinned, asBefore } = coursesOf(effect, left);
    return [
      ...(away > 0 ? [way(away, left.mistaken)] : []),
      ...(thinned > 0 ? [way(thinned, left.thinned)] : []),
      way(asBefore, 1),
    ];
  };
}

/** As many combinations of ways share the rate; further tests are taken apart from it. */
const mostShared = 1024;
const mostSharedOfSeen = 81;

/** Chance of all tests together, 0..1: the rate of the fault is one, however often it was watched for. */
export function chanceOfWays(tests: readonly Way[][], rate: FaultRate): number {
  let spread: Way[] = [{ chance: 1, quiet: 0 }];
  let apart = 1;
  // those with long quiet first: they say most of the rate
  const inOrder = tests.toSorted((a, b) => quietest(b) - quietest(a));
  for (const ways of inOrder) {
    const most = quietest(ways) > 0 ? mostShared : mostSharedOfSeen;
    if (ways.length > 1 && spread.length * ways.length > most)
      apart *= ways.reduce((sum, way) => sum + way.chance * quietChance(rate, way.quiet), 0);
    else
      spread = spread.flatMap((before) =>
        ways.map((way) => ({ chance: before.chance * way.chance, quiet: before.quiet + way.quiet })),
      );
  }
  return apart * spread.reduce((sum, way) => sum + way.chance * quietChance(rate, way.quiet), 0);
}

const quietest = (ways: readonly Way[]): number => ways.at(-1)?.quiet ?? 0;
