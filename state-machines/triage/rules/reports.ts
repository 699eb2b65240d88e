import type { Report, TriageRecord } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/message.ts';
import { filed, replaceById } from '../record.ts';
import { because, type Cause } from './refusal.ts';
import { clockToleranceMin, notClosed, rule } from './rule.ts';

/**
 * The client's diary: what somebody at home reports, without an account. It is signed by whoever opened the diary, and
 * proves nothing by itself. A closed ticket takes it too: a fault that came back is nothing to lose.
 */

const withReport = (
  record: TriageRecord,
  reportId: string,
  change: (of: Report) => Report,
): TriageRecord => ({ ...record, reports: replaceById(record.reports, reportId, change) });

export const diaryOpened = rule('diaryOpened', {
  ready: notClosed,
  refuse: (record, { diaryId }) =>
    record.diaries.some(({ id }) => id === diaryId)
      ? because('already-exists', message('diaryIdTaken'))
      : null,
  apply: (record, event) => ({
    ...record,
    diaries: [
      ...record.diaries,
      { id: event.diaryId, openedAt: event.at, until: event.until, closedAt: null, by: event.by },
    ],
  }),
});

const refuseUnknown = (record: TriageRecord, diaryId: string): Cause | null =>
  record.diaries.some(({ id }) => id === diaryId)
    ? null
    : because('unknown-reference', message('diaryUnknown'));

export const diaryClosed = rule('diaryClosed', {
  refuse: (record, { diaryId }) => refuseUnknown(record, diaryId),
  apply: (record, event) => ({
    ...record,
    diaries: replaceById(record.diaries, event.diaryId, (diary) => ({
      ...diary,
      closedAt: diary.closedAt ?? event.at,
    })),
  }),
});

export const occurrenceReported = rule('occurrenceReported', {
  refuse: (record, event) => {
    if (record.reports.some(({ id }) => id === event.reportId)) {
      return because('already-exists', message('reportSentAlready'));
    }
    if (Date.parse(event.occurredAt) > Date.parse(event.at) + clockToleranceMin * 60_000) {
      return because('time-out-of-order', message('momentInFuture', { moment: event.occurredAt }));
    }
    return refuseUnknown(record, event.diaryId);
  },
  apply: (record, { reportId, diaryId, occurredAt, at }) => ({
    ...record,
    reports: [
      ...record.reports,
      { id: reportId, diaryId, occurredAt, lasted: null, cameBack: null, receivedAt: at, withdrawn: null },
    ],
  }),
});

const refuseReport = (record: TriageRecord, reportId: string): Cause | null => {
  const report = record.reports.find(({ id }) => id === reportId);
  if (report === undefined) return because('unknown-reference', message('reportUnknown'));
  return report.withdrawn === null ? null : because('not-allowed-now', message('reportWithdrawnAlready'));
};

export const reportAnswered = rule('reportAnswered', {
  refuse: (record, { reportId }) => refuseReport(record, reportId),
  apply: (record, { reportId, lasted, cameBack }) =>
    withReport(record, reportId, (report) => ({
      ...report,
      lasted: lasted ?? report.lasted,
      cameBack: cameBack ?? report.cameBack,
    })),
});

export const withdrawReport = rule('withdrawReport', {
  ready: (record) =>
    record.reports.some(({ withdrawn }) => withdrawn === null)
      ? null
      : because('not-allowed-now', message('noReportToWithdraw')),
  refuse: (record, { reportId }) => refuseReport(record, reportId),
  apply: (record, event) =>
    withReport(record, event.reportId, (report) => ({
      ...report,
      withdrawn: { ...filed(event), reason: event.reason },
    })),
});
