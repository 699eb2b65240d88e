import { placeKey } from '../chain/place.ts';
import type { Place } from '../contract/chain.ts';
import type { OwnChange } from '../contract/own-change.ts';
import type { Case, Result, Trust } from './case.ts';
import { changeCatalogue, kindsCountedAs } from './change-catalogue.ts';
import type { TestKind } from './effect-table.ts';
import { exposureOf, type FaultRate, rateOf, seenIn, withWatch } from './fault-rate.ts';
import type { WatchRecord } from './quiet-length.ts';

/** Everything seen with one change in place, however many watches it took. */
export type TestRecord = {
  test: TestKind;
  target: Place;
  own: OwnChange | null;
  /** The fault came with the change in place. */
  seen: boolean;
  /** Minutes or tries, in the baseline's mode, in which it did not come; 0 once it was seen. */
  quiet: number;
  /** Minutes or tries watched in all, in the baseline's mode. */
  exposure: number;
  /** Known to be away, with no watch to doubt. */
  surelyAway: boolean;
  /** After the change was undone: minutes or tries without the fault, or that it came back. */
  putBack: { returned: boolean; quiet: number } | null;
};

export type Discounted = { trust: Trust } & Sorted;
type Sorted = Omit<Records, 'discounted' | 'rate'>;

export type Records = {
  tests: ReadonlyMap<string, TestRecord>;
  /** Occurrences with each device's menu up. */
  menus: ReadonlyMap<string, { stayed: number; vanished: number }>;
  facts: readonly Extract<Result, { kind: 'fact' }>[];
  readings: readonly Extract<Result, { kind: 'reading' }>[];
  witnesses: readonly Extract<Result, { kind: 'witness' }>[];
  /** What counts for less, apart: it keeps nothing from being tried again, and says nothing of how often the fault comes now. */
  discounted: readonly Discounted[];
  /** How often the fault comes, from the baseline and all watches in which it was there whatever the cause. */
  rate: FaultRate;
};

/** One text for one change at one place; of an organisation's own kinds, each is one. */
export const testKey = (test: TestKind, target: Place, own?: OwnChange | null): string =>
  own == null ? `${test} ${placeKey(target)}` : `${test} ${own.id} ${placeKey(target)}`;

/** Whether another change was made in the place and watched that does the same on the way. */
export function wasMadeWith(
  { tests }: Records,
  { test, target }: { test: TestKind; target: Place },
): boolean {
  return kindsCountedAs[test].some((kind) => tests.has(testKey(kind, target)));
}

type ResultOfChange = Extract<Result, { kind: 'test' | 'outcome' | 'putBack' }>;
const isOfChange = (result: Result): result is ResultOfChange =>
  ['test', 'outcome', 'putBack'].includes(result.kind);
type WatchResult = Extract<Result, { kind: 'test' | 'putBack' }>;
const hasWatch = (result: Result): result is WatchResult =>
  result.kind === 'test' || result.kind === 'putBack';

/** Sorts results into what was seen with each change, each menu, and facts; those that count for less apart. */
export function recordsOf(facts: Case, results: readonly Result[]): Records {
  const inFull = results.filter(({ trust }) => trust === undefined);
  const kinds = [...new Set(results.flatMap(({ trust }) => trust ?? []))];
  return {
    ...sorted(facts, inFull),
    discounted: kinds.map((trust) => ({
      trust,
      ...sorted(
        facts,
        results.filter((result) => result.trust === trust),
      ),
    })),
    rate: rateFrom(facts.baseline, inFull.filter(hasWatch)),
  };
}

const sorted = (facts: Case, results: readonly Result[]): Sorted => ({
  tests: testsIn(facts, results),
  menus: menusOf(results),
  facts: results.filter((result) => result.kind === 'fact'),
  readings: results.filter((result) => result.kind === 'reading'),
  witnesses: results.filter((result) => result.kind === 'witness'),
});

function testsIn(facts: Case, results: readonly Result[]): Map<string, TestRecord> {
  const tests = new Map<string, TestRecord>();
  for (const result of results) {
    if (!isOfChange(result)) continue;
    const { test, target, own = null } = result;
    const key = testKey(test, target, own);
    const before = tests.get(key) ?? {
      test,
      target,
      own,
      seen: false,
      quiet: 0,
      exposure: 0,
      surelyAway: false,
      putBack: null,
    };
    tests.set(key, recordWith(before, result, facts.baseline?.mode));
  }
  return tests;
}

function recordWith(
  record: TestRecord,
  result: ResultOfChange,
  mode: WatchRecord['mode'] | undefined,
): TestRecord {
  if (result.kind === 'outcome')
    return result.outcome === 'persists' ? { ...record, seen: true } : { ...record, surelyAway: true };
  const seen = seenIn(result.watch) > 0;
  // quiet in another mode than the fault was reproduced in says nothing
  const exposure = result.watch.mode === mode ? exposureOf(result.watch) : 0;
  const quiet = seen ? 0 : exposure;
  if (result.kind === 'test')
    return {
      ...record,
      seen: record.seen || seen,
      quiet: record.quiet + quiet,
      exposure: record.exposure + exposure,
    };
  const before = record.putBack ?? { returned: false, quiet: 0 };
  return { ...record, putBack: { returned: before.returned || seen, quiet: before.quiet + quiet } };
}

function menusOf(results: readonly Result[]): Records['menus'] {
  const menus = new Map<string, { stayed: number; vanished: number }>();
  for (const result of results) {
    if (result.kind !== 'menu') continue;
    const count = menus.get(result.deviceId) ?? { stayed: 0, vanished: 0 };
    menus.set(result.deviceId, { ...count, [result.answer]: count[result.answer] + 1 });
  }
  return menus;
}

/**
 * A change during which the fault came has no part in it, so all its watches tell how often the fault comes; unless it
 * may have brought it on.
 */
function rateFrom(baseline: WatchRecord | null, results: readonly WatchResult[]): FaultRate {
  const keyOf = (result: WatchResult) => `${result.kind} ${testKey(result.test, result.target, result.own)}`;
  const present = new Set(
    results
      .filter(({ test, watch }) => seenIn(watch) > 0 && changeCatalogue[test].provokingMin === null)
      .map(keyOf),
  );
  return results
    .filter((result) => present.has(keyOf(result)))
    .reduce((rate, { watch }) => withWatch(rate, watch), rateOf(baseline));
}
