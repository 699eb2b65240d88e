import type { OverDays } from '../../../shared/contract/plan.ts';
import type { TriageRecord } from '../../../shared/contract/triage.ts';
import { faultTable } from '../../../shared/isolation/fault-table.ts';
import { figureOf } from '../../../shared/isolation/figures.ts';
import {
  type FaultTable,
  noFaultFoundWatchMin,
  perDayOf,
  type RetestNeed,
  visitAtMostMin,
  type WatchRecord,
  type WayOverDays,
  waysOverDays,
} from '../../../shared/isolation/index.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import { changeInPlace } from '../record.ts';
import { fullNeedOf } from '../retest.ts';
import { reportedBaseline } from '../unattended.ts';
import type { Asked } from './asked.ts';
import { baselineOf } from './case-of.ts';

/** Reports of less than this many days tell of bad luck as much as of a rate; assumed. */
const fewestDays = 1;

type Rate = { readonly perHour: number | null; readonly isRare: boolean };

/** How often the fault comes, as reported before as told; and whether that is too rarely to be watched for in a visit. */
export function rateOf(record: TriageRecord, now: string, table?: FaultTable): Rate {
  const { symptom, settings } = record;
  const { days, occurrences } = reportedBaseline(record, now);
  const hours = days * hoursOf(table);
  const perHour = occurrences > 0 && days >= fewestDays ? occurrences / hours : symptom.perHour;
  const rarely = perHour === null && symptom.pattern.kind === 'random' && symptom.pattern.rarely;
  const isRare =
    rarely || (perHour !== null && noFaultFoundWatchMin(perHour, settings.risk) > visitAtMostMin);
  return { perHour, isRare };
}

const hoursOf = (table?: FaultTable): number => perDayOf(1, table);

/** The ways of a rare fault, where the ticket is watching or about to; null for any other. */
export function overDaysOf({ record, state, now, table }: Asked): OverDays | null {
  const [stage] = state.split('.');
  if (stage === undefined || !['baseline', 'reproduce', 'locateSide', 'substitute'].includes(stage))
    return null;
  const told = rateOf(record, now, table);
  const baseline = baselineOf(record);
  const need = baseline === null ? null : fullNeedOf(record);
  // What was watched says more than what was told.
  if (need === null ? !told.isRare : !isBeyondVisit(need, table)) return null;
  const perHour = told.isRare ? told.perHour : perHourIn(baseline);
  const wanted = changeInPlace(record) === null ? 'baseline' : 'retest';
  const ways = waysOverDays({ perHour, risk: record.settings.risk, wanted }, table);
  return { perDay: perDayOf(perHour, table), ways: ways.map(inWords) };
}

/** Whether what a quiet retest takes is more than anybody sits through in a visit. */
export function isBeyondVisit(need: RetestNeed, table: FaultTable = faultTable): boolean {
  if (need.mode === 'look') return false;
  return need.mode === 'time'
    ? need.totalWatchMin > visitAtMostMin
    : need.totalTries > mostTriesAVisit ||
        need.totalTries * figureOf(table.planning.oneTry, 'minutes') > visitAtMostMin;
}

/** Nobody switches something off and on more often than this in one visit, however quick it is; assumed. */
const mostTriesAVisit = 60;

/** How often it was seen to come; null where tries were counted. */
const perHourIn = (baseline: WatchRecord | null): number | null =>
  baseline?.mode === 'time' && baseline.minutes > 0 ? (60 * baseline.occurrences) / baseline.minutes : null;

const inWords = (way: WayOverDays): OverDays['ways'][number] => {
  const { kind, minutes, days } = way;
  return { ...way, text: message('wayOverDays', { way: message(codes[kind]), minutes, days }) };
};

/** What is said in place of a watch that nobody can sit through. */
export function tooRare({ perDay, ways }: OverDays): Message {
  const visit = ways.find(({ kind }) => kind === 'visit');
  const others = ways.flatMap(({ kind, text }) => (kind === 'visit' ? [] : [text]));
  return message('tooRareToWatch', { everyDays: 1 / perDay, watch: visit?.minutes ?? 0, ways: others });
}

/** How each way is named. */
const codes = {
  diary: 'wayDiary',
  logs: 'wayLogs',
  unattended: 'wayUnattended',
  remote: 'wayRemote',
  visit: 'wayVisit',
} as const;
