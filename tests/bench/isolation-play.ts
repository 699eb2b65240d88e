import { decisionOf } from '../../shared/isolation/build-decision.ts';
import { type Candidate, type ChangeOption, candidatesFor } from '../../shared/isolation/candidates.ts';
import type { Case, Result } from '../../shared/isolation/case.ts';
import type { Decision, Terms } from '../../shared/isolation/decision.ts';
import { outside } from '../../shared/isolation/failure-modes.ts';
import { faultTable } from '../../shared/isolation/fault-table.ts';
import { type FaultModel, faultModelOf } from '../../shared/isolation/hypotheses.ts';
import { defaultTerms } from '../../shared/isolation/plan.ts';
import { byComponent, posteriorOf } from '../../shared/isolation/posterior.ts';
import { recordsOf } from '../../shared/isolation/test-record.ts';
import type { Strategy } from './isolation-strategies.ts';
import { baselineOf, type World } from './isolation-world.ts';

export type Ending = {
  /** Minutes until the right culprit was named, or the case was handed on. */
  minutes: number;
  /** The first culprit that was named, with the chance it was given; null when the case was handed on before. */
  named: { right: boolean; chance: number } | null;
  tests: number;
};

export type Stage = { model: FaultModel; candidates: readonly Candidate[]; terms: Terms };

export function stageOf(facts: Case, changes: readonly ChangeOption[], stopAt: number): Stage {
  const model = faultModelOf(facts, faultTable);
  const terms = { ...defaultTerms, stopAt, baseline: baselineOf(facts), inPlace: null };
  return { model, candidates: candidatesFor(model, changes), terms };
}

/** Puts a case that was handed on, or ran on for more than this many tests, to an end. */
const mostTests = 60;

/**
 * Plays a strategy to the end. All strategies draw the same conclusions from what they see and name a culprit at the
 * same chance: they differ in nothing but what they do next. A wrong culprit is repaired, the fault comes back, and
 * the search goes on without that suspect.
 */
export function play({ model, candidates, terms }: Stage, world: World, strategy: Strategy): Ending {
  const results: Result[] = [];
  const cleared = new Set<string>();
  const outcomes = new Map<string, boolean>();
  let minutes = 0;
  let named: Ending['named'] = null;
  let goesOn: string | null = null;
  for (let tests = 0; tests < mostTests; tests += 1) {
    const chances = without(model, posteriorOf(model, results), cleared);
    const [likeliest = outside, chance = 0] = [...byComponent(model, chances)].reduce<[string, number]>(
      (best, each) => (each[1] > best[1] ? each : best),
      [outside, 0],
    );
    if (chance >= terms.stopAt) {
      if (likeliest === outside) return { minutes: minutes + terms.escalationMin, named, tests };
      const right = likeliest === world.truth.component;
      named ??= { right, chance };
      if (right) return { minutes, named, tests };
      minutes += world.untilBackMin();
      cleared.add(likeliest);
      continue;
    }
    const records = recordsOf(model.facts, results);
    // watching on right after a quiet retest costs no set-up
    const decision = decisionOf(model, chances, records, candidates, { ...terms, inPlace: goesOn });
    const option = strategy({ model, chances, decision, outcomes });
    if (option === null) return { minutes: minutes + terms.escalationMin, named, tests };
    const outcome = world.perform(option.candidate, option.exposure, goesOn === option.candidate.id);
    minutes += outcome.minutes;
    results.push(...outcome.results);
    const first = isFirst(outcome.results[0]);
    if (first !== null) outcomes.set(option.candidate.id, first);
    goesOn = first === true && option.candidate.action.kind === 'test' ? option.candidate.id : null;
  }
  return { minutes: minutes + terms.escalationMin, named, tests: mostTests };
}

function without(model: FaultModel, chances: readonly number[], cleared: ReadonlySet<string>): number[] {
  const left = chances.map((chance, at) => (cleared.has(model.hypotheses[at]?.component ?? '') ? 0 : chance));
  const total = left.reduce((sum, chance) => sum + chance, 0);
  return left.map((chance) => chance / total);
}

function isFirst(result: Result | undefined): boolean | null {
  if (result?.kind === 'menu') return result.answer === 'stayed';
  if (result?.kind !== 'test') return null;
  return result.watch.mode === 'time' ? result.watch.occurrences === 0 : result.watch.failures === 0;
}

export type { Decision };
