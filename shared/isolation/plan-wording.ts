import type { Candidate } from './candidates.ts';
import type { Decision, Option } from './decision.ts';
import { type FailureMode, modeNames, outside } from './failure-modes.ts';
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
  /** Why this one, in a sentence. */
  why: string;
  /** Minutes this test takes on average, set-up and putting back included. */
  testMin: number;
  /** Those minutes by what they go on; a watch that runs has no set-up. The watch is the average, see `exposure`. */
  minutes: { setup: number; watch: number; restore: number };
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

/** What is needed to say why a test comes next. */
type Reasoned = Pick<PlannedTest, 'candidate' | 'firstChance' | 'outcomes' | 'expectedMin' | 'minutes'>;

/** Why a test is worth its time, as a colleague would say it. */
export function whySentence(test: Reasoned, isRunning: boolean, nameAt: number): string {
  const { candidate, outcomes, expectedMin } = test;
  const after = `From here it takes about ${minutesNeeded(expectedMin)} to a culprit on average.`;
  if (isRunning)
    return `It is in place already, so nothing but the rest of the watch is to be paid for. ${after}`;
  const reason = `${gentleness(candidate)}${gainOf(outcomes, nameAt)}`;
  return `${reason.charAt(0).toUpperCase()}${reason.slice(1)}. ${after}`;
}

function gentleness({ action, kit }: Candidate): string {
  if (action.kind === 'menu') return 'Nothing is touched, and ';
  if (action.test === 'otherSource' && kit.length === 0) return 'Nothing is unplugged, and ';
  return '';
}

function gainOf({ first, second }: TestOutcomes, nameAt: number): string {
  const sure = [first, second].find(({ probability }) => probability >= nameAt);
  if (sure !== undefined)
    return `one of its two answers settles it: ${sure.name} (${percent(sure.probability)})`;
  if (first.component === second.component)
    return `it takes ${first.name} to ${percent(Math.max(first.probability, second.probability))} or down to ${percent(Math.min(first.probability, second.probability))}`;
  return `it parts ${first.name} from ${second.name}`;
}

/** What puts a failure mode right, as an order; common practice. */
const repairs: Record<FailureMode, string> = {
  bandwidth: 'replace it by one that is certified for the rate and no longer than needed',
  contact: 'clean and reseat both its plugs, and replace it if the fault comes back',
  direction: 'lay it the right way round',
  linkPower: 'give its electronics the power that they ask for, or replace it',
  portMode: 'set its port to the mode that the format needs',
  edid: 'restore its EDID settings, or have it pass on the display’s EDID as it is',
  contentProtection: 'set its ports to the content protection that the source asks for, or replace it',
  firmware: 'update its firmware, by the maker’s instructions and without a break in the mains',
  powerOrHeat: 'see to its ventilation and power supply; leave mains wiring to a licensed electrician',
  processing: 'switch off the processing that does it, or restore its settings',
  fiveVolt: 'put a switch that regenerates sync behind it, or have its output repaired',
  contentDependent: 'update its firmware, or limit its output to what passes',
  outside: 'hand it to second line',
};

/** Names the culprit, and says what to do about it. */
export function culpritSentence(name: string, probability: number, mode: FailureMode): string {
  return `It is ${name} (${percent(probability)}), most likely ${modeNames[mode]}. Put the suspect back, see the fault return, then ${repairs[mode]}; watch once more after the repair.`;
}

/** Fewer occurrences than this make retests so long that watching for more pays; from the table of required watches. */
export const goodBaseline = 3;

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
