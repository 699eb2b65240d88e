import type { ChangeRecord, Report, TriageRecord, UnattendedWatch } from '../../shared/contract/triage.ts';
import { quietRisk, type ReportedRecord, reportedAsWatched } from '../../shared/isolation/reported.ts';
import type { RetestJudgement } from '../../shared/isolation/retest-statistics.ts';
import { type Message, message } from '../../shared/message/message.ts';
import {
  baselineWatches,
  minutesBetween,
  reportsBeforeChanges,
  spanBeforeChanges,
  standingReports,
} from './record.ts';
import { usable, watchRecordOf } from './retest.ts';

const dayMin = 1440;
type Span = { readonly from: string; readonly to: string };

export const runningUnattended = (record: TriageRecord): UnattendedWatch | null =>
  record.unattended.find(({ endedAt }) => endedAt === null) ?? null;

/** The unattended watches with a change in place that have ended. */
export const unattendedOf = (record: TriageRecord, changeId: string): UnattendedWatch[] =>
  record.unattended.filter((each) => each.changeId === changeId && each.endedAt !== null);

const isIn = ({ from, to }: Span, { occurredAt }: Pick<Report, 'occurredAt'>): boolean =>
  Date.parse(occurredAt) >= Date.parse(from) && Date.parse(occurredAt) < Date.parse(to);

/** Days of a span in which a diary was open, so that somebody could report; each moment once. */
function openDays({ diaries }: TriageRecord, { from, to }: Span): number {
  const spans = diaries
    .map(({ openedAt, until, closedAt }) => ({
      from: Math.max(Date.parse(openedAt), Date.parse(from)),
      to: Math.min(Date.parse(closedAt ?? until), Date.parse(until), Date.parse(to)),
    }))
    .filter((span) => span.to > span.from)
    .sort((a, b) => a.from - b.from);
  let [lengthMs, reached] = [0, Number.NEGATIVE_INFINITY];
  for (const span of spans) {
    lengthMs += Math.max(0, span.to - Math.max(span.from, reached));
    reached = Math.max(reached, span.to);
  }
  return lengthMs / (dayMin * 60_000);
}

/** What was reported in a span, over the days of it in which somebody could. */
export const reportedIn = (record: TriageRecord, span: Span): ReportedRecord => ({
  days: openDays(record, span),
  occurrences: standingReports(record).filter((report) => isIn(span, report)).length,
});

/** What was reported of the chain as it is without a change, up to the first change of this round, or until now. */
export function reportedBaseline(record: TriageRecord, now: string): ReportedRecord {
  const { from, to } = spanBeforeChanges(record);
  const span = { from: from ?? record.openedAt, to: to ?? now };
  return {
    days: openDays(record, span),
    occurrences: reportsBeforeChanges(record).filter((report) => isIn(span, report)).length,
  };
}

type Reported = { days: number; reported: number; logged: number; risk: number | null };

/** What came in over the unattended watches of a change; null where there was none. */
export function reportedWith(record: TriageRecord, change: ChangeRecord): Reported | null {
  const watches = unattendedOf(record, change.id);
  if (watches.length === 0) return null;
  const parts = watches.map(({ startedAt, endedAt, logged }) => ({
    ...reportedIn(record, { from: startedAt, to: endedAt ?? startedAt }),
    logged,
    // A device's log is there all the time, whether anybody could report or not.
    wholeDays: minutesBetween(startedAt, endedAt ?? startedAt) / dayMin,
  }));
  const sum = (of: (part: (typeof parts)[number]) => number) =>
    parts.reduce((total, each) => total + of(each), 0);
  const days = sum((each) => (each.logged.length > 0 ? each.wholeDays : each.days));
  const [reported, logged] = [sum((each) => each.occurrences), sum((each) => each.logged.length)];
  const quietMin = reportedAsWatched({ days, occurrences: 0 }).minutes;
  return { days, reported, logged, risk: reported + logged > 0 ? null : riskOf(record, change, quietMin) };
}

/** Against what was reported before the change; where nothing was, against what was watched. */
function riskOf(record: TriageRecord, change: ChangeRecord, quietMin: number): number | null {
  const before = reportedAsWatched(reportedBaseline(record, change.appliedAt ?? change.declaredAt));
  if (before.occurrences > 0) return quietRisk(before, quietMin);
  const watched = watchRecordOf(
    record,
    usable(baselineWatches(record)).filter(({ mode }) => mode === 'time'),
  );
  return watched.mode === 'time' ? quietRisk(watched, quietMin) : null;
}

/**
 * A retest's verdict with what came in while nobody watched. What was seen in a watch goes before; days alone count as
 * reported: one report makes `persists`, and quiet makes `cleared` where it says enough.
 */
export function withReported(
  record: TriageRecord,
  change: ChangeRecord,
  judged: RetestJudgement,
): RetestJudgement & { reported: Reported | null } {
  const reported = reportedWith(record, change);
  if (reported === null) return { ...judged, reported };
  const { days, risk } = reported;
  const came = reported.reported + reported.logged;
  const said = (reason: Message, verdict: RetestJudgement['verdict']) => ({
    ...judged,
    verdict,
    riskOfBeingFooled: risk,
    reasons: judged.verdict === 'inconclusive' ? [reason] : [...judged.reasons, reason],
    warnings: [...judged.warnings, message('restsOnReports')],
    reported,
  });
  if (judged.verdict === 'persists') return { ...judged, reported };
  if (came > 0)
    return said(
      message('cameWhileUnattended', { days, reported: reported.reported, logged: reported.logged }),
      'persists',
    );
  if (judged.verdict === 'cleared') return { ...judged, reported };
  if (days === 0) return said(message('nobodyCouldReport'), 'inconclusive');
  if (risk === null) return said(message('quietDaysSayNothing', { days }), 'inconclusive');
  const isEnough = risk <= record.settings.risk;
  return said(message('quietDays', { days, chance: risk }), isEnough ? 'cleared' : 'inconclusive');
}

/** Devices whose firmware is another after an unattended watch, or can't be read any more: nothing is put down to the change. */
export const firmwareMoved = (record: TriageRecord, change: ChangeRecord) =>
  unattendedOf(record, change.id).flatMap(({ firmwareBefore, firmwareAfter }) =>
    firmwareBefore.flatMap(({ deviceId, level }) => {
      const now = firmwareAfter.find((each) => each.deviceId === deviceId)?.level ?? null;
      return level === null || level === now ? [] : [{ deviceId, before: level, after: now }];
    }),
  );

/** Devices whose firmware was not read when the change was left in: nobody can say whether it updated itself. */
export const firmwareUnread = (record: TriageRecord, change: ChangeRecord): string[] => [
  ...new Set(
    unattendedOf(record, change.id).flatMap(({ firmwareBefore }) =>
      firmwareBefore.flatMap(({ deviceId, level }) => (level === null ? [deviceId] : [])),
    ),
  ),
];

/** A device's firmware as it was read when a change was left in, or at the end of that. */
export type LevelRead = {
  readonly deviceId: string;
  readonly level: string;
  readonly at: string;
  readonly by: string;
};

/** Such levels, oldest first. */
export const levelsReadUnattended = ({ unattended }: TriageRecord): LevelRead[] =>
  unattended.flatMap(({ firmwareBefore, startedAt, firmwareAfter, endedAt, by }) =>
    [
      ...firmwareBefore.map((read) => ({ ...read, at: startedAt, by })),
      ...firmwareAfter.map((read) => ({ ...read, at: endedAt ?? startedAt, by })),
    ].flatMap(({ level, ...read }) => (level === null ? [] : [{ ...read, level }])),
  );
