import { fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { argument } from '../argument.ts';
import type { BenchRow } from '../bench-row.ts';
import { type Ending, priceMin, type Way } from './play.ts';
import { keptApart, worlds } from './worlds.ts';

const faults = Number(argument('faults') ?? (process.argv.includes('--quick') ? 100 : 700));
/** Another number plays other faults. */
const start = Number(argument('seed') ?? 1);
const comparesProvoking = process.argv.includes('--provoking');
const asked = argument('worlds')?.split(',');

/** Part of a world's faults, for one worker. */
export type Batch = { world: string; way: Way; seeds: number; from: number };
const batchSize = 25;
const ways: readonly Way[] = ['plan', comparesProvoking ? 'unprovoked' : 'halfSplitting'];

/**
 * Twelve worlds that are not as the planner's tables say, and what comes of following the plan in them: how many culprits
 * are named and right, how many repairs of a wrong part are taken for one, minutes beside half-splitting, the bill
 * beside handing every case over at once, and whether the chances said are those that come true. `--worlds=own,bursts`
 * plays those whose names begin so, `--provoking` the plan beside itself without changes that make the fault come,
 * `--apart` those that nothing is tuned to, `--faults=…` so many faults in each.
 */
export async function benchWorlds(): Promise<BenchRow[]> {
  const kinds = (process.argv.includes('--apart') ? keptApart : worlds).filter(
    ({ name }) => asked === undefined || asked.some((part) => name.startsWith(part)),
  );
  const batches = kinds.flatMap(({ name }) =>
    ways.flatMap((way): Batch[] =>
      Array.from({ length: Math.ceil(faults / batchSize) }, (_, at) => ({
        world: name,
        way,
        from: start * 100_000 + at * batchSize,
        seeds: Math.min(batchSize, faults - at * batchSize),
      })),
    ),
  );
  const endings = await playAll(batches);
  return kinds.flatMap(({ name }) => {
    const of = (way: Way) =>
      batches.flatMap((batch, at) => (batch.world === name && batch.way === way ? (endings[at] ?? []) : []));
    return comparesProvoking
      ? rowsOfProvoking(name, of('plan'), of('unprovoked'))
      : rowsOf(name, of('plan'), of('halfSplitting'));
  });
}

function rowsOf(name: string, plan: readonly Ending[], halves: readonly Ending[]): BenchRow[] {
  const named = plan.filter(({ kind }) => kind === 'named');
  const right = named.filter((ending) => ending.right);
  const mean = (of: (ending: Ending) => number, all = plan) =>
    all.reduce((sum, ending) => sum + of(ending), 0) / all.length;
  const [own, split] = [mean(({ minutes }) => minutes), mean(({ minutes }) => minutes, halves)];
  return [
    {
      name: `${name}: named`,
      value: percent(named.length, plan.length),
      baseline: `${plan.length} faults`,
      ratio: '',
    },
    {
      name: `${name}: right of named`,
      value: percent(right.length, named.length),
      baseline: `± ${errorOf(right.length, named.length)}`,
      ratio: '',
    },
    {
      name: `${name}: called fixed though it is not, of named`,
      value: percent(named.filter(({ falselyFixed }) => falselyFixed).length, named.length),
      baseline: '',
      ratio: '',
    },
    {
      name: `${name}: minutes`,
      value: own.toFixed(0),
      baseline: `half-splitting ${split.toFixed(0)}`,
      ratio: (own / split).toFixed(2),
    },
    {
      name: `${name}: bill`,
      value: mean(({ bill }) => bill).toFixed(0),
      baseline: `handing over ${priceMin}`,
      ratio: (mean(({ bill }) => bill) / priceMin).toFixed(3),
    },
    ...bandRows(name, plan),
  ];
}

/** The plan beside the same plan without changes that make the fault come: minutes, named, and right of the named. */
function rowsOfProvoking(name: string, plan: readonly Ending[], without: readonly Ending[]): BenchRow[] {
  const minutes = (all: readonly Ending[]) =>
    all.reduce((sum, ending) => sum + ending.minutes, 0) / all.length;
  const named = (all: readonly Ending[]) => all.filter(({ kind }) => kind === 'named');
  const right = (all: readonly Ending[]) => named(all).filter((ending) => ending.right).length;
  return [
    {
      name: `${name}: minutes`,
      value: minutes(plan).toFixed(0),
      baseline: `without provoking ${minutes(without).toFixed(0)}`,
      ratio: (minutes(plan) / minutes(without)).toFixed(2),
    },
    {
      name: `${name}: named`,
      value: percent(named(plan).length, plan.length),
      baseline: `without provoking ${percent(named(without).length, without.length)}`,
      ratio: '',
    },
    {
      name: `${name}: right of named`,
      value: percent(right(plan), named(plan).length),
      baseline: `without provoking ${percent(right(without), named(without).length)}`,
      ratio: '',
    },
  ];
}

const bands = [0.5, 0.7, 0.8, 0.9, 0.95, 0.985, 1.01];

/** Chances said of the likeliest suspect at the end, beside how often it was one. */
function bandRows(name: string, endings: readonly Ending[]): BenchRow[] {
  return bands.slice(0, -1).flatMap((low, at): BenchRow[] => {
    const high = bands[at + 1] ?? 1.01;
    const within = endings.filter(({ believed }) => believed.chance >= low && believed.chance < high);
    if (within.length === 0) return [];
    const said = within.reduce((sum, { believed }) => sum + believed.chance, 0) / within.length;
    const right = within.filter(({ believed }) => believed.right).length;
    const points = 100 * (said - right / within.length);
    return [
      {
        name: `${name}: said ${(100 * said).toFixed(1)} %`,
        value: `true ${percent(right, within.length)}`,
        baseline: `${within.length} cases, ± ${errorOf(right, within.length)}`,
        ratio: `${points > 0 ? 'too sure' : 'modest'} by ${Math.abs(points).toFixed(1)} points`,
      },
    ];
  });
}

const percent = (part: number, all: number): string =>
  all === 0 ? 'none' : `${((100 * part) / all).toFixed(1)} %`;
/** Standard error in points; that of one in all where there is none or all. */
const errorOf = (part: number, all: number): string => {
  const share = Math.min(Math.max(part / all, 1 / (all + 2)), 1 - 1 / (all + 2));
  return (100 * Math.sqrt((share * (1 - share)) / all)).toFixed(1);
};

/** Plays batches on all cores, each worker taking the next one when it is done. */
async function playAll(batches: readonly Batch[]): Promise<Ending[][]> {
  const results: Ending[][] = batches.map(() => []);
  let next = 0;
  const worker = async () => {
    const child = fork(fileURLToPath(new URL('./worker.ts', import.meta.url)), {
      execArgv: ['--import', 'tsx'],
    });
    for (let at = next++; at < batches.length; at = next++) {
      const reply = new Promise<Ending[]>((resolve, reject) => {
        child.once('message', (endings) => resolve(endings as Ending[]));
        child.once('exit', () => reject(new Error('A worker ended before its batch.')));
      });
      child.send(batches[at] ?? {});
      results[at] = await reply;
      child.removeAllListeners('exit');
    }
    child.kill();
  };
  await Promise.all(Array.from({ length: Math.min(availableParallelism(), batches.length) }, worker));
  return results;
}
