import { describe, expect, it } from 'vitest';
import { quietRisk, reportedAsWatched } from '../../../shared/isolation/reported.ts';
import { reportsBeforeChanges } from '../../../state-machines/triage/record.ts';
import { reportedBaseline } from '../../../state-machines/triage/unattended.ts';
import { TriageCase } from './triage-case.ts';
import { leftSafely, link, type Sent } from './triage-events.ts';

const dayMin = 1440;
type Leaving = Extract<Sent, { type: 'leaveInPlace' }>;
const leaving = (ticket: TriageCase, days = 14): Leaving => ({
  type: 'leaveInPlace',
  until: ticket.minutesFromNow(days * dayMin),
  owner: 'The night desk',
  safety: leftSafely,
  clientsYes: {
    name: 'N. N.',
    at: ticket.now,
    whatChanges: 'The second player is off',
    howToUndo: 'Plug the old cable in again',
  },
  firmware: [{ deviceId: 'processor', level: '2.1' }],
});
const ending = (level: string | null = '2.1', deviceId = 'processor'): Sent => ({
  type: 'endUnattended',
  firmware: [{ deviceId, level }],
});
const judge: Sent = { type: 'judgeRetest' };

/** A change in place, after a diary of ten days in which the client reported four occurrences. */
function reportedThenChanged(): { ticket: TriageCase; diaryId: string } {
  const ticket = new TriageCase().substituting();
  const diaryId = ticket.openDiary(60);
  for (const _ of [1, 2, 3, 4]) ticket.wait(2.5 * dayMin).report(diaryId, 60);
  ticket.send(
    { type: 'declareChange', kind: 'replaceCable', target: link('L3'), expected: 'It stays away' },
    { type: 'applyChange' },
  );
  return { ticket, diaryId };
}
const judgementOf = (ticket: TriageCase) => ticket.record.changes.at(-1)?.judgement;

describe('a change that is left in between visits', () => {
  it.each(Object.keys(leftSafely) as (keyof typeof leftSafely)[])(
    'given that it %s, when it is to be left, then it is refused',
    (danger) => {
      const { ticket } = reportedThenChanged();
      const refusal = ticket.refused({ ...leaving(ticket), safety: { ...leftSafely, [danger]: true } });
      expect(refusal.type).toBe('change-not-applicable');
    },
  );

  it('given no change, no end ahead, or a device that is not there, then it is refused', () => {
    expect(new TriageCase().substituting().allowed()).not.toContain('leaveInPlace');
    const { ticket } = reportedThenChanged();
    expect(ticket.refused({ ...leaving(ticket), until: ticket.now }).said.code).toBe('unattendedEndFar');
    expect(ticket.refused(leaving(ticket, 61)).said.code).toBe('unattendedEndFar');
    const firmware = [{ deviceId: 'nowhere', level: '1' }];
    expect(ticket.refused({ ...leaving(ticket), firmware }).said.code).toBe('deviceNotInChain');
    const clientsYes = { ...leaving(ticket).clientsYes, at: ticket.minutesFromNow(60) };
    expect(ticket.refused({ ...leaving(ticket), clientsYes }).said.code).toBe('acceptanceInFuture');
  });

  it('given that it is left in, then nothing else is done to it until that is ended', () => {
    const { ticket } = reportedThenChanged();
    ticket.send(leaving(ticket));
    expect(ticket.state).toBe('substitute.applied');
    for (const type of ['startWatch', 'judgeRetest', 'restoreChange', 'leaveInPlace'])
      expect(ticket.allowed()).not.toContain(type);
    expect(ticket.allowed()).toContain('endUnattended');
    expect(ticket.refused({ type: 'restoreChange' }).said.code).toBe('unattendedRuns');
    expect(ticket.refused(ending('2.1', 'receiver')).said.code).toBe('firmwareNotReadAgain');
    ticket.wait(14 * dayMin).send(ending());
    expect(ticket.record.unattended).toMatchObject([{ endedAt: ticket.now, owner: 'The night desk' }]);
    expect(ticket.replayed()).toStrictEqual(ticket.snapshot);
  });

  it('given days as quiet as chance hardly makes them, then it is cleared, and says that it rests on reports', () => {
    const { ticket } = reportedThenChanged();
    ticket
      .send(leaving(ticket, 50))
      .wait(50 * dayMin)
      .send(ending(), judge);
    const judgement = judgementOf(ticket);
    // Four in ten days count as two, against fifty quiet ones: (10 / (10 + 50))².
    expect(judgement?.reported).toMatchObject({ days: 50, reported: 0, logged: 0 });
    expect(judgement?.riskOfBeingFooled).toBeCloseTo((10 / 60) ** 2, 3);
    expect(judgement).toMatchObject({ verdict: 'cleared', attributable: true, watchedMin: 0 });
    expect(judgement?.warnings.map(({ code }) => code)).toContain('restsOnReports');
  });

  it('given too few quiet days, then nothing is decided, and it may be left in again', () => {
    const { ticket } = reportedThenChanged();
    ticket
      .send(leaving(ticket, 7))
      .wait(7 * dayMin)
      .send(ending(), judge);
    expect(judgementOf(ticket)?.verdict).toBe('inconclusive');
    ticket.send(leaving(ticket, 40)).wait(40 * dayMin);
    expect(ticket.state).toBe('substitute.applied');
    ticket.send(ending(), judge);
    expect(judgementOf(ticket)).toMatchObject({ verdict: 'cleared', reported: { days: 47 } });
  });

  it('given one report meanwhile, then it is still there, until that report is withdrawn', () => {
    const { ticket, diaryId } = reportedThenChanged();
    ticket.send(leaving(ticket, 45)).wait(45 * dayMin);
    const reportId = ticket.report(diaryId, 3 * dayMin);
    ticket.send(ending(), judge);
    expect(judgementOf(ticket)).toMatchObject({ verdict: 'persists', reported: { reported: 1 } });
    ticket.send({ type: 'withdrawReport', reportId, reason: 'Tapped by a child' });
    expect(judgementOf(ticket)).toMatchObject({ verdict: 'cleared', reported: { reported: 0 } });
    expect(ticket.log.map(({ type }) => type)).toContain('judgementRevised');
    expect(ticket.replayed()).toStrictEqual(ticket.snapshot);
  });

  it('given a report that is sent late for those days, then the verdict is another', () => {
    const { ticket, diaryId } = reportedThenChanged();
    ticket
      .send(leaving(ticket, 45))
      .wait(45 * dayMin)
      .send(ending(), judge);
    ticket.report(diaryId, 5 * dayMin);
    expect(judgementOf(ticket)?.verdict).toBe('persists');
  });

  it('given a log that shows it in those days, then it is still there', () => {
    const { ticket } = reportedThenChanged();
    ticket.send(leaving(ticket)).wait(14 * dayMin);
    const evidenceId = ticket.addEvidence({ kind: 'log' });
    const logged = [{ occurredAt: ticket.minutesFromNow(-dayMin), evidenceId }];
    const end = { ...ending(), logged } as Sent;
    const outside = [{ occurredAt: ticket.minutesFromNow(-20 * dayMin), evidenceId }];
    expect(ticket.refused({ ...end, logged: outside } as Sent).said.code).toBe('momentOutsideWatch');
    ticket.send(end, judge);
    expect(judgementOf(ticket)).toMatchObject({ verdict: 'persists', reported: { logged: 1 } });
  });

  it.each([['2.2'], [null]])(
    'given firmware that is %s afterwards, then nothing is put down to the change',
    (level) => {
      const { ticket } = reportedThenChanged();
      ticket
        .send(leaving(ticket, 50))
        .wait(50 * dayMin)
        .send(ending(level), judge);
      expect(judgementOf(ticket)).toMatchObject({ verdict: 'cleared', attributable: false });
      expect(judgementOf(ticket)?.warnings.map(({ code }) => code)).toContain('firmwareMoved');
    },
  );

  it('given firmware that nobody could read before, then a warning says so, and the verdict stands', () => {
    const { ticket } = reportedThenChanged();
    ticket
      .send({ ...leaving(ticket, 50), firmware: [{ deviceId: 'processor', level: null }] })
      .wait(50 * dayMin)
      .send(ending(null), judge);
    expect(judgementOf(ticket)).toMatchObject({ verdict: 'cleared', attributable: true });
    expect(judgementOf(ticket)?.warnings.map(({ code }) => code)).toContain('firmwareUnread');
  });

  it('given no diary and no log, then quiet says nothing, however long', () => {
    const ticket = new TriageCase().substituting();
    ticket.send(
      { type: 'declareChange', kind: 'replaceCable', target: link('L3'), expected: 'It stays away' },
      { type: 'applyChange' },
    );
    ticket
      .send(leaving(ticket, 50))
      .wait(50 * dayMin)
      .send(ending(), judge);
    expect(judgementOf(ticket)).toMatchObject({ verdict: 'inconclusive', riskOfBeingFooled: null });
  });
});

describe('what is reported', () => {
  it('counts for less than what is watched, at the same rate', () => {
    const [reported, watched] = [
      reportedAsWatched({ days: 10, occurrences: 4 }),
      reportedAsWatched({ days: 10, occurrences: 4 }, { weight: 1, hoursPerDay: 4 }),
    ];
    expect(reported.occurrences / reported.minutes).toBeCloseTo(watched.occurrences / watched.minutes);
    expect(quietRisk(reported, 1000)).toBeGreaterThan(quietRisk(watched, 2000) ?? 1);
    expect(quietRisk({ mode: 'time', minutes: 100, occurrences: 0 }, 1000)).toBeNull();
  });
});

describe('what was reported before any change', () => {
  it('given a change that was undone before the chain was recorded, then what came after it counts, and not during', () => {
    const ticket = new TriageCase();
    const diaryId = ticket.openDiary(60);
    ticket.wait(2 * dayMin).baseline();
    ticket.send({
      type: 'enterLateChange',
      kind: 'reseat',
      target: link('L1'),
      madeAt: ticket.minutesFromNow(-dayMin),
      undoneAt: ticket.minutesFromNow(-dayMin / 2),
      madeBy: 'The client',
    });
    const during = ticket.report(diaryId, 0.75 * dayMin);
    const after = [1, 2].map((days) => ticket.wait(days * dayMin).report(diaryId, 60));
    const counted = reportsBeforeChanges(ticket.record).map(({ id }) => id);
    expect(counted).toEqual(after);
    expect(counted).not.toContain(during);
    expect(reportedBaseline(ticket.record, ticket.now).occurrences).toBe(2);
  });
});
