import type { Place } from '../contract/chain.ts';
import { organisationDefaults } from '../contract/defaults.ts';
import type { OwnChange } from '../contract/own-change.ts';
import { type Message, message } from '../message/message.ts';
import type { NamedPlace } from '../message/values.ts';
import { groupedWithFirst, most, unlike } from './alternatives.ts';
import { assumedBaseline } from './assumed-baseline.ts';
import { decisionOf } from './build-decision.ts';
import {
  type Candidate,
  type ChangeOption,
  type Circumstances,
  candidateOrder,
  candidatesFor,
  whyNotHere,
} from './candidates.ts';
import type { Case } from './case.ts';
import { changeCatalogue } from './change-catalogue.ts';
import { namedComponent } from './components.ts';
import { type Decision, namingChance, type Option, type Terms, termsIn, watchedIn } from './decision.ts';
import type { TestKind } from './effect-table.ts';
import { type FailureMode, outside } from './failure-modes.ts';
import { seenIn } from './fault-rate.ts';
import { type FaultTable, faultTable } from './fault-table.ts';
import type { FaultModel } from './hypotheses.ts';
import type { KitItem } from './kit.ts';
import {
  culpritIs,
  moreBaselineAdvice,
  outcomesOf,
  type PlannedTest,
  testSentences,
  whyGoOn,
  whyNext,
} from './plan-wording.ts';
import { byComponent, posteriorOf } from './posterior.ts';
import { rank } from './rank.ts';
import { type RepairPlan, repairsOf } from './repairs.ts';
import { reversibleFirst } from './reversible-first.ts';
import type { Ranked } from './search-state.ts';
import { type Standing, standingOf } from './standing.ts';
import { recordsOf, testKey } from './test-record.ts';
import { withoutUseless } from './useless.ts';
import { withinBudget } from './within-budget.ts';
import { type WorkMeter, workLimits } from './work.ts';

export type PlanInput = {
  facts: Case;
  /** Where the case stands, if that was reckoned before; reckoned here when left out. */
  standing?: Standing;
  /** The changes that apply now, by the triage machine. */
  changes: readonly ChangeOption[];
  here: Circumstances;
  /** The change that is in place now, if any. */
  inPlace: { kind: TestKind; target: Place; own?: OwnChange | null } | null;
  /** In place of the default risk, and of the table's figures. */
  terms?: Partial<PlanTerms>;
  /** Ids of the devices whose menu can still tell a side; every one that draws a menu when left out. */
  menus?: readonly string[];
  /** The organisation's figures; the built-in ones when left out. */
  table?: FaultTable;
  /**
   * Ids of the candidates that a client can do before a visit. Left out on site, where everything within reach may
   * come next; given, the next step is one of these, and what follows it is the visit.
   */
  byClient?: readonly string[];
  /** Changes that were not even asked for, since the chain is too large; none when left out. */
  unasked?: number;
  /** Counts what is weighed. */
  meter?: WorkMeter | undefined;
};

export type PlanTerms = Pick<Terms, 'risk' | 'minutesPerTry' | 'stopAt' | 'priorDoubt' | 'escalationMin'> & {
  /** Candidates times hypotheses that may be weighed; beyond that the plan says what it left out. */
  work: number;
};

export type Plan = {
  /** Each component with its chance, the likeliest first. */
  suspects: { component: string; place: Place | null; named: NamedPlace; probability: number }[];
  advice:
    | { kind: 'test'; next: PlannedTest; others: PlannedTest[] }
    | { kind: 'culprit'; place: Place; named: NamedPlace; probability: number; likeliestMode: FailureMode }
    /** With the repairs that may be tried blindly, for those who would rather try than hand the case on. */
    | { kind: 'escalate'; why: Message; repairs: RepairPlan }
    /** Only for what a client can do: nothing of that is left. */
    | { kind: 'visit'; why: Message };
  /** The advice in a sentence or two. */
  sentence: Message;
  /** What would have been the better test, and why it can't be done here and now. */
  outOfReach: { text: Message; why: Message; kit: readonly KitItem[]; savesMin: number } | null;
  /** Tests that were left out, since weighing them would have taken too long; null where none was. */
  cutShort: { left: number; of: number } | null;
  /** Why to watch for more occurrences before changing anything; null when the baseline is good enough. */
  baselineAdvice: Message | null;
};

/**
 * Says what to do next: the test with the least expected minutes to a culprit, and two more; or that a culprit can
 * be named; or that nothing left is worth its time. Pure and deterministic: the same case gives the same plan.
 */
export function planNext(input: PlanInput): Plan {
  const { facts, here, standing = standingOf(facts, input.table) } = input;
  const { model, chances } = standing;
  const terms = termsOf(input);
  const repairs = () => repairsOf(standing, input.changes);
  const suspects = suspectsIn(model, chances);
  const [first] = suspects;
  const base = {
    suspects,
    outOfReach: null,
    cutShort: null,
    baselineAdvice: moreBaselineAdvice(facts.baseline, terms.risk),
  };
  if (first !== undefined && first.probability >= namingChance(terms))
    return { ...base, ...settled(standing, first, repairs) };
  const all = candidatesFor(model, input.changes).filter(
    ({ action }) => action.kind !== 'menu' || (input.menus?.includes(action.deviceId) ?? true),
  );
  const work = input.terms?.work ?? workLimits.weighing;
  const { candidates, left } = withinBudget(model, chances, { candidates: all, work });
  const { unasked = 0, meter } = input;
  const leftOut = left + unasked;
  const cutShort = leftOut === 0 ? null : { left: leftOut, of: all.length + unasked };
  const records = recordsOf(facts, facts.results);
  const { byClient } = input;
  const rankOf = (among: readonly Candidate[]) => {
    meter?.add(among.length * model.hypotheses.length);
    const decision = decisionOf(model, chances, records, among, terms);
    const isFirst = ({ candidate }: Option) => byClient === undefined || byClient.includes(candidate.id);
    return { decision, ranked: rank(decision, isFirst), isFirst };
  };
  const within = candidates.filter((candidate) => whyNotHere(candidate, here) === null);
  const { decision, ranked: wanted, isFirst } = rankOf(within);
  const useful = withoutUseless(decision, wanted, {
    model,
    results: facts.results,
    candidates: within,
    terms,
    chancesGiven: (results) => posteriorOf(model, results),
    isFirst,
    meter,
  });
  const ranked = reversibleFirst(decision, useful, (among) =>
    rank(decision, (option) => isFirst(option) && among(option)),
  );
  // What the client does costs none of the technician's time, so it is worth it whenever it tells something; so it is
  // where tests were left out, since what would follow is not known then.
  const isWorthIt = byClient !== undefined || leftOut > 0;
  const worthwhile = ranked.filter(({ expectedMin }) => isWorthIt || expectedMin < terms.escalationMin);
  const chosen = groupedWithFirst(facts.chain, unlike(decision, worthwhile));
  // a watch that runs can always be gone on with, even if something else would tell more
  const isRunning = ({ option }: Ranked) => option.candidate.id === terms.inPlace;
  const running =
    chosen.length === 0 || chosen.some(isRunning)
      ? []
      : rank(decision, (option) => option.candidate.id === terms.inPlace).slice(0, 1);
  const [next, ...others] = [...chosen.slice(0, most - running.length), ...running].map((each) =>
    planned(model, each, { decision, terms }),
  );
  const outOfReach =
    within.length === candidates.length || byClient !== undefined
      ? null
      : betterElsewhere(
          model,
          here,
          rankOf(candidates).ranked,
          worthwhile[0]?.expectedMin ?? terms.escalationMin,
        );
  if (next !== undefined)
    return {
      ...base,
      outOfReach,
      cutShort,
      advice: { kind: 'test', next, others },
      sentence: message('sentences', { sentences: testSentences(next) }),
    };
  if (byClient !== undefined) {
    const why = message('visitNeeded');
    return { ...base, outOfReach, cutShort, advice: { kind: 'visit', why }, sentence: why };
  }
  const why = whyEscalate(ranked.length, first ?? { named: { kind: 'outside' }, probability: 1 });
  return {
    ...base,
    outOfReach,
    cutShort,
    advice: { kind: 'escalate', why, repairs: repairs() },
    sentence: why,
  };
}

/** The terms of a plan. Without a baseline, one is assumed after what the client tells, for planning only. */
export function termsOf({ facts, terms, inPlace, byClient = [], table = faultTable }: PlanInput): Terms {
  const running = inPlace === null ? null : testKey(inPlace.kind, inPlace.target, inPlace.own);
  const own = { risk: organisationDefaults.risk, ...termsIn(table), ...terms };
  return {
    ...own,
    baseline: facts.baseline !== null && seenIn(facts.baseline) > 0 ? facts.baseline : assumedBaseline(facts),
    inPlace: running,
    wanted: running === null ? byClient : [...byClient, running],
  };
}

function suspectsIn(model: FaultModel, chances: readonly number[]): Plan['suspects'] {
  return [...byComponent(model, chances)]
    .map(([component, probability]) => {
      const place = model.components.known.get(component)?.place ?? null;
      return { component, place, named: namedComponent(model.components, component), probability };
    })
    .sort((a, b) => b.probability - a.probability);
}

function settled(
  { model, chances }: Standing,
  { component, place, named, probability }: Plan['suspects'][number],
  repairs: () => RepairPlan,
): Pick<Plan, 'advice' | 'sentence'> {
  if (place === null) {
    const why = message('likeliestOutsideModel', { probability });
    return { advice: { kind: 'escalate', why, repairs: repairs() }, sentence: why };
  }
  const [at] = model.hypotheses
    .map((hypothesis, index) => ({ ...hypothesis, chance: chances[index] ?? 0 }))
    .filter((each) => each.component === component)
    .sort((a, b) => b.chance - a.chance);
  const likeliestMode = at?.mode ?? outside;
  return {
    advice: { kind: 'culprit', place, named, probability, likeliestMode },
    sentence: culpritIs(named, probability, likeliestMode),
  };
}

function planned(
  model: FaultModel,
  ranked: Ranked,
  { decision, terms }: { decision: Decision; terms: Terms },
): PlannedTest {
  const { option, expectedMin } = ranked;
  const { candidate, exposure, handlingMin } = option;
  const firstChance = decision.chances.reduce((sum, chance, at) => sum + chance * (option.first[at] ?? 0), 0);
  const { quietMin, seenMin } = watchedIn(option);
  const testMin = handlingMin + firstChance * quietMin + (1 - firstChance) * seenMin;
  const isRunning = candidate.id === terms.inPlace;
  const minutes = {
    setup: isRunning ? 0 : candidate.setupMin,
    watch: testMin - handlingMin,
    restore: candidate.restoreMin,
  };
  const outcomes = outcomesOf(model, decision, option);
  const test = { candidate, firstChance, outcomes, expectedMin, minutes };
  return {
    ...test,
    text: isRunning ? message('goOnWatching') : candidateOrder(model, candidate),
    why: isRunning ? whyGoOn(expectedMin) : whyNext(test, decision.nameAt),
    testMin,
    quiet: isShort(candidate) ? null : { mode: terms.baseline.mode, amount: exposure },
  };
}

/** Answered by the first occurrence, not by how long it stays quiet. */
const isShort = ({ action }: Candidate): boolean =>
  action.kind === 'menu' || changeCatalogue[action.test].provokingMin !== null;

/** Not worth a word below this gain; assumed. */
const worthMentioningMin = 10;

function betterElsewhere(
  model: FaultModel,
  here: Circumstances,
  all: readonly Ranked[],
  bestHereMin: number,
): Plan['outOfReach'] {
  const best = all.find(({ option }) => whyNotHere(option.candidate, here) !== null);
  if (best === undefined) return null;
  const { candidate } = best.option;
  const why = whyNotHere(candidate, here);
  const savesMin = bestHereMin - best.expectedMin;
  return why === null || savesMin < worthMentioningMin
    ? null
    : { text: candidateOrder(model, candidate), why, kit: candidate.kit, savesMin };
}

function whyEscalate(
  left: number,
  { named, probability }: Pick<Plan['suspects'][number], 'named' | 'probability'>,
): Message {
  return message(left === 0 ? 'nothingLeftToTry' : 'handingOnIsQuicker', { place: named, probability });
}
