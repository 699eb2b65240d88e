import type { Chain } from '../../shared/contract/chain.ts';
import { decisionOf } from '../../shared/isolation/build-decision.ts';
import type { Candidate } from '../../shared/isolation/candidates.ts';
import { recordsOf } from '../../shared/isolation/test-record.ts';
import { randomFrom } from '../support/random.ts';
import { caseOn } from './isolation-cases.ts';
import { benchChains, changesOn } from './isolation-chains.ts';
import { type Ending, type Habits, play, type Stage, stageOf } from './isolation-play.ts';
import {
  fromTheSource,
  halfSplitting,
  optimumFrom,
  paperGuide,
  planned,
  type Strategy,
} from './isolation-strategies.ts';
import { faithful, perturbed, worldOf } from './isolation-world.ts';

/** One cell of the table: a chain of so many components, one kind of world, one strategy, and how many faults. */
export type Cell = {
  components: number;
  /** `perturbed`: the table is off in another way for each case; `wrongThroughout`: in one way for all of them. */
  world: 'ours' | 'perturbed' | 'wrongThroughout';
  strategy: StrategyName;
  /** Level at which a culprit is named. */
  stopAt: number;
  faults: number;
};
export type StrategyName = 'plan' | 'optimum' | 'halfSplitting' | 'fromTheSource' | 'paperGuide';

export type CellResult = Cell & {
  /** Mean minutes until the right culprit was named or the case was handed on, and its standard error. */
  meanMin: number;
  errorMin: number;
  named: number;
  right: number;
  /** Mean chance given to the culprits that were named. */
  meanChance: number;
  /** Of culprits named with 80 to 90 %: how many, and how many of them are right. */
  in80s: { named: number; right: number };
  tests: number;
};

/** Cases that a chain's faults are spread over. */
const casesPerChain = 40;
/** With fewer components than this the exact optimum is worked out, over few candidates. */
const exactBelow = 8;
const mostCandidates = 7;

const plain: Readonly<Record<Exclude<StrategyName, 'optimum'>, Strategy>> = {
  plan: planned,
  halfSplitting,
  fromTheSource,
  paperGuide,
};

/** Plays every fault of a cell. */
export function playCell(cell: Cell): CellResult {
  const chain = benchChains[cell.components]?.();
  if (chain === undefined) throw new Error(`No chain of ${cell.components} components.`);
  const isSmall = cell.components < exactBelow;
  const cases = isSmall ? 12 : casesPerChain;
  const stages = Array.from({ length: cases }, (_, at) => stageFor(chain, at + 1, cell.stopAt, isSmall));
  const strategies = stages.map((stage) =>
    cell.strategy === 'optimum' ? optimumOf(stage) : plain[cell.strategy],
  );
  const habits = stages.map((): Habits => new Map());
  const worldFor = (number: number) =>
    cell.world === 'ours' ? faithful : perturbed(cell.world === 'perturbed' ? number + 1 : 0);
  const endings = Array.from({ length: cell.faults }, (_, fault): Ending => {
    const stage = stages[fault % cases];
    const strategy = strategies[fault % cases];
    const own = habits[fault % cases];
    if (stage === undefined || strategy === undefined || own === undefined)
      throw new Error('A fault without a case.');
    // the same fault, rate and luck for every strategy
    const random = randomFrom(7919 * fault + cell.components);
    return play(
      stage,
      worldOf(stage.model, stage.terms.minutesPerTry, worldFor(fault % cases), random),
      strategy,
      own,
    );
  });
  return { ...cell, ...summaryOf(endings) };
}

function summaryOf(endings: readonly Ending[]): Omit<CellResult, keyof Cell> {
  const mean = (of: (ending: Ending) => number) =>
    endings.reduce((sum, ending) => sum + of(ending), 0) / endings.length;
  const meanMin = mean(({ minutes }) => minutes);
  const variance = mean(({ minutes }) => (minutes - meanMin) ** 2);
  const named = endings.flatMap((ending) => (ending.named === null ? [] : [ending.named]));
  const in80s = named.filter(({ chance }) => chance >= 0.8 && chance < 0.9);
  const rightOf = (some: typeof named) => some.filter(({ right }) => right).length;
  return {
    meanMin,
    errorMin: Math.sqrt(variance / endings.length),
    named: named.length,
    right: rightOf(named),
    meanChance: named.reduce((sum, { chance }) => sum + chance, 0) / named.length,
    in80s: { named: in80s.length, right: rightOf(in80s) },
    tests: mean(({ tests }) => tests),
  };
}

function stageFor(chain: Chain, seed: number, stopAt: number, isSmall: boolean): Stage {
  const stage = stageOf(caseOn(chain, seed), changesOn(chain), stopAt);
  return isSmall ? { ...stage, candidates: fewOf(stage.candidates) } : stage;
}

/** What most technicians would have in mind, few enough for the exact optimum. */
const common = [
  'replaceCable',
  'temporaryCable',
  'bypassDevice',
  'substituteDisplay',
  'otherSource',
  'menu',
  'limitOutputBandwidth',
  'reseat',
];
function fewOf(candidates: readonly Candidate[]): Candidate[] {
  const rankOf = ({ action }: Candidate) => common.indexOf(action.kind === 'menu' ? 'menu' : action.test);
  return candidates
    .filter((candidate) => rankOf(candidate) >= 0)
    .toSorted((a, b) => rankOf(a) - rankOf(b))
    .slice(0, mostCandidates);
}

function optimumOf({ model, candidates, terms }: Stage): Strategy {
  const decision = decisionOf(model, model.prior, recordsOf(model.facts, []), candidates, terms);
  return optimumFrom(decision, mostCandidates);
}
