import type { Candidate } from './candidates.ts';
import type { Decision, Terms } from './decision.ts';
import { inClasses, type OptionByHypothesis, withoutDearer } from './decision-classes.ts';
import { type FaultRate, minutesUntilSeen, quietChance, withWatch } from './fault-rate.ts';
import { figureIn } from './figures.ts';
import type { FaultModel } from './hypotheses.ts';
import { effectsOf, menuStaysChance, staysAway } from './likelihood.ts';
import { requiredQuietTries, requiredQuietWatchMin, type WatchRecord } from './quiet-length.ts';
import type { Records } from './test-record.ts';

/** A watch that goes on after `cleared` is for a fifth of the risk: 1 % where it was 5 %. Assumed. */
const furtherRisk = 1 / 5;

/** Builds the decision from the posterior. Candidates that showed the fault already have nothing more to tell. */
export function decisionOf(
  model: FaultModel,
  chances: readonly number[],
  records: Records,
  candidates: readonly Candidate[],
  terms: Terms,
): Decision {
  const steps = candidates.map((candidate) => optionsOf(model, records, candidate, terms));
  const options = withoutDearer(steps).flatMap(([main, further], at, all) => {
    const index = all.slice(0, at).reduce((count, before) => count + before.length, 0);
    return [
      ...(main === undefined ? [] : [{ ...main, after: -1 }]),
      ...(further === undefined ? [] : [{ ...further, after: index }]),
    ];
  });
  const { stopAt, escalationMin } = terms;
  return { ...inClasses(model, chances, options), nameAt: stopAt, escalationMin };
}

/** The option that a candidate is, and watching on for longer after it. */
function optionsOf(
  model: FaultModel,
  records: Records,
  candidate: Candidate,
  terms: Terms,
): OptionByHypothesis[] {
  const rate = records.rate.mode === 'none' ? terms.baseline : records.rate;
  const need = requiredExposure(terms.baseline, terms.risk);
  const { action } = candidate;
  if (action.kind === 'menu')
    return records.menus.has(action.deviceId)
      ? []
      : [menuOption(model, candidate, action.deviceId, need, rate, terms)];
  const record = records.tests.get(candidate.id);
  if (record?.seen === true || record?.surelyAway === true) return [];
  const away = effectsOf(model, action.test, action.target).map(staysAway);
  const done = record?.quiet ?? 0;
  const more = requiredExposure(terms.baseline, terms.risk * furtherRisk);
  const watch = (from: number, to: number, aroundMin: number): OptionByHypothesis => {
    const after = afterQuiet(rate, from);
    const quietMin = minutesFor(terms, to - from);
    const [before, then] = [quietChance(rate, from), quietChance(rate, to)];
    return {
      candidate,
      first: away.map((chance) => (chance + (1 - chance) * then) / (chance + (1 - chance) * before)),
      firstMin: aroundMin + quietMin,
      secondMin: aroundMin + minutesWhenSeen(after, to - from, quietMin, terms),
      handlingMin: aroundMin,
      exposure: to - from,
    };
  };
  const aroundMin = aroundMinutes(candidate, terms, done);
  if (done < need) return [watch(done, need, aroundMin), watch(need, more, 0)];
  return done < more ? [watch(done, more, aroundMin)] : [];
}

/** Minutes around a watch. What is in place has to be put back whatever comes next, so that is no cost of watching on. */
function aroundMinutes({ id, setupMin, riskMin, restoreMin }: Candidate, terms: Terms, done: number): number {
  if (terms.inPlace !== id) return setupMin + riskMin + restoreMin;
  return done > 0 ? 0 : restoreMin;
}

function menuOption(
  model: FaultModel,
  candidate: Candidate,
  deviceId: string,
  exposure: number,
  rate: FaultRate,
  terms: Terms,
): OptionByHypothesis {
  const slip = figureIn(model.table.menuStays.misread, 'any') ?? 0;
  const handlingMin = candidate.setupMin + candidate.restoreMin;
  const minutes = handlingMin + minutesUntilSeen(rate, exposure, terms.minutesPerTry);
  return {
    candidate,
    first: model.hypotheses.map((hypothesis) => {
      const stays = menuStaysChance(model, deviceId, hypothesis);
      return stays * (1 - slip) + (1 - stays) * slip;
    }),
    firstMin: minutes,
    secondMin: minutes,
    handlingMin,
    exposure,
  };
}

/** Minutes or tries of quiet that `cleared` takes after this baseline. */
export function requiredExposure(baseline: WatchRecord, risk: number): number {
  const needed =
    baseline.mode === 'time'
      ? requiredQuietWatchMin(baseline.occurrences, baseline.minutes, risk)
      : requiredQuietTries(baseline.failures, baseline.tries, risk);
  return needed ?? 0;
}

const minutesFor = ({ baseline, minutesPerTry }: Terms, exposure: number): number =>
  baseline.mode === 'time' ? exposure : exposure * minutesPerTry;

/** The rate as it stands after a quiet spell in which the fault was there all the same. */
function afterQuiet(rate: FaultRate, quiet: number): FaultRate {
  return rate.mode === 'trigger'
    ? withWatch(rate, { mode: 'trigger', tries: quiet, failures: 0 })
    : withWatch(rate, { mode: 'time', minutes: quiet, occurrences: 0 });
}

/** Minutes of a watch on average, given that the fault comes before its end. */
function minutesWhenSeen(rate: FaultRate, exposure: number, quietMin: number, terms: Terms): number {
  const quiet = quietChance(rate, exposure);
  if (quiet > 1 - 1e-9) return quietMin;
  return (minutesUntilSeen(rate, exposure, terms.minutesPerTry) - quiet * quietMin) / (1 - quiet);
}
