import type { Place } from '../../../shared/contract/chain.ts';
import { organisationDefaults } from '../../../shared/contract/defaults.ts';
import { decisionOf } from '../../../shared/isolation/build-decision.ts';
import { type ChangeOption, candidatesFor } from '../../../shared/isolation/candidates.ts';
import type { Case, Result } from '../../../shared/isolation/case.ts';
import { changeCatalogue } from '../../../shared/isolation/change-catalogue.ts';
import { namingChance, termsIn } from '../../../shared/isolation/decision.ts';
import type { TestKind } from '../../../shared/isolation/effect-table.ts';
import { outside } from '../../../shared/isolation/failure-modes.ts';
import { seenIn } from '../../../shared/isolation/fault-rate.ts';
import { faultTable } from '../../../shared/isolation/fault-table.ts';
import { planNext } from '../../../shared/isolation/index.ts';
import { provokingExposure } from '../../../shared/isolation/likelihood.ts';
import type { PlannedTest } from '../../../shared/isolation/plan-wording.ts';
import { byComponent } from '../../../shared/isolation/posterior.ts';
import { requiredQuiet } from '../../../shared/isolation/quiet-length.ts';
import { type Standing, standingOf } from '../../../shared/isolation/standing.ts';
import { recordsOf } from '../../../shared/isolation/test-record.ts';
import { randomFrom } from '../../support/random.ts';
import { caseOn } from '../isolation-cases.ts';
import { benchChains, changesOn } from '../isolation-chains.ts';
import { halfSplitting } from '../isolation-strategies.ts';
import { House } from './house.ts';
import type { WorldKind } from './worlds.ts';

/** What handing a case over is worth in minutes; a wrong name twice, a fault called fixed that is not four times. */
export const priceMin = 1500;

export type Ending = {
  kind: 'named' | 'handedOver';
  right: boolean;
  /** The fault stayed away in the watch that the repair of the wrong part was judged by. */
  falselyFixed: boolean;
  isOutside: boolean;
  /** The likeliest suspect at the end, its chance, and whether it is one. */
  believed: { chance: number; right: boolean };
  minutes: number;
  bill: number;
  tests: number;
};
/** `unprovoked`: the plan, but for changes that make the fault come. */
export type Way = 'plan' | 'halfSplitting' | 'unprovoked';

const sizes = [4, 6, 8, 12, 30];
/** A case that goes on for longer than this is handed over. */
const mostTests = 60;
const mostMinutes = 10_000;
const { risk } = organisationDefaults;
const terms = { risk, ...termsIn(faultTable), escalationMin: priceMin };

/** One fault of a world, from its reproduction to its end; null where it could not be reproduced. */
export function playFault(kind: WorldKind, way: Way, seed: number): Ending | null {
  const chain = benchChains[sizes[seed % sizes.length] ?? 12]?.();
  if (chain === undefined) throw new Error('No chain of that size.');
  const told = { ...caseOn(chain, seed), baseline: null };
  const house = House.of(told, kind, seed);
  if (house === null) return null;
  const { baseline, pattern } = house.reproduced;
  const facts: Case = { ...told, symptom: { ...told.symptom, pattern }, baseline };
  const isOpen = ({ kind: test }: ChangeOption) =>
    way !== 'unprovoked' || changeCatalogue[test].provokingMin === null;
  const changes = changesOn(chain).filter(isOpen);
  const results: Result[] = [];
  let minutes = 0;
  let last: Made | null = null;
  for (let tests = 0; ; tests += 1) {
    const now: Case = { ...facts, results: [...results] };
    const inPlace = inPlaceAfter(last);
    const isOver = tests === mostTests || minutes > mostMinutes;
    const next = isOver ? null : nextOf(now, { changes, inPlace, way });
    if (next === null || typeof next === 'string')
      return endingOf(house, now, { tests, minutes, named: next });
    const goesOn = inPlace !== null && last?.test.candidate.id === next.candidate.id;
    const seen = house.perform(next, exposureOf(next, now), goesOn);
    minutes += seen.minutes;
    results.push(...seen.results);
    const [result] = seen.results;
    last = { test: next, isQuiet: result?.kind === 'test' && seenIn(result.watch) === 0 };
  }
}

type Made = { test: Chosen; isQuiet: boolean };
type InPlace = { kind: TestKind; target: Place } | null;

/** A change that the fault stayed away with is still in place. */
function inPlaceAfter(last: Made | null): InPlace {
  if (last === null || !last.isQuiet) return null;
  const { action } = last.test.candidate;
  return action.kind === 'menu' ? null : { kind: action.test, target: action.target };
}

/** How a case ends whose culprit was named, or that was handed over (`named` null). */
function endingOf(
  house: House,
  facts: Case,
  { tests, minutes, named }: { tests: number; minutes: number; named: string | null },
): Ending {
  const likeliest = likeliestIn(standingOf(facts));
  const believed = { chance: likeliest.chance, right: house.isTrue(likeliest.component) };
  const ending = { tests, minutes, believed, isOutside: house.isTrue(outside) };
  if (named === null)
    return { ...ending, kind: 'handedOver', right: false, falselyFixed: false, bill: minutes + priceMin };
  const right = house.isTrue(named);
  const after = house.seenAfterRepair(named, requiredQuiet(house.reproduced.baseline, risk) ?? 0);
  const falselyFixed = !right && !after.seen;
  const wrong = right ? 0 : priceMin * (falselyFixed ? 4 : 2);
  return { ...ending, kind: 'named', right, falselyFixed, bill: minutes + wrong };
}

function exposureOf({ candidate: { action }, quiet }: Chosen, { baseline }: Case): number {
  if (quiet !== null) return quiet.amount;
  if (baseline === null) throw new Error('The bench plays cases that were reproduced.');
  const provoking = action.kind === 'menu' ? null : provokingExposure(faultTable, action.test, baseline.mode);
  return provoking ?? requiredQuiet(baseline, risk) ?? 0;
}

/** The next test, the component to name, or null to hand over. */
function nextOf(
  facts: Case,
  { changes, inPlace, way }: { changes: readonly ChangeOption[]; inPlace: InPlace; way: Way },
): Chosen | string | null {
  if (way === 'halfSplitting') return splitNext(facts, changes);
  const here = { kit: null, people: 2, refused: [] } as const;
  const { advice, suspects } = planNext({
    facts,
    changes,
    here,
    inPlace,
    terms: { escalationMin: priceMin },
  });
  if (advice.kind === 'test') return advice.next;
  return advice.kind === 'culprit' ? (suspects[0]?.component ?? null) : null;
}

type Chosen = Pick<PlannedTest, 'candidate' | 'quiet'>;

function splitNext(facts: Case, changes: readonly ChangeOption[]): Chosen | string | null {
  const standing = standingOf(facts);
  const { component, chance } = likeliestIn(standing);
  if (chance >= namingChance(terms)) return component === outside ? null : component;
  const { model, chances } = standing;
  const { baseline, results } = facts;
  if (baseline === null) throw new Error('The bench plays cases that were reproduced.');
  const all = { ...terms, baseline, inPlace: null, wanted: [] };
  const candidates = candidatesFor(model, changes);
  const decision = decisionOf(model, chances, recordsOf(facts, results), candidates, all);
  const ahead = { model, results, candidates, terms: all, chancesGiven: () => chances, isFirst: () => true };
  const option = halfSplitting({ model, decision, steps: [], ahead });
  if (option === null) return null;
  const { candidate, exposure } = option;
  const isMenu = candidate.action.kind === 'menu';
  return { candidate, quiet: isMenu ? null : { mode: baseline.mode, amount: exposure } };
}

function likeliestIn({ model, chances }: Standing): { component: string; chance: number } {
  let best = { component: outside as string, chance: 0 };
  for (const [component, chance] of byComponent(model, chances))
    if (chance > best.chance) best = { component, chance };
  return best;
}

/** Seeds of a world's faults; those of another run are others. */
export const seedsFrom = (start: number, count: number): number[] =>
  Array.from({ length: count }, (_, at) => Math.floor(randomFrom(start + at)() * 1e9) * 5 + (at % 5));
