import type { Candidate } from './candidates.ts';
import type { Decision, Option } from './decision.ts';
import { modeNames, outside } from './failure-modes.ts';
import type { FaultModel } from './hypotheses.ts';
import { requiredQuietWatchMin, type WatchRecord } from './quiet-length.ts';
import { minutesNeeded, percent, times } from './wording.ts';

/** The likeliest component after one outcome of a test. */
export type After = { component: string; name: string; probability: number };
export type TestOutcomes = { first: After; second: After };

export type PlannedTest = {
  candidate: Candidate;
  /** What to do, as an order. */
  text: string;
  /** Chance of the first outcome: quiet, or the menu stayed. */
  firstChance: number;
  /** Minutes this test takes on average, set-up and putting back included. */
  testMin: number;
  /** Minutes to a culprit on average when this test comes next; a case that is handed on counts as `escalationMin`. */
  expectedMin: number;
  /** Minutes, or tries, to watch without the fault for `cleared`. */
  exposure: number;
  outcomes: TestOutcomes;
};

/** Who is the likeliest after each outcome. */
export function outcomesOf(model: FaultModel, decision: Decision, option: Option): TestOutcomes {
  const after = (chanceOf: (first: number) => number): After => {
    const sums = new Float64Array(decision.groups.length);
    let total = 0;
    for (const [at, chance] of decision.chances.entries()) {
      const joint = chance * chanceOf(option.first[at] ?? 0);
      const group = decision.groupOf[at] ?? 0;
      sums[group] = (sums[group] ?? 0) + joint;
      total += joint;
    }
    const likeliest = sums.indexOf(Math.max(...sums));
    const component = decision.groups[likeliest] ?? outside;
    const name = model.components.known.get(component)?.name ?? modeNames[outside];
    return { component, name, probability: (sums[likeliest] ?? 0) / total };
  };
  return { first: after((first) => first), second: after((first) => 1 - first) };
}

/** The advice in words: what to do, how long it takes, what either outcome will mean. */
export function testSentence({ candidate, text, testMin, outcomes, exposure }: PlannedTest): string {
  const isMenu = candidate.action.kind === 'menu';
  const [first, second] = isMenu
    ? ['If it stays', 'if it vanishes']
    : ['If the fault stays away', 'if it comes'];
  const { first: one, second: other } = outcomes;
  const meaning =
    one.component === other.component
      ? `${first}, ${one.name} is at ${percent(one.probability)}; ${second}, at ${percent(other.probability)}.`
      : `${first}, the likeliest is ${one.name} (${percent(one.probability)}); ${second}, ${other.name} (${percent(other.probability)}).`;
  const watch = isMenu ? '' : ` Quiet for ${minutesNeeded(exposure)} counts as cleared.`;
  return `${text} (about ${minutesNeeded(testMin)}). ${meaning}${watch}`;
}

/** Fewer occurrences than this make retests so long that watching for more pays; from the table of required watches. */
const goodBaseline = 3;

/** Why more watching before the first change saves time later; null when enough was seen, or with a trigger. */
export function moreBaselineAdvice(baseline: WatchRecord | null, risk: number): string | null {
  if (baseline?.mode !== 'time' || baseline.occurrences === 0 || baseline.occurrences >= goodBaseline)
    return null;
  const { occurrences, minutes } = baseline;
  const now = requiredQuietWatchMin(occurrences, minutes, risk);
  const later = requiredQuietWatchMin(goodBaseline, (minutes * goodBaseline) / occurrences, risk);
  if (now === null || later === null) return null;
  return `The fault was seen only ${times(occurrences)}, so every quiet retest takes ${minutesNeeded(now)}. Watch until it was seen ${goodBaseline} times first: at the same rate a retest then takes ${minutesNeeded(later)}.`;
}
