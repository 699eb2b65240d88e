import { describe, expect, it } from 'vitest';
import { erasedText } from '../../../shared/contract/erased-text.ts';
import { decide } from '../../../state-machines/index.ts';
import { standingReports } from '../../../state-machines/triage/record.ts';
import { TriageCase } from './triage-case.ts';
import { members, uuid } from './triage-events.ts';

const by = { by: members.technician, role: 'technician' as const };
const refusedWith = (ticket: TriageCase, news: Parameters<TriageCase['bring']>[0]): string => {
  const decision = decide(ticket.snapshot, { ...news, ...by, at: ticket.now } as never);
  return decision.accepted ? 'accepted' : decision.refusal.said.code;
};

describe('a report of the client', () => {
  it('given a diary, when the client taps, then it is on the record, and no watch saw it', () => {
    const ticket = new TriageCase().baseline();
    const reportId = ticket.wait(60).report(ticket.openDiary(), 30);
    expect(ticket.record.reports).toMatchObject([
      { id: reportId, occurredAt: ticket.minutesFromNow(-30), receivedAt: ticket.now, lasted: null },
    ]);
    expect(ticket.record.watches).toEqual([]);
    expect(ticket.allowed()).not.toContain('acceptReproduction');
    expect(ticket.replayed()).toStrictEqual(ticket.snapshot);
  });

  it('given a closed ticket, when the client taps, then it is taken all the same', () => {
    const ticket = new TriageCase();
    const diaryId = ticket.openDiary();
    expect(refusedWith(ticket, { type: 'diaryOpened', diaryId, until: ticket.now })).toBe('diaryIdTaken');
    const closed = new TriageCase().closed();
    expect(refusedWith(closed, { type: 'diaryOpened', diaryId: uuid(7), until: closed.now })).toBe(
      'closedReopenFirst',
    );
  });

  it('given one that was sent, when it is sent again, lies ahead, or is of no diary, then it is refused', () => {
    const ticket = new TriageCase();
    const diaryId = ticket.openDiary();
    const reportId = ticket.report(diaryId);
    const report = {
      type: 'occurrenceReported',
      reportId: uuid(8),
      diaryId,
      occurredAt: ticket.now,
    } as const;
    expect(refusedWith(ticket, { ...report, reportId })).toBe('reportSentAlready');
    expect(refusedWith(ticket, { ...report, occurredAt: ticket.minutesFromNow(10) })).toBe('momentInFuture');
    expect(refusedWith(ticket, { ...report, diaryId: uuid(9) })).toBe('diaryUnknown');
    expect(refusedWith(ticket, report)).toBe('accepted');
  });

  it('given an answer after the other, when only one is given, then the other stays', () => {
    const ticket = new TriageCase();
    const reportId = ticket.report(ticket.openDiary());
    ticket.bring({ type: 'reportAnswered', reportId, lasted: 'aMoment', cameBack: null });
    ticket.bring({ type: 'reportAnswered', reportId, lasted: null, cameBack: 'notByItself' });
    expect(ticket.record.reports).toMatchObject([{ lasted: 'aMoment', cameBack: 'notByItself' }]);
  });

  it('given one that was withdrawn, or deleted by the client, then it does not count', () => {
    const ticket = new TriageCase();
    const diaryId = ticket.openDiary();
    const [first, second] = [ticket.report(diaryId), ticket.wait(9).report(diaryId)];
    ticket.send({ type: 'withdrawReport', reportId: first, reason: 'Tapped by a child' });
    expect(standingReports(ticket.record).map(({ id }) => id)).toEqual([second]);
    expect(ticket.refused({ type: 'withdrawReport', reportId: first, reason: 'Again' }).said.code).toBe(
      'reportWithdrawnAlready',
    );
    const deleted = erasedText({ at: '2026-11-02T08:00:00.000Z', by: diaryId });
    const reports = ticket.record.reports.map((each) => ({ ...each, occurredAt: deleted }));
    expect(standingReports({ ...ticket.record, reports })).toEqual([]);
  });

  it('given none, then there is none to withdraw', () => {
    expect(new TriageCase().allowed('dispatcher')).not.toContain('withdrawReport');
    expect(
      new TriageCase().refused({ type: 'withdrawReport', reportId: uuid(3), reason: 'None there' }).said.code,
    ).toBe('noReportToWithdraw');
  });
});
