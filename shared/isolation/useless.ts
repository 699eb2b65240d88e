import { decisionOf } from './build-decision.ts';
import type { Candidate } from './candidates.ts';
import type { Result } from './case.ts';
import type { Decision, Option, Terms } from './decision.ts';
import { namingChance, watchedIn } from './decision.ts';
import { outside } from './failure-modes.ts';
import type { FaultModel } from './hypotheses.ts';
import { byComponent } from './posterior.ts';
import type { WatchRecord } from './quiet-length.ts';
import { glance, nearTie, rank } from './rank.ts';
import { branchesOf, type Ranked, startOf } from './search-state.ts';
import { recordsOf } from './test-record.ts';
import { type WorkMeter, workLimits } from './work.ts';

/** What is needed to plan on once a test has come out. */
export type Ahead = {
  model: FaultModel;
  /** What was seen so far. */
  results: readonly Result[];
  candidates: readonly Candidate[];
  terms: Terms;
  /** The chance of each hypothesis of the model, given what was seen. */
  chancesGiven: (results: readonly Result[]) => readonly number[];
  isFirst: (option: Option) => boolean;
  /** Counts what is weighed. */
  meter?: WorkMeter | undefined;
};

/** What an outcome leads to: the next candidate by its id, a culprit, or the end of what is worth doing. */
type Then = { kind: 'test'; id: string } | { kind: 'culprit'; component: string } | { kind: 'end' };

/**
 * The order without tests at its head of which every outcome leads to the same next step: that step would be taken
 * anyhow, so it comes first, and what the test would have told may never be needed. Only a test that leaves the same
 * suspect the likeliest can be such a one; the repair itself never is. Where one outcome alone leads to a step that is as
 * good, as far as can be known, that step comes first too. Where all are of no use to each other the order stays: there is
 * always something to do.
 */
export function withoutUseless(decision: Decision, ranked: readonly Ranked[], ahead: Ahead): Ranked[] {
  const useless = new Set<string>();
  const putBehind = new Set<string>();
  let left = [...ranked];
  let looks = Math.max(1, Math.floor(workLimits.lookingAhead / workAhead(decision, ahead)));
  for (let [head] = left; head !== undefined; [head] = left) {
    const thens = looks > 0 ? thensOf(decision, head.option, ahead) : null;
    if (thens === null) return left;
    looks -= 1;
    const { id } = head.option.candidate;
    const same = sameOf(thens);
    if (same === null) {
      const asGood = asGoodAs(head, left, thens);
      if (asGood === undefined || putBehind.has(asGood.option.candidate.id)) return left;
      putBehind.add(id);
      left = [asGood, ...left.filter((each) => each !== asGood)];
      continue;
    }
    useless.add(id);
    left = left.filter(({ option }) => option.candidate.id !== id);
    if (same.kind !== 'test' || useless.has(same.id)) continue;
    const isIt = (option: Option) => option.candidate.id === same.id && option.after === -1;
    const step =
      left.find(({ option }) => isIt(option)) ??
      rank(decision, (option) => isIt(option) && ahead.isFirst(option))[0];
    if (step !== undefined) left = [step, ...left.filter(({ option }) => option !== step.option)];
  }
  return [...ranked];
}

/** A step that look-ahead finds as good as the head, and that would come after it anyhow. */
const asGoodAs = (head: Ranked, left: readonly Ranked[], thens: readonly Then[]): Ranked | undefined =>
  left.find(
    (each) =>
      each !== head &&
      each.option.after === -1 &&
      each.expectedMin <= nearTie * head.expectedMin &&
      thens.some((then) => then.kind === 'test' && then.id === each.option.candidate.id),
  );

/** Units that looking ahead of one test takes: both of its outcomes, and all options after each. */
const workAhead = ({ options }: Decision, { model }: Ahead): number =>
  Math.max(1, 2 * options.length * model.hypotheses.length);

/** What every outcome of a test leads to; null where they lead to different things, or it is the repair. */
export function thenOfAll(decision: Decision, option: Option, ahead: Ahead): Then | null {
  const thens = thensOf(decision, option, ahead);
  return thens === null ? null : sameOf(thens);
}

const sameOf = ([quiet, seen]: readonly [Then, Then]): Then | null => (isSame(quiet, seen) ? quiet : null);

/** What the outcomes of a test lead to: it stays away, or the menu stays; it comes. Null for one that is looked at no further. */
function thensOf(decision: Decision, option: Option, ahead: Ahead): [Then, Then] | null {
  if (option.isRepair || partsSuspects(decision, option)) return null;
  ahead.meter?.add(workAhead(decision, ahead));
  const candidates = [...new Set(decision.options.map(({ candidate }) => candidate))];
  const among = { ...ahead, candidates };
  const [quiet, seen] = outcomesOf(option, ahead.terms);
  return [thenOf([...ahead.results, quiet], among), thenOf([...ahead.results, seen], among)];
}

/** Whether another suspect is the likeliest after one outcome than after the other, or one of them can't come. */
function partsSuspects(decision: Decision, option: Option): boolean {
  const branches = branchesOf(decision, startOf(decision), decision.options.indexOf(option));
  const likeliest = branches.map(({ state: { chances } }) => {
    const sums = new Float64Array(decision.groups.length);
    for (const [at, chance] of chances.entries()) {
      const group = decision.groupOf[at] ?? 0;
      sums[group] = (sums[group] ?? 0) + chance;
    }
    return sums.indexOf(Math.max(...sums));
  });
  return likeliest.length < 2 || likeliest[0] !== likeliest[1];
}

/** What would be noted of a test, if it came out in each of its two ways. */
function outcomesOf(option: Option, terms: Terms): [Result, Result] {
  const { candidate, exposure } = option;
  const { action } = candidate;
  if (action.kind === 'menu')
    return [answered(action.deviceId, 'stayed'), answered(action.deviceId, 'vanished')];
  const { mode } = terms.baseline;
  const untilSeenMin = Math.max(1, watchedIn(option).seenMin);
  const untilSeen = mode === 'time' ? untilSeenMin : Math.ceil(untilSeenMin / terms.minutesPerTry);
  const { test, target, own = null } = action;
  const watched = (watch: WatchRecord): Result => ({ kind: 'test', test, target, own, watch });
  return [watched(watchOf(mode, exposure, 0)), watched(watchOf(mode, Math.min(exposure, untilSeen), 1))];
}

const answered = (deviceId: string, answer: 'stayed' | 'vanished'): Result => ({
  kind: 'menu',
  deviceId,
  answer,
});

function watchOf(mode: WatchRecord['mode'], exposure: number, seen: 0 | 1): WatchRecord {
  switch (mode) {
    case 'time':
      return { mode, minutes: exposure, occurrences: seen };
    case 'trigger':
      return { mode, tries: Math.max(1, Math.ceil(exposure)), failures: seen };
    case 'look':
      return { mode, looks: Math.max(1, Math.ceil(exposure)), bad: seen };
  }
}

function thenOf(results: readonly Result[], ahead: Ahead): Then {
  const { model, candidates, terms, chancesGiven, isFirst } = ahead;
  const chances = chancesGiven(results);
  const [component, chance] = [...byComponent(model, chances)].reduce<[string, number]>(
    (best, each) => (each[1] > best[1] ? each : best),
    [outside, 0],
  );
  if (chance >= namingChance(terms)) return { kind: 'culprit', component };
  const decision = decisionOf(model, chances, recordsOf(model.facts, results), candidates, terms);
  const [best] = rank(decision, isFirst, glance);
  return best === undefined || best.expectedMin >= terms.escalationMin
    ? { kind: 'end' }
    : { kind: 'test', id: best.option.candidate.id };
}

const isSame = (one: Then, other: Then): boolean => JSON.stringify(one) === JSON.stringify(other);
