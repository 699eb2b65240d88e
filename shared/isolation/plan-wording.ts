import { type Message, message } from '../message/message.ts';
import type { NamedPlace } from '../message/values.ts';
import type { Candidate } from './candidates.ts';
import { type ComponentKey, namedComponent } from './components.ts';
import type { Decision, Option } from './decision.ts';
import { type FailureMode, modeMessages, outside } from './failure-modes.ts';
import type { FaultModel } from './hypotheses.ts';
import { goodBaseline, requiredQuietAfter, requiredQuietWatchMin, type WatchRecord } from './quiet-length.ts';

/** The likeliest component after one outcome of a test. */
export type After = { component: ComponentKey | typeof outside; named: NamedPlace; probability: number };
export type TestOutcomes = { first: After; second: After };

export type PlannedTest = {
  candidate: Candidate;
  /** What to do, as an order without a full stop. */
  text: Message;
  /** Chance of the first outcome: quiet, or the menu stayed. */
  firstChance: number;
  /** Why this one. */
  why: Message;
  /** Minutes this test takes on average, set-up and putting back included. */
  testMin: number;
  /** Those minutes by what they go on; a watch that runs has no set-up. The watch is the average, see `quiet`. */
  minutes: { setup: number; watch: number; restore: number };
  /** Minutes to a culprit on average when this test comes next; a case that is handed on counts as `escalationMin`. */
  expectedMin: number;
  /** Minutes, or tries, to watch without the fault for `cleared`; null where the first occurrence answers. */
  quiet: { mode: WatchRecord['mode']; amount: number } | null;
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
    const named = namedComponent(model.components, component);
    return { component, named, probability: (sums[likeliest] ?? 0) / total };
  };
  return { first: after((first) => first), second: after((first) => 1 - first) };
}

/** The advice in words: what to do, how long it takes, what either outcome will mean. */
export function testSentences({ candidate, text, testMin, outcomes, quiet }: PlannedTest): Message[] {
  const isMenu = candidate.action.kind === 'menu';
  return [
    message('testTakes', { test: text, minutes: testMin }),
    meaningOf(outcomes, isMenu),
    ...(quiet === null ? [] : [quietCounts(quiet)]),
  ];
}

function meaningOf({ first, second }: TestOutcomes, isMenu: boolean): Message {
  const one = { place: first.named, probability: first.probability, otherProbability: second.probability };
  if (first.component === second.component)
    return message(isMenu ? 'menuMovesOneSuspect' : 'faultMovesOneSuspect', one);
  return message(isMenu ? 'menuPartsSuspects' : 'faultPartsSuspects', { ...one, other: second.named });
}

function quietCounts({ mode, amount }: NonNullable<PlannedTest['quiet']>): Message {
  switch (mode) {
    case 'time':
      return message('quietMinutesClear', { minutes: amount });
    case 'trigger':
      return message('quietTriesClear', { tries: Math.ceil(amount) });
    case 'look':
      return message('goodLooksClear', { looks: Math.ceil(amount) });
  }
}

/** What is needed to say why a test comes next. */
type Reasoned = Pick<PlannedTest, 'candidate' | 'outcomes' | 'expectedMin'>;

/** Why a test is worth its time, as a colleague would say it. */
export function whyNext({ candidate, outcomes, expectedMin }: Reasoned, nameAt: number): Message {
  const gain = gainOf(outcomes, nameAt);
  return whyThen(message(gentlyGains(candidate), { gain }), expectedMin);
}

/** Why to go on with what is in place. */
export const whyGoOn = (expectedMin: number): Message => whyThen(message('inPlaceAlready'), expectedMin);

const whyThen = (why: Message, minutes: number): Message =>
  message('sentences', { sentences: [why, message('minutesToCulprit', { minutes })] });

function gentlyGains({ action, kit }: Candidate) {
  if (action.kind === 'menu') return 'nothingTouchedAndGains';
  return action.test === 'otherSource' && kit.length === 0 ? 'nothingUnpluggedAndGains' : 'gains';
}

function gainOf({ first, second }: TestOutcomes, nameAt: number): Message {
  const sure = [first, second].find(({ probability }) => probability >= nameAt);
  if (sure !== undefined)
    return message('oneAnswerSettles', { place: sure.named, probability: sure.probability });
  if (first.component !== second.component)
    return message('partsSuspects', { place: first.named, other: second.named });
  const [down = 0, up = 0] = [first.probability, second.probability].toSorted((a, b) => a - b);
  return message('movesOneSuspect', { place: first.named, up, down });
}

/** What puts a failure mode right. */
const repairs: Readonly<Record<FailureMode, Message>> = {
  bandwidth: message('repairForRate'),
  contact: message('repairPlugs'),
  coupling: message('repairCoupler'),
  direction: message('repairDirection'),
  linkPower: message('repairLinkPower'),
  portMode: message('repairPortMode'),
  edid: message('repairEdid'),
  contentProtection: message('repairContentProtection'),
  firmware: message('repairFirmware'),
  powerOrHeat: message('repairPowerOrHeat'),
  processing: message('repairProcessing'),
  setting: message('repairSetting'),
  latched: message('repairLatched'),
  controlBus: message('repairControlBus'),
  fiveVolt: message('repairFiveVolt'),
  contentDependent: message('repairCertainContent'),
  wakeOrder: message('repairWakeOrder'),
  controlSystem: message('repairControlSystem'),
  disturbance: message('repairDisturbance'),
  earthLoop: message('repairEarthLoop'),
  outside: message('handToSecondLine'),
};

/** Names the culprit, and says what to do about it. */
export const culpritIs = (place: NamedPlace, probability: number, mode: FailureMode): Message =>
  message('culpritIs', { place, probability, failure: modeMessages[mode], repair: repairs[mode] });

/** Why more watching before the first change saves time later; null when enough was seen, or with a trigger. */
export function moreBaselineAdvice(baseline: WatchRecord | null, risk: number): Message | null {
  if (baseline?.mode !== 'time' || baseline.occurrences === 0 || baseline.occurrences >= goodBaseline)
    return null;
  const { occurrences: seen, minutes } = baseline;
  const retestMin = requiredQuietAfter(baseline, risk);
  const thenRetestMin = requiredQuietWatchMin(goodBaseline, (minutes * goodBaseline) / seen, risk);
  if (retestMin === null || thenRetestMin === null) return null;
  return message('watchForMoreFirst', { seen, retestMin, enough: goodBaseline, thenRetestMin });
}
