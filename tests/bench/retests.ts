import type { Pattern, TriageRecord, Watch } from '../../shared/contract/triage.ts';
import { amountsOf, judgeRetest, requiredQuietTries } from '../../shared/isolation/retest-statistics.ts';
import { fullNeedOf, judgeWatches } from '../../state-machines/triage/retest.ts';
import { TriageCase } from '../state-machines/triage/triage-case.ts';
import { opening } from '../state-machines/triage/triage-events.ts';
import { randomFrom } from '../support/random.ts';
import { argument } from './argument.ts';
import type { BenchRow } from './bench-row.ts';

const retests = Number(argument('retests') ?? 20_000);
const mostBaselineMin = 480;
/** Nobody watches while the change is made. */
const changeMin = 10;

type Random = () => number;
type World = {
  name: string;
  told: Pattern;
  /** Minutes on a clock, from power-on, at which the fault comes. */
  comes(random: Random, untilMin: number): number[];
  /** The change switches the devices off and on. */
  powerCycles?: boolean;
};

const after = (random: Random, meanMin: number) => -Math.log(1 - random()) * meanMin;

const steady =
  (perHour: number, fromMin = 0) =>
  (random: Random, untilMin: number): number[] => {
    const times: number[] = [];
    for (let at = fromMin + after(random, 60 / perHour); at < untilMin; at += after(random, 60 / perHour))
      times.push(at);
    return times;
  };

const bursts = (perHour: number, size: number, gapMin: number) => (random: Random, untilMin: number) =>
  steady(perHour)(random, untilMin)
    .flatMap((start) => {
      const burst = [start];
      for (let at = start; random() > 1 / size; burst.push(at)) at += after(random, gapMin);
      return burst;
    })
    .sort((a, b) => a - b);

const random: Pattern = { kind: 'random', rarely: false };
const notKnown: Pattern = { kind: 'notKnown' };
const worlds: readonly World[] = [
  { name: 'steady, 0.5 an hour, told at random', told: random, comes: steady(0.5) },
  { name: 'steady, 2 an hour, told at random', told: random, comes: steady(2) },
  { name: 'steady, 20 an hour, told nothing', told: notKnown, comes: steady(20) },
  { name: 'bursts of 3, 0.5 an hour, told nothing', told: notKnown, comes: bursts(0.5, 3, 2) },
  { name: 'bursts of 5, 1 an hour, told at random', told: random, comes: bursts(1, 5, 1) },
  { name: 'bursts of 2, 2 an hour, told at random', told: random, comes: bursts(2, 2, 3) },
  { name: 'bursts of 4, 0.3 an hour, told as bursts', told: { kind: 'bursts' }, comes: bursts(0.3, 4, 6) },
  {
    name: 'bursts of 3, 1 an hour, far apart, told as bursts',
    told: { kind: 'bursts' },
    comes: bursts(1, 3, 15),
  },
  // Apart: written before the figures of the process were settled, and not looked at while they were.
  { name: 'apart: bursts of 7, 0.7 an hour, told nothing', told: notKnown, comes: bursts(0.7, 7, 4) },
  { name: 'apart: bursts of 2, 1.5 an hour, told at random', told: random, comes: bursts(1.5, 2, 6) },
  ...[15, 45, 90].flatMap((warmMin): World[] => [
    {
      name: `once warm (${warmMin} min), told when`,
      told: { kind: 'warm', afterMin: warmMin },
      comes: steady(2, warmMin),
      powerCycles: true,
    },
    {
      name: `once warm (${warmMin} min), not told when`,
      told: { kind: 'warm', afterMin: null },
      comes: steady(2, warmMin),
      powerCycles: true,
    },
  ]),
];

/** A ticket whose fault comes like this, with one watch to be written over. */
function ticketOf(told: Pattern): { record: TriageRecord; watch: Watch } {
  const ticket = new TriageCase({
    opening: { symptom: { ...opening.symptom, perHour: null, pattern: told } },
  }).baseline();
  ticket.watch(1, 1);
  const [watch] = ticket.record.watches.slice(-1);
  if (watch === undefined) throw new Error('No watch was made.');
  return { record: ticket.record, watch };
}

type Span = { onMin: number; fromMin: number; toMin: number; times: readonly number[] };

/** A watch of part of a run of the devices, which began `onMin` before its own beginning. */
function watched(template: Watch, { onMin, fromMin, toMin, times }: Span): Watch {
  const instant = (min: number) => new Date(Date.UTC(2026, 0, 1) + min * 60_000).toISOString();
  const [occurrence] = template.occurrences;
  if (occurrence === undefined) throw new Error('The watch to write over has no occurrence.');
  return {
    ...template,
    conditions: { ...template.conditions, sincePowerOnMin: onMin },
    startedAt: instant(fromMin),
    endedAt: instant(toMin),
    occurrences: times.map((at) => ({ ...occurrence, at: instant(at) })),
  };
}

type Tally = { judged: number; cleared: number; needMin: number };

function play(world: World, { record, watch }: ReturnType<typeof ticketOf>, random: Random): Tally | null {
  const times = world.comes(random, mostBaselineMin * 20);
  const seen = times.filter((at) => at < mostBaselineMin).slice(0, 3);
  if (seen.length === 0) return null;
  const endMin = seen.length === 3 ? (seen[2] ?? mostBaselineMin) : mostBaselineMin;
  const before = watched(watch, { onMin: 0, fromMin: 0, toMin: endMin, times: seen });
  const based = { ...record, watches: [before] };
  const need = fullNeedOf(based);
  if (need === null) return null;
  const total = amountsOf(need).total;
  // From the first moment at which it may come again, as the ticket knows it.
  const known = world.told.kind === 'warm' ? Math.min(world.told.afterMin ?? Infinity, seen[0] ?? 0) : 0;
  const clock = world.powerCycles === true ? 0 : endMin + changeMin;
  const quietMin = total + (world.powerCycles === true ? known : 0) + 0.01;
  const ofRetest = (world.powerCycles === true ? world.comes(random, quietMin * 2) : times).filter(
    (at) => at > clock && at < clock + quietMin,
  );
  const retest: Watch = {
    ...watched(watch, { onMin: clock, fromMin: clock, toMin: clock + quietMin, times: ofRetest.slice(0, 1) }),
    purpose: 'retest',
    changeId: watch.id,
  };
  const { verdict } = judgeWatches(based, [retest]);
  if (verdict === 'inconclusive') throw new Error(`${world.name}: the length asked for did not settle it.`);
  return { judged: 1, cleared: verdict === 'cleared' ? 1 : 0, needMin: total };
}

/** The same of a fault on a trigger, whose baseline ends with its third failure, or after twenty tries. */
function triggerRow(chance: number): BenchRow {
  const random = randomFrom(Math.round(chance * 1000));
  let [judged, cleared, needTries] = [0, 0, 0];
  while (judged < retests) {
    const before = { mode: 'trigger' as const, tries: 0, failures: 0 };
    while (before.tries < 20 && before.failures < 3) {
      before.tries += 1;
      if (random() < chance) before.failures += 1;
    }
    const need = requiredQuietTries(before.failures, before.tries, 0.05);
    if (need === null) continue;
    let [tries, failures] = [0, 0];
    while (tries < need && failures === 0) {
      tries += 1;
      if (random() < chance) failures += 1;
    }
    judged += 1;
    needTries += need;
    if (judgeRetest(before, { mode: 'trigger', tries, failures }).verdict === 'cleared') cleared += 1;
  }
  return row(
    `on a trigger, ${chance * 100} % of tries`,
    cleared / judged,
    `${Math.round(needTries / judged)} tries`,
  );
}

const row = (name: string, share: number, need: string): BenchRow => ({
  name,
  value: `${(share * 100).toFixed(1)} % cleared, ${need}`,
  baseline: '5 % allowed',
  ratio: (share / 0.05).toFixed(2),
});

/**
 * Retests of a change that did nothing, as long as the ticket asks for: how often it is called cleared although the fault
 * is there, at 5 % allowed. `--retests=2000` plays as many as it says in each world, not 20,000.
 */
export async function benchRetests(): Promise<BenchRow[]> {
  return [...worlds.map(worldRow), ...[0.2, 0.5, 0.9].map(triggerRow)];
}

function worldRow(world: World, at: number): BenchRow {
  const random = randomFrom(20_261_130 + at);
  const ticket = ticketOf(world.told);
  const sum: Tally = { judged: 0, cleared: 0, needMin: 0 };
  while (sum.judged < retests) {
    const one = play(world, ticket, random);
    if (one === null) continue;
    sum.judged += 1;
    sum.cleared += one.cleared;
    sum.needMin += one.needMin;
  }
  return row(world.name, sum.cleared / sum.judged, `${Math.round(sum.needMin / sum.judged)} min`);
}
