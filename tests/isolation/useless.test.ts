import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decisionOf } from '../../shared/isolation/build-decision.ts';
import { candidatesFor } from '../../shared/isolation/candidates.ts';
import { faultTable } from '../../shared/isolation/fault-table.ts';
import {
  type Case,
  planNext,
  type Result,
  standingOf,
  type WatchRecord,
} from '../../shared/isolation/index.ts';
import { provokingExposure } from '../../shared/isolation/likelihood.ts';
import { termsOf } from '../../shared/isolation/plan.ts';
import type { PlannedTest } from '../../shared/isolation/plan-wording.ts';
import { posteriorOf } from '../../shared/isolation/posterior.ts';
import { nearTie, rank } from '../../shared/isolation/rank.ts';
import { recordsOf } from '../../shared/isolation/test-record.ts';
import { thenOfAll, withoutUseless } from '../../shared/isolation/useless.ts';
import { caseOn } from '../bench/isolation-cases.ts';
import { benchChains, changesOn } from '../bench/isolation-chains.ts';

const chainOf = (size: number) => {
  const chain = benchChains[size]?.();
  if (chain === undefined) throw new Error('No such chain.');
  return chain;
};
const inputOf = (facts: Case) => ({
  facts,
  changes: changesOn(facts.chain),
  here: { kit: null, people: 2 as const, refused: [] },
  inPlace: null,
});
const nextOf = (facts: Case): PlannedTest | null => {
  const { advice } = planNext(inputOf(facts));
  return advice.kind === 'test' ? advice.next : null;
};

/** Minutes from one occurrence to the next, as a technician notes one that comes. */
const seenAfterMin = 9;

/** What is noted of a test that came out in each of its two ways, in what the fault is counted in. */
function resultsOf(facts: Case, { candidate: { action }, quiet }: PlannedTest): [Result, Result] {
  if (action.kind === 'menu') {
    const answered = (answer: 'stayed' | 'vanished'): Result => ({
      kind: 'menu',
      deviceId: action.deviceId,
      answer,
    });
    return [answered('stayed'), answered('vanished')];
  }
  const { test, target } = action;
  const { mode } = termsOf(inputOf(facts)).baseline;
  // What may bring the fault on is watched for as long as that takes, and no longer.
  const amount = Math.ceil(quiet?.amount ?? provokingExposure(faultTable, test, mode) ?? 1);
  const watched = (seen: 0 | 1): Result => ({
    kind: 'test',
    test,
    target,
    watch: watchOf(mode, seen === 0 ? amount : Math.min(amount, mode === 'time' ? seenAfterMin : 1), seen),
  });
  return [watched(0), watched(1)];
}

function watchOf(mode: WatchRecord['mode'], amount: number, seen: 0 | 1): WatchRecord {
  switch (mode) {
    case 'time':
      return { mode, minutes: amount, occurrences: seen };
    case 'trigger':
      return { mode, tries: amount, failures: seen };
    case 'look':
      return { mode, looks: amount, bad: seen };
  }
}

/** A case some tests on, each of which came out as chance has it. */
function later(facts: Case, outcomes: readonly boolean[]): Case {
  const results = [...facts.results];
  for (const isFirst of outcomes) {
    const next = nextOf({ ...facts, results });
    if (next !== null) results.push(resultsOf({ ...facts, results }, next)[isFirst ? 0 : 1]);
  }
  return { ...facts, results };
}

const anyCase = fc
  .record({
    size: fc.constantFrom(4, 6, 8, 12),
    seed: fc.integer({ min: 1, max: 400 }),
    outcomes: fc.array(fc.boolean(), { maxLength: 3 }),
  })
  .map(({ size, seed, outcomes }) => later(caseOn(chainOf(size), seed), outcomes));

/** The order as look-ahead has it, and without what is of no use. */
function orders(facts: Case) {
  const { model, chances } = standingOf(facts);
  const input = inputOf(facts);
  const terms = termsOf(input);
  const candidates = candidatesFor(model, input.changes);
  const decision = decisionOf(model, chances, recordsOf(facts, facts.results), candidates, terms);
  const ahead = {
    model,
    results: facts.results,
    candidates,
    terms,
    chancesGiven: (results: readonly Result[]) => posteriorOf(model, results),
    isFirst: () => true,
  };
  const ranked = rank(decision);
  return { decision, ahead, ranked, useful: withoutUseless(decision, ranked, ahead) };
}

describe('a test whose answers all lead to the same next step', () => {
  it('is not what comes next, unless every other is of no more use; something is always left', () => {
    fc.assert(
      fc.property(anyCase, (facts) => {
        const { decision, ahead, ranked, useful } = orders(facts);
        expect(useful.length > 0).toBe(ranked.length > 0);
        const [head] = useful;
        if (head === undefined) return;
        const same = thenOfAll(decision, head.option, ahead);
        if (same === null) return;
        expect(useful).toEqual(ranked);
        for (const { option } of ranked) expect(thenOfAll(decision, option, ahead)).not.toBeNull();
      }),
      { numRuns: 40 },
    );
  });

  it('would else come next now and then: the head of the order is such a one in some cases', () => {
    const moved = [4, 6, 8].flatMap((size) =>
      Array.from({ length: 40 }, (_, at) =>
        later(caseOn(chainOf(size), at + 1), [at % 2 === 0, at % 3 === 0]),
      ),
    );
    const changed = moved.filter((facts) => {
      const { ranked, useful } = orders(facts);
      return ranked[0]?.option !== useful[0]?.option;
    });
    expect(changed.length).toBeGreaterThan(0);
    for (const facts of changed) {
      const { decision, ahead, ranked, useful } = orders(facts);
      const [[head], [first]] = [ranked, useful];
      if (head === undefined || first === undefined) throw new Error('Nothing was ranked.');
      const isUseless = thenOfAll(decision, head.option, ahead) !== null;
      expect(isUseless || first.expectedMin <= nearTie * head.expectedMin).toBe(true);
      expect(head.option.isRepair).toBe(false);
    }
  });

  it('is hardly ever proposed where each answer is planned on in full: in less than a tenth of those that move one suspect', () => {
    const cases = [4, 6, 8, 12].flatMap((size) =>
      Array.from({ length: 40 }, (_, at) => later(caseOn(chainOf(size), at + 1), [at % 2 === 0])),
    );
    const proposals = cases.flatMap((facts) => {
      const next = nextOf(facts);
      if (next === null || next.outcomes.first.component !== next.outcomes.second.component) return [];
      const [one, other] = resultsOf(facts, next).map(
        (result) => nextOf({ ...facts, results: [...facts.results, result] })?.candidate.id ?? 'none',
      );
      return [one !== 'none' && one === other];
    });
    expect(proposals.length).toBeGreaterThan(3);
    expect(proposals.filter((isSame) => isSame).length / proposals.length).toBeLessThan(0.1);
  });
});
