import { fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { termsIn } from '../../shared/isolation/decision.ts';
import { faultTable, planNext } from '../../shared/isolation/index.ts';
import { argument } from './argument.ts';
import type { BenchRow } from './bench-row.ts';
import { falseClearsAt } from './false-clear.ts';
import { caseOn } from './isolation-cases.ts';
import type { Cell, CellResult, StrategyName } from './isolation-cell.ts';
import { benchChains, changesOn } from './isolation-chains.ts';

const isQuick = process.argv.includes('--quick');
const askedFor = argument('faults');
const faults = Number(askedFor ?? (isQuick ? 100 : 2000));
const sizes = [4, 6, 8, 12, 30];
const worlds = ['ours', 'perturbed', 'wrongThroughout'] as const;
/** Played on one chain only, by the plan only: to be seen, not to be compared. */
const isAside = (components: number, world: Cell['world']) =>
  world === 'wrongThroughout' && components !== 12;
const rivals: readonly StrategyName[] = ['halfSplitting', 'fromTheSource', 'paperGuide'];
const small = (components: number) => components < 8;
/** Named from 80 % on, odds of 4, for calibration: the level at which that takes the doubt about the prior in. */
const calibrationStop = 4 / (4 + termsIn(faultTable).priorDoubt);

/**
 * Minutes to the right culprit against the exact optimum and three ways of working without a plan; how many culprits
 * are right; how often a fault is called cleared that is still there. `--quick` plays 100 faults a cell, not 2,000;
 * `--faults=400` as many as it says.
 */
export async function benchIsolation(): Promise<BenchRow[]> {
  const cells = await playAll(cellsToPlay());
  const find = (components: number, world: Cell['world'], strategy: StrategyName, stopAt = 0.95) =>
    cells.find(
      (cell) =>
        cell.components === components &&
        cell.world === world &&
        cell.strategy === strategy &&
        cell.stopAt === stopAt,
    );
  console.table(cells.map(detailOf));
  const rows = sizes.flatMap((components) =>
    worlds.flatMap((world) => {
      const plan = find(components, world, 'plan');
      const others = [...(small(components) ? ['optimum' as const] : []), ...rivals];
      if (plan === undefined) return [];
      return [
        ...others.flatMap((strategy) => minutesRow(plan, find(components, world, strategy))),
        rightRow(plan),
        ...calibrationRow(find(components, world, 'plan', calibrationStop)),
      ];
    }),
  );
  return [...rows, ...falseClearRows(), ...replanRows()];
}

function cellsToPlay(): Cell[] {
  return sizes.toReversed().flatMap((components) =>
    worlds.flatMap((world): Cell[] => {
      if (isAside(components, world)) return [];
      const names: StrategyName[] =
        world === 'wrongThroughout'
          ? ['plan']
          : ['plan', ...(small(components) ? ['optimum' as const] : []), ...rivals];
      const cell = (strategy: StrategyName, stopAt: number): Cell => ({
        components,
        world,
        strategy,
        stopAt,
        faults,
      });
      const calibration = small(components) ? [] : [cell('plan', calibrationStop)];
      return [...names.map((strategy) => cell(strategy, 0.95)), ...calibration];
    }),
  );
}

/** Plays cells on all cores, each worker taking the next one when it is done. */
async function playAll(cells: readonly Cell[]): Promise<CellResult[]> {
  const results: (CellResult | undefined)[] = cells.map(() => undefined);
  let next = 0;
  const work = async (): Promise<void> => {
    const worker = fork(fileURLToPath(new URL('./isolation-worker.ts', import.meta.url)));
    for (let at = next++; at < cells.length; at = next++) {
      const cell = cells[at];
      if (cell === undefined) break;
      results[at] = await new Promise<CellResult>((resolve, reject) => {
        worker.once('message', (result) => resolve(result as CellResult));
        worker.once('exit', () => reject(new Error('A worker ended before its cell was played.')));
        worker.send(cell);
      });
      worker.removeAllListeners('exit');
    }
    worker.disconnect();
  };
  await Promise.all(Array.from({ length: availableParallelism() }, work));
  return results.flatMap((result) => (result === undefined ? [] : [result]));
}

const names: Record<StrategyName, string> = {
  plan: 'plan',
  optimum: 'exact optimum',
  halfSplitting: 'half-splitting',
  fromTheSource: 'swapping from the source',
  paperGuide: 'paper guide',
};
const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const minutes = ({ meanMin, errorMin }: CellResult): string =>
  `${meanMin.toFixed(0)} ± ${errorMin.toFixed(0)} min`;
const worldNames: Record<Cell['world'], string> = {
  ours: 'our model',
  perturbed: 'perturbed case by case',
  wrongThroughout: 'one table wrong throughout',
};
const label = ({ components, world }: Cell): string => `${components} components, ${worldNames[world]}`;

function detailOf(cell: CellResult) {
  return {
    cell: label(cell),
    strategy: names[cell.strategy],
    'named from': percent(cell.stopAt),
    minutes: minutes(cell),
    tests: cell.tests.toFixed(1),
    named: percent(cell.named / cell.faults),
    right: percent(cell.right / cell.named),
    'chance given': percent(cell.meanChance),
  };
}

function minutesRow(plan: CellResult, other: CellResult | undefined): BenchRow[] {
  if (other === undefined) return [];
  return [
    {
      name: `${label(plan)}: to the right culprit`,
      value: minutes(plan),
      baseline: `${names[other.strategy]} ${minutes(other)}`,
      ratio: (plan.meanMin / other.meanMin).toFixed(3),
    },
  ];
}

function rightRow(plan: CellResult): BenchRow {
  const share = plan.right / plan.named;
  return {
    name: `${label(plan)}: right among ${plan.named} named of ${plan.faults}`,
    value: percent(share),
    baseline: 'goal 97 %',
    ratio: (share / 0.97).toFixed(3),
  };
}

function calibrationRow(cell: CellResult | undefined): BenchRow[] {
  if (cell === undefined || cell.in80s.named === 0) return [];
  const share = cell.in80s.right / cell.in80s.named;
  return [
    {
      name: `${label(cell)}: right among ${cell.in80s.named} named at 80-90 %`,
      value: percent(share),
      baseline: '80 to 90 %',
      ratio: (share / 0.85).toFixed(3),
    },
  ];
}

function falseClearRows(): BenchRow[] {
  return [0.2, 0.5, 1, 2, 5, 10, 20].map((perHour) => {
    const { byNeed, byTenMinutes, meanWatchMin, retests } = falseClearsAt(
      perHour,
      isQuick ? 2000 : 20_000,
      1440,
    );
    return {
      name: `fault still there, ${perHour} an hour: called cleared (${retests} retests, ${meanWatchMin.toFixed(0)} min on average)`,
      value: percent(byNeed),
      baseline: `10-minute watch ${percent(byTenMinutes)}`,
      ratio: (byNeed / byTenMinutes).toFixed(3),
    };
  });
}

/** Processor milliseconds of a whole plan, model and all, and of what is asked of it. */
function replanRows(): BenchRow[] {
  return sizes.map((components) => {
    const chain = benchChains[components]?.();
    if (chain === undefined) throw new Error('No such chain.');
    const changes = changesOn(chain);
    const here = { kit: null, people: 2 as const, refused: [] };
    const rounds = 40;
    const plan = (seed: number) => planNext({ facts: caseOn(chain, seed), changes, here, inPlace: null });
    for (let seed = 1; seed <= rounds; seed += 1) plan(seed);
    const start = process.cpuUsage();
    for (let seed = 1; seed <= rounds; seed += 1) plan(seed);
    const { user, system } = process.cpuUsage(start);
    const ms = (user + system) / 1000 / rounds;
    return {
      name: `${components} components: one plan from scratch`,
      value: `${ms.toFixed(1)} ms`,
      baseline: 'goal 10 ms',
      ratio: (ms / 10).toFixed(2),
    };
  });
}
