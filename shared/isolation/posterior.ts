import { namedPlace } from '../chain/named-place.ts';
import type { Place } from '../contract/chain.ts';
import { type Message, message } from '../message/message.ts';
import { namedChange } from '../message/named-change.ts';
import type { Result, Trust } from './case.ts';
import { type ComponentKey, namedComponent } from './components.ts';
import type { FactKind } from './effect-table.ts';
import { type FailureMode, modeMessages, type outside } from './failure-modes.ts';
import { seenIn } from './fault-rate.ts';
import { figureOf } from './figures.ts';
import { type FaultModel, normalised } from './hypotheses.ts';
import { likelihoodsOf } from './likelihood.ts';
import type { WatchRecord } from './quiet-length.ts';
import { recordsOf } from './test-record.ts';

/** What one thing known did to the odds of a suspect: 10 decibans are a factor of ten, minus is against it. */
export type Contribution = { text: Message; decibans: number };

/** A component that can still be at fault. */
export type Suspect = {
  /** Null for something outside the model. */
  place: Place | null;
  component: ComponentKey | typeof outside;
  name: Message;
  /** 0..1; those of all suspects add up to 1. */
  probability: number;
  /** The ways in which it can fail, the likeliest first; their probabilities add up to that of the suspect. */
  modes: { mode: FailureMode; name: Message; probability: number }[];
  /** What raised or lowered it, in the order in which it became known; effects under half a deciban are left out. */
  because: Contribution[];
};

/** Chance of each hypothesis of the model after these results, 0..1, in the model's order; they add up to 1. */
export function posteriorOf(model: FaultModel, results: readonly Result[] = model.facts.results): number[] {
  const likelihoods = likelihoodsOf(model, recordsOf(model.facts, results));
  return normalised(model.prior.map((chance, at) => chance * (likelihoods[at] ?? 0)));
}

/** Sums a figure per hypothesis over the components of the model. */
export function byComponent(model: FaultModel, chances: readonly number[]): Map<string, number> {
  const sums = new Map<string, number>();
  for (const [at, { component }] of model.hypotheses.entries())
    sums.set(component, (sums.get(component) ?? 0) + (chances[at] ?? 0));
  return sums;
}

/** All suspects, the likeliest first, each with what speaks for and against it. */
export function suspectsOf(model: FaultModel): Suspect[] {
  const { results } = model.facts;
  const stages = [...priorStages(model), ...resultStages(model, results)];
  const modes = modesOf(model, stages.at(-1)?.chances ?? model.prior);
  const components = [...model.hypothesesAt];
  const sums = stages.map(({ chances }) =>
    components.map(([, places]) => places.reduce((sum, at) => sum + (chances[at] ?? 0), 0)),
  );
  const decibans = sums.map((each) => each.map(decibansOf));
  return components
    .map(([component], number): Suspect => {
      const known = model.components.known.get(component);
      return {
        place: known?.place ?? null,
        component,
        name: message('suspect', { place: namedComponent(model.components, component) }),
        probability: sums.at(-1)?.[number] ?? 0,
        modes: modes.get(component) ?? [],
        because: stages.flatMap(({ text }, at): Contribution[] => {
          if (text === null) return [];
          const change = (decibans[at]?.[number] ?? 0) - (decibans[at - 1]?.[number] ?? 0);
          return Math.abs(change) < 0.5 ? [] : [{ text, decibans: change }];
        }),
      };
    })
    .sort((a, b) => b.probability - a.probability);
}

/** The ways in which each component can fail, the likeliest first. */
function modesOf(model: FaultModel, chances: readonly number[]): Map<string, Suspect['modes']> {
  const modes = new Map<string, Suspect['modes']>();
  for (const [at, { component, mode }] of model.hypotheses.entries()) {
    const ofIt = modes.get(component) ?? [];
    modes.set(component, ofIt);
    ofIt.push({ mode, name: modeMessages[mode], probability: chances[at] ?? 0 });
  }
  for (const ofIt of modes.values()) ofIt.sort((a, b) => b.probability - a.probability);
  return modes;
}

/** Without a text, what is believed before anything is known. */
type Stage = { text: Message | null; chances: readonly number[] };

function priorStages(model: FaultModel): Stage[] {
  let weights = model.weights;
  const stages: Stage[] = [{ text: null, chances: normalised(weights) }];
  for (const { text, factors } of model.steps) {
    weights = weights.map((weight, at) => weight * (factors[at] ?? 1));
    stages.push({ text, chances: normalised(weights) });
  }
  return stages;
}

function resultStages(model: FaultModel, results: readonly Result[]): Stage[] {
  return results.map((result, at) => ({
    text: resultMessage(model, result),
    chances: posteriorOf(model, results.slice(0, at + 1)),
  }));
}

/** Ten times the decimal logarithm of the odds (Good 1950, Probability and the Weighing of Evidence). */
function decibansOf(chance: number): number {
  const bounded = Math.min(1 - 1e-12, Math.max(1e-12, chance));
  return 10 * Math.log10(bounded / (1 - bounded));
}

const factCodes = {
  edidReadFailed: 'edidReadFailedAt',
  edidDiffers: 'edidDiffersAt',
  authenticationFailed: 'authenticationFailedAt',
  linkFellBack: 'linkFellBackAt',
  hotPlugDropped: 'hotPlugDroppedAt',
  syncLost: 'syncLostAt',
  restarted: 'restartLoggedAt',
  formatChanged: 'formatChangedAt',
  portSetLow: 'portSetLowAt',
  portSetRight: 'portSetRightAt',
  settingWrong: 'settingWrongAt',
} as const satisfies Record<FactKind, string>;

const readingCodes = {
  receives: { right: 'receivesRightAt', wrong: 'receivesWrongAt' },
  sends: { right: 'sendsRightAt', wrong: 'sendsWrongAt' },
} as const;

const trustCodes = {
  enteredLate: 'enteredLateCounts',
  earlierRound: 'earlierRoundCounts',
  perhapsTwo: 'perhapsTwoCounts',
} as const satisfies Record<Trust, string>;

/** A result in one line, as it stands beside its decibans; where it counts for less, how much. */
export function resultMessage(model: FaultModel, result: Result): Message {
  const said = seenInResult(model, result);
  const { trust } = result;
  if (trust === undefined) return said;
  return message(trustCodes[trust], { said, weight: figureOf(model.table.weighing.trust, trust) });
}

function seenInResult({ facts: { chain } }: FaultModel, result: Result): Message {
  if (result.kind === 'menu') {
    const place = namedPlace(chain, { kind: 'device', deviceId: result.deviceId });
    return message(result.answer === 'stayed' ? 'menuStayedAt' : 'menuVanishedAt', { place });
  }
  if (result.kind === 'reading') {
    const place = namedPlace(chain, { kind: 'device', deviceId: result.deviceId });
    return message(readingCodes[result.at][result.says], { place });
  }
  if (result.kind === 'witness') {
    const place = namedPlace(chain, { kind: 'device', deviceId: result.deviceId });
    return message(result.shows ? 'witnessShowsIt' : 'witnessShowsItNot', { place });
  }
  if (result.kind === 'fact')
    return message(factCodes[result.fact], { place: namedPlace(chain, result.place) });
  const change = namedChange({ kind: result.test, own: result.own });
  const what = { change, place: namedPlace(chain, result.target) };
  if (result.kind === 'outcome')
    return message(result.outcome === 'cleared' ? 'changeCleared' : 'changeDidNotClear', what);
  const seen = seenMessage(result.watch);
  return message(result.kind === 'test' ? 'changeWatched' : 'changePutBackAndWatched', { ...what, seen });
}

function seenMessage(watch: WatchRecord): Message {
  const seen = seenIn(watch);
  if (watch.mode === 'time')
    return seen === 0
      ? message('notSeenInMinutes', { minutes: watch.minutes })
      : message('seenInMinutes', { seen, minutes: watch.minutes });
  if (watch.mode === 'look')
    return message(seen === 0 ? 'notThereAtLook' : 'thereAtLook', { looks: watch.looks });
  return seen === 0
    ? message('notSeenInTries', { tries: watch.tries })
    : message('seenInTries', { seen, tries: watch.tries });
}
