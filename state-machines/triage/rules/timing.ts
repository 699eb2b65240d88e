import type { TriageRecord } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/message.ts';
import { type CompleteCommand, momentOf } from '../events.ts';
import { because, type Cause } from './refusal.ts';
import { clockToleranceMin } from './rule.ts';

/** The latest moment at which something was done on site: nothing on site starts before it. */
export function lastMomentMs(record: TriageRecord): number {
  const moments = [
    ...record.watches.flatMap((watch) => [watch.startedAt, watch.endedAt]),
    ...record.unattended.flatMap(({ startedAt, endedAt }) => [startedAt, endedAt]),
    ...record.changes.flatMap((change) => [change.declaredAt, change.appliedAt, change.finishedAt]),
  ];
  return Math.max(...moments.map((moment) => (moment === null ? -Infinity : Date.parse(moment))), -Infinity);
}

/** Refuses what would begin before the last thing ended; two clocks may differ a little. */
export function refuseTooEarly(record: TriageRecord, event: CompleteCommand): Cause | null {
  const moment = Date.parse(momentOf(event));
  const last = lastMomentMs(record);
  return moment < last - clockToleranceMin * 60_000
    ? because(
        'time-out-of-order',
        message('beforeLastRecorded', { moment: momentOf(event), last: new Date(last).toISOString() }),
      )
    : null;
}

/** When a command's watch or change begins or ends: never before the last thing ended, so that no minute counts twice. */
export function startOf(record: TriageRecord, event: CompleteCommand): string {
  const last = lastMomentMs(record);
  return Date.parse(momentOf(event)) < last ? new Date(last).toISOString() : momentOf(event);
}
