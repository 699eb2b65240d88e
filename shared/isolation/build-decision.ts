import type { Candidate } from './candidates.ts';
import { changeCatalogue, staysOnceCured } from './change-catalogue.ts';
import { type Decision, namingChance, type Option, type Terms, watchedIn } from './decision.ts';
import { inClasses, type OptionByHypothesis, tellsApart, withoutDearer } from './decision-classes.ts';
import type { TestKind } from './effect-table.ts';
import { type FaultRate, minutesUntilSeen, quietChance, withWatch } from './fault-rate.ts';
import { figureIn, figureOf } from './figures.ts';
import type { FaultModel } from './hypotheses.ts';
import { awayIn, effectsOf, provokingExposure, quietInAll } from './likelihood.ts';
import { menuStaysIn, tellsNothingChance } from './menu-stays.ts';
import { leftInAtMostMin, leftInWorth, visitAtMostMin } from './over-days.ts';
import { requiredQuiet, type WatchRecord } from './quiet-length.ts';
import { type Records, wasMadeWith } from './test-record.ts';

/** Builds the decision from the posterior. Candidates that showed the fault already have nothing more to tell. */
export function decisionOf(
  model: FaultModel,
  chances: readonly number[],
  records: Records,
  candidates: readonly Candidate[],
  terms: Terms,
): Decision {
  const rate = records.rate.mode === 'none' ? terms.baseline : records.rate;
  const furtherRisk = terms.risk * figureOf(model.table.planning.furtherWatch, 'riskShare');
  const quiet = quietSpells(rate, terms, furtherRisk);
  const steps = candidates.map((candidate) =>
    optionsOf({ model, chances, records, quiet, terms }, candidate),
  );
  const options: Option[] = [];
  for (const [main, further] of withoutDearer(steps, chances, terms.wanted)) {
    if (main !== undefined)
      options.push({ ...main, after: -1, resumeMin: handlingOf(main.candidate) - main.handlingMin });
    if (further !== undefined)
      options.push({ ...further, after: options.length - 1, resumeMin: handlingOf(further.candidate) });
  }
  const { escalationMin } = terms;
  return { ...inClasses(model, chances, options), nameAt: namingChance(terms), escalationMin };
}

/** What quiet spells take and tell, all candidates alike. Minutes, tries or looks, by the baseline. */
type QuietSpells = {
  rate: FaultRate;
  /** Quiet that `cleared` takes, and that makes surer of it. */
  need: number;
  more: number;
  /** A watch from so much quiet on to so much: its minutes if it stays quiet, if the fault comes, and two chances. */
  watch(from: number, to: number): { quietMin: number; seenMin: number; before: number; after: number };
};

function quietSpells(rate: FaultRate, terms: Terms, furtherRisk: number): QuietSpells {
  const known = new Map<string, ReturnType<QuietSpells['watch']>>();
  return {
    rate,
    need: requiredExposure(terms.baseline, terms.risk),
    more: requiredExposure(terms.baseline, furtherRisk),
    watch(from, to) {
      const key = `${from} ${to}`;
      const quietMin = minutesFor(terms, to - from);
      const found = known.get(key) ?? {
        quietMin,
        seenMin: minutesWhenSeen(afterQuiet(rate, from), to - from, quietMin, terms),
        before: quietChance(rate, from),
        after: quietChance(rate, to),
      };
      known.set(key, found);
      return found;
    },
  };
}

type Situation = {
  model: FaultModel;
  chances: readonly number[];
  records: Records;
  quiet: QuietSpells;
  terms: Terms;
};

/** From this chance on that it mends what is wrong, a change that may stay counts as the repair; assumed. */
const likelyRepair = 0.5;

/** The option that a candidate is, and watching on for longer after it; none if it tells nothing. */
function optionsOf(situation: Situation, candidate: Candidate): OptionByHypothesis[] {
  const { model, chances, records, quiet, terms } = situation;
  const { need, rate } = quiet;
  const { action } = candidate;
  if (action.kind === 'menu') {
    const option = menuOption(model, candidate, action.deviceId, need, rate, terms);
    return records.menus.has(action.deviceId) || !tellsApart(option, chances) ? [] : [option];
  }
  const record = records.tests.get(candidate.id);
  if (record?.seen === true || record?.surelyAway === true) return [];
  if (wasMadeWith(records, action)) return [];
  const provoking = provokingExposure(model.table, action.test, terms.baseline.mode);
  if (provoking !== null) {
    const option = record === undefined ? provokingOption(situation, candidate, provoking) : null;
    return option === null || !tellsApart(option, chances) ? [] : [option];
  }
  return watchOptions(situation, { ...candidate, action }, record?.quiet ?? 0);
}

type ChangeCandidate = Candidate & { action: Extract<Candidate['action'], { kind: 'test' }> };

/**
 * Watching until quiet means something, after so much of it, and on from there to be surer; where nobody sits through
 * that, leaving the change in.
 */
function watchOptions(
  { model, chances, quiet, terms }: Situation,
  candidate: ChangeCandidate,
  done: number,
): OptionByHypothesis[] {
  const { need, more } = quiet;
  const { action } = candidate;
  if (done >= more) return [];
  const effects = effectsOf(model, action);
  const isRepair = staysOnceCured(action) && averageOf(effects.because, chances) >= likelyRepair;
  const away = awayIn(effects);
  const watch = (from: number, to: number, handlingMin: number): OptionByHypothesis => {
    const { quietMin, seenMin, before, after } = quiet.watch(from, to);
    const first = away.map((chance) => (chance + (1 - chance) * after) / (chance + (1 - chance) * before));
    const minutes = { firstMin: handlingMin + quietMin, secondMin: handlingMin + seenMin, handlingMin };
    return { candidate, first, ...minutes, isRepair, exposure: to - from };
  };
  const handlingMin = handlingMinutes(candidate, terms, done);
  const until = done < need ? need : more;
  if (isTooLong(terms, need) && mayBeLeftIn(action.test)) {
    const left = leftIn(
      watch(done, Math.min(until, done + leftInAtMostMin(model.table)), handlingMin),
      model,
    );
    return tellsApart(left, chances) ? [left] : [];
  }
  const main = watch(done, until, handlingMin);
  if (!tellsApart(main, chances)) return [];
  return done < need ? [main, watch(need, more, 0)] : [main];
}

/** Whether nobody sits through a quiet retest in one visit. */
const isTooLong = ({ baseline }: Terms, need: number): boolean =>
  baseline.mode === 'time' && need > visitAtMostMin;

/** What lies across a floor is never left in. */
const mayBeLeftIn = (test: TestKind): boolean =>
  !changeCatalogue[test].cautions.includes('cautionCableAcrossFloor');

/** The same watch, by whoever lives there: worth the work and the days, not the minutes. */
function leftIn(watched: OptionByHypothesis, { table }: FaultModel): OptionByHypothesis {
  const minutes = watchedIn(watched);
  const worth = (watchMin: number): number => watched.handlingMin + leftInWorth(watchMin, table);
  return {
    ...watched,
    firstMin: worth(minutes.quietMin),
    secondMin: worth(minutes.seenMin),
    leftIn: minutes,
  };
}

function averageOf(figures: Float64Array, chances: readonly number[]): number {
  let sum = 0;
  for (let at = 0; at < figures.length; at += 1) sum += (chances[at] ?? 0) * (figures[at] ?? 0);
  return sum;
}

/** What is brought on shows in a short watch; that it stays quiet so long says little of what the change keeps away. */
function provokingOption(
  { model, quiet, terms }: Situation,
  candidate: Candidate,
  exposure: number,
): OptionByHypothesis | null {
  const { action } = candidate;
  if (action.kind === 'menu') return null;
  const { quietMin, seenMin, after } = quiet.watch(0, exposure);
  const handlingMin = handlingMinutes(candidate, terms, 0);
  return {
    candidate,
    first: quietInAll(effectsOf(model, action), after),
    firstMin: handlingMin + quietMin,
    secondMin: handlingMin + seenMin,
    handlingMin,
    isRepair: false,
    exposure,
  };
}

/** Minutes around a watch. What is in place has to be put back whatever comes next, so that is no cost of watching on. */
function handlingMinutes(candidate: Candidate, terms: Terms, done: number): number {
  if (terms.inPlace !== candidate.id) return handlingOf(candidate);
  return done > 0 ? 0 : candidate.restoreMin;
}

const handlingOf = ({ setupMin, riskMin, restoreMin }: Candidate): number => setupMin + riskMin + restoreMin;

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
  const tells = 1 - tellsNothingChance(model, deviceId);
  return {
    candidate,
    first: menuStaysIn(model, deviceId).map((stays) => tells * (stays * (1 - slip) + (1 - stays) * slip)),
    firstMin: minutes,
    secondMin: minutes,
    handlingMin,
    isRepair: false,
    exposure,
  };
}

/** Minutes, tries or looks of quiet that `cleared` takes after this baseline. */
export function requiredExposure(baseline: WatchRecord, risk: number): number {
  return requiredQuiet(baseline, risk) ?? 0;
}

const minutesFor = ({ baseline, minutesPerTry }: Terms, exposure: number): number =>
  baseline.mode === 'time' ? exposure : exposure * minutesPerTry;

/** The rate as it stands after a quiet spell in which the fault was there all the same; what is always there stays so. */
function afterQuiet(rate: FaultRate, quiet: number): FaultRate {
  switch (rate.mode) {
    case 'trigger':
      return withWatch(rate, { mode: 'trigger', tries: quiet, failures: 0 });
    case 'look':
      return rate;
    default:
      return withWatch(rate, { mode: 'time', minutes: quiet, occurrences: 0 });
  }
}

/** Minutes of a watch on average, given that the fault comes before its end. */
function minutesWhenSeen(rate: FaultRate, exposure: number, quietMin: number, terms: Terms): number {
  const quiet = quietChance(rate, exposure);
  if (quiet > 1 - 1e-9) return quietMin;
  return (minutesUntilSeen(rate, exposure, terms.minutesPerTry) - quiet * quietMin) / (1 - quiet);
}
