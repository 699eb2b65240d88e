import type { Candidate } from '../../shared/isolation/candidates.ts';
import type { Case, Result } from '../../shared/isolation/case.ts';
import { outside } from '../../shared/isolation/failure-modes.ts';
import { exposureOf, quietChance, seenIn } from '../../shared/isolation/fault-rate.ts';
import type { FaultModel, Hypothesis } from '../../shared/isolation/hypotheses.ts';
import { effectAt, effectsOf, staysAway } from '../../shared/isolation/likelihood.ts';
import { menuStaysChance } from '../../shared/isolation/menu-stays.ts';
import type { WatchRecord } from '../../shared/isolation/quiet-length.ts';
import { pick, randomFrom, seedOf } from '../support/random.ts';

const exponential = (random: () => number): number => -Math.log(1 - random());
/** Gamma of a whole-numbered shape, as a sum of waiting times. */
const gamma = (shape: number, random: () => number): number =>
  Array.from({ length: shape }, () => exponential(random)).reduce((sum, each) => sum + each, 0);

/** How the world differs from the model that the engine believes in. */
export type Perturbation = {
  /** Each weight of the fault table is off by up to this factor, either way; the same for all parts of a kind. */
  priorFactor: number;
  /**
   * Tables of the same number are off in the same way. One for all faults is a table that is wrong throughout, which
   * nobody could be calibrated by; one a case is a table that knows less than it seems of every house.
   */
  table: number;
  /** An outcome in which the fault was seen is turned into a quiet one with the chance of a false clear. */
  flips: boolean;
};
export const faithful: Perturbation = { priorFactor: 1, table: 0, flips: false };
/** @param table see Perturbation */
export const perturbed = (table: number): Perturbation => ({ priorFactor: 4, table, flips: true });

export type Outcome = { results: Result[]; minutes: number };
/** One fault on one chain: what is true, and what whoever does something gets to see. */
export type World = {
  truth: Hypothesis;
  perform(candidate: Candidate, exposure: number, goesOn: boolean): Outcome;
  /** Minutes until the fault comes back after the wrong part was replaced. */
  untilBackMin(): number;
};

/** Draws a fault after the model's prior, and a rate of it after the baseline; the rest follows from chance. */
export function worldOf(
  model: FaultModel,
  minutesPerTry: number,
  { priorFactor, table, flips }: Perturbation,
  random: () => number,
): World {
  const weights = model.prior.map((chance, at) => chance * priorFactor ** errorOf(model, at, table));
  const at = pick(weights, random);
  const truth = model.hypotheses[at] ?? { component: outside, mode: outside };
  const baseline = baselineOf(model.facts);
  const often = rateGiven(baseline, random);
  const away = new Map<string, boolean>();
  const provoked = new Map<string, boolean>();
  const menuStays = new Map<string, boolean>();
  const once = (memory: Map<string, boolean>, key: string, chance: () => number): boolean => {
    const known = memory.get(key) ?? random() < chance();
    memory.set(key, known);
    return known;
  };
  const tries = () => Math.ceil(Math.log(1 - random()) / Math.log1p(-often));
  /** Minutes or tries until the fault comes. */
  const untilSeen = () => (baseline.mode === 'time' ? exponential(random) / often : tries());
  const minutesFor = (exposure: number) => (baseline.mode === 'time' ? exposure : exposure * minutesPerTry);
  return {
    truth,
    untilBackMin: () => minutesFor(untilSeen()),
    perform(candidate, exposure, goesOn) {
      const { action } = candidate;
      const aroundMin = goesOn ? 0 : candidate.setupMin + candidate.restoreMin + candidate.riskMin;
      const waiting = untilSeen();
      if (action.kind === 'menu') {
        const stays = once(menuStays, candidate.id, () => menuStaysChance(model, action.deviceId, truth));
        const misread = random() < 0.02;
        const minutes = aroundMin + minutesFor(Math.min(waiting, exposure));
        const answer = stays !== misread ? 'stayed' : 'vanished';
        return {
          minutes,
          results: waiting > exposure ? [] : [{ kind: 'menu', deviceId: action.deviceId, answer }],
        };
      }
      const effect = effectAt(effectsOf(model, action), at);
      const isAway = once(away, candidate.id, () => staysAway(effect));
      const isProvoked = once(provoked, candidate.id, () => effect.provoked);
      const flipped = flips && random() < quietChance(baseline, exposure);
      const seen = isProvoked || (!isAway && waiting <= exposure && !flipped);
      const watch = watchOf(baseline.mode, seen ? Math.min(waiting, exposure) : exposure, seen);
      return {
        minutes: aroundMin + minutesFor(seen ? Math.min(waiting, exposure) : exposure),
        results: [{ kind: 'test', test: action.test, target: action.target, watch }],
      };
    },
  };
}

/** How wrong a table is about a mode of a kind of part: -1..1, the same in every run. */
function errorOf(model: FaultModel, at: number, table: number): number {
  const { component, mode } = model.hypotheses[at] ?? { component: outside, mode: outside };
  const { device, link } = model.components.known.get(component) ?? { device: null, link: null };
  const text = `${device?.role ?? link?.construction ?? component} ${mode}`;
  return 2 * randomFrom(seedOf(text, 7 + table))() - 1;
}

/** The watch as it is noted: an occurrence to the minute. */
export function watchOf(mode: WatchRecord['mode'], exposure: number, seen: boolean): WatchRecord {
  const count = seen ? 1 : 0;
  switch (mode) {
    case 'time':
      return { mode, minutes: seen ? Math.max(1, Math.round(exposure)) : exposure, occurrences: count };
    case 'trigger':
      return { mode, tries: exposure, failures: count };
    case 'look':
      return { mode, looks: exposure, bad: count };
  }
}

export function baselineOf(facts: Case): WatchRecord {
  if (facts.baseline === null) throw new Error('The bench plays cases that were reproduced.');
  return facts.baseline;
}

/** Occurrences a minute, or the chance that a try fails, drawn from what the baseline leaves possible. */
function rateGiven(baseline: WatchRecord, random: () => number): number {
  if (baseline.mode === 'time') return gamma(baseline.occurrences, random) / baseline.minutes;
  const [failed, tries] = [seenIn(baseline), exposureOf(baseline)];
  const failing = gamma(failed, random);
  return failing / (failing + gamma(tries - failed + 1, random));
}
