import { organisationDefaults } from '../../shared/contract/defaults.ts';
import { decisionOf } from '../../shared/isolation/build-decision.ts';
import { type Candidate, type ChangeOption, candidatesFor } from '../../shared/isolation/candidates.ts';
import type { Case, Result } from '../../shared/isolation/case.ts';
import { namingChance, type Option, type Terms, termsIn } from '../../shared/isolation/decision.ts';
import { outside } from '../../shared/isolation/failure-modes.ts';
import { seenIn } from '../../shared/isolation/fault-rate.ts';
import { faultTable } from '../../shared/isolation/fault-table.ts';
import { type FaultModel, faultModelOf } from '../../shared/isolation/hypotheses.ts';
import { byComponent, posteriorOf } from '../../shared/isolation/posterior.ts';
import { recordsOf } from '../../shared/isolation/test-record.ts';
import type { Step, Strategy } from './isolation-strategies.ts';
import { baselineOf, type World } from './isolation-world.ts';

export type Ending = {
  /** Minutes until the right culprit was named, or the case was handed on. */
  minutes: number;
  /** The first culprit that was named, with the chance it was given; null when the case was handed on before. */
  named: { right: boolean; chance: number } | null;
  tests: number;
};

export type Stage = { model: FaultModel; candidates: readonly Candidate[]; terms: Terms };
/** What a strategy did in a case before, by all that was known: it would do the same again. */
export type Habits = Map<string, { named: [string, number] } | { option: Option | null }>;

export function stageOf(facts: Case, changes: readonly ChangeOption[], stopAt: number): Stage {
  const model = faultModelOf(facts, faultTable);
  const { risk } = organisationDefaults;
  const terms = {
    risk,
    ...termsIn(faultTable),
    stopAt,
    baseline: baselineOf(facts),
    inPlace: null,
    wanted: [],
  };
  return { model, candidates: candidatesFor(model, changes), terms };
}

/** A case that runs on for more than this many tests or minutes is handed on. */
const mostTests = 60;
const mostMinutes = 10_000;

/**
 * Plays a strategy to the end. All strategies draw the same conclusions from what they see and name a culprit at the
 * same chance: they differ in nothing but what they do next. A wrong culprit is repaired, the fault comes back, and
 * the search goes on without that suspect.
 */
export function play(stage: Stage, world: World, strategy: Strategy, habits: Habits): Ending {
  const { terms } = stage;
  const results: Result[] = [];
  const steps: Step[] = [];
  const cleared = new Set<string>();
  let minutes = 0;
  let named: Ending['named'] = null;
  const handedOn = (): Ending => ({ minutes: minutes + terms.escalationMin, named, tests: steps.length });
  while (steps.length < mostTests) {
    const last = steps.at(-1);
    const inPlace = last?.first === true && !last.id.startsWith('menu') ? last.id : null;
    const key = JSON.stringify([results, [...cleared], steps]);
    const habit = habits.get(key) ?? nextMove(stage, strategy, results, steps, cleared, inPlace);
    habits.set(key, habit);
    if ('named' in habit) {
      const [likeliest, chance] = habit.named;
      if (likeliest === outside) return handedOn();
      const right = likeliest === world.truth.component;
      named ??= { right, chance };
      if (right) return { minutes, named, tests: steps.length };
      minutes += world.untilBackMin();
      cleared.add(likeliest);
      continue;
    }
    const { option } = habit;
    if (option === null) return handedOn();
    const { id } = option.candidate;
    const outcome = world.perform(option.candidate, option.exposure, inPlace === id);
    minutes += outcome.minutes;
    results.push(...outcome.results);
    const [result] = outcome.results;
    // a menu watched in vain is no step: nothing was learnt, and it may be watched again
    if (result !== undefined) steps.push({ id, goesOn: inPlace === id, first: cameOutFirst(result) });
    else if (minutes > mostMinutes) return handedOn();
  }
  return handedOn();
}

function nextMove(
  { model, candidates, terms }: Stage,
  strategy: Strategy,
  results: readonly Result[],
  steps: readonly Step[],
  cleared: ReadonlySet<string>,
  inPlace: string | null,
): { named: [string, number] } | { option: Option | null } {
  const chancesGiven = (seen: readonly Result[]) => without(model, posteriorOf(model, seen), cleared);
  const chances = chancesGiven(results);
  const likeliest = likeliestOf(model, chances);
  if (likeliest[1] >= namingChance(terms)) return { named: likeliest };
  const records = recordsOf(model.facts, results);
  const decision = decisionOf(model, chances, records, candidates, { ...terms, inPlace });
  const ahead = { model, results, candidates, terms, chancesGiven, isFirst: () => true };
  return { option: strategy({ model, decision, steps, ahead }) };
}

function likeliestOf(model: FaultModel, chances: readonly number[]): [string, number] {
  return [...byComponent(model, chances)].reduce<[string, number]>(
    (best, each) => (each[1] > best[1] ? each : best),
    [outside, 0],
  );
}

function without(model: FaultModel, chances: readonly number[], cleared: ReadonlySet<string>): number[] {
  const left = chances.map((chance, at) => (cleared.has(model.hypotheses[at]?.component ?? '') ? 0 : chance));
  const total = left.reduce((sum, chance) => sum + chance, 0);
  return left.map((chance) => chance / total);
}

function cameOutFirst(result: Result): boolean {
  if (result.kind === 'menu') return result.answer === 'stayed';
  return result.kind === 'test' && seenIn(result.watch) === 0;
}
