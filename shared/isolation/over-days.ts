import { type FaultTable, faultTable } from './fault-table.ts';
import { figureOf } from './figures.ts';
import { goodBaseline } from './quiet-length.ts';

/** Assumed: who tells no rate and says "rarely" means once in two days. */
const rarelyPerDay = 0.5;
/** A working day, in minutes: what takes longer is not watched for in one visit; common practice, no source. */
export const visitAtMostMin = 480;

/** A change is left in for so many days at most, however many would be needed; assumed. */
export const leftInAtMostDays = 21;

export type WayOverDays = {
  readonly kind: 'diary' | 'logs' | 'unattended' | 'remote' | 'visit';
  /** Of people's work, and of waiting, both on average. */
  readonly minutes: number;
  readonly days: number;
  /** Minutes, with what the days are worth. */
  readonly costMin: number;
};

export type RareFault = {
  /** Per hour of use; null where only "rarely" is known. */
  readonly perHour: number | null;
  readonly risk: number;
  /** What is wanted: to know how often it comes, or whether it stays away with a change in place. */
  readonly wanted: 'baseline' | 'retest';
};

/** How often the fault comes on a day of use. */
export const perDayOf = (perHour: number | null, table: FaultTable = faultTable): number =>
  perHour === null ? rarelyPerDay : perHour * figureOf(table.planning.use, 'hoursPerDay');

/** Minutes of watching that a day is worth on which somebody lives with the fault and reports it. */
const watchedPerDayMin = (table: FaultTable): number =>
  figureOf(table.planning.use, 'hoursPerDay') * 60 * figureOf(table.weighing.reports, 'weight');

/** Minutes of watching that a change left in for as long as it may be stands for. */
export const leftInAtMostMin = (table: FaultTable): number => leftInAtMostDays * watchedPerDayMin(table);

/**
 * What leaving a change in is worth, in minutes of work and the worth of the days, until as much was seen as in so many
 * minutes of watching.
 */
export function leftInWorth(watchMin: number, table: FaultTable): number {
  const { overDays } = table.effort;
  const days = watchMin / watchedPerDayMin(table);
  const work = figureOf(overDays, 'unattended') + figureOf(overDays, 'travel');
  return work + days * figureOf(table.planning.day, 'minutes');
}

/**
 * What there is to do about a fault that comes too rarely to be watched for, the cheapest first: a diary, the devices'
 * logs, a change left in, a step at the client's own hand, and for comparison the visit that watches for it.
 *
 * @param table the organisation's figures, the price of a day among them
 */
export function waysOverDays({ perHour, risk, wanted }: RareFault, table = faultTable): WayOverDays[] {
  const { overDays } = table.effort;
  const perDay = perDayOf(perHour, table);
  const weight = figureOf(table.weighing.reports, 'weight');
  /** Until it was reported often enough, or its staying away means something. */
  const days = (wanted === 'baseline' ? goodBaseline / perDay : -Math.log(risk) / perDay) / weight;
  const watchedDays = days * weight;
  const watchMin = watchedDays * figureOf(table.planning.use, 'hoursPerDay') * 60;
  const minutes = (of: 'diary' | 'logs' | 'unattended' | 'remoteStep' | 'travel') => figureOf(overDays, of);
  const unshown = 1 - figureOf(table.weighing.logsShow, 'chance');
  const ways: Omit<WayOverDays, 'costMin'>[] = [
    ...(wanted === 'baseline'
      ? [{ kind: 'diary' as const, minutes: minutes('diary'), days }]
      : [
          { kind: 'unattended' as const, minutes: minutes('unattended') + minutes('travel'), days },
          { kind: 'remote' as const, minutes: minutes('remoteStep') + minutes('diary'), days },
        ]),
    { kind: 'logs', minutes: minutes('logs') + unshown * minutes('diary'), days: unshown * days },
    { kind: 'visit', minutes: minutes('travel') + watchMin, days: watchMin / visitAtMostMin },
  ];
  const priceOfDay = figureOf(table.planning.day, 'minutes');
  return ways
    .map((way) => ({ ...way, costMin: way.minutes + way.days * priceOfDay }))
    .sort((a, b) => a.costMin - b.costMin);
}
