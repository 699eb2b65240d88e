import { describe, expect, it } from 'vitest';
import { TriageCase } from './triage-case.ts';
import { link, uuid } from './triage-events.ts';

/** A ticket whose hour of watching is over, with a log of it. */
function watched(occurrences = 1): { ticket: TriageCase; evidenceId: string; watchId: string } {
  const ticket = new TriageCase().baseline().watch(60, occurrences);
  const evidenceId = ticket.addEvidence({ kind: 'log', tie: { deviceId: 'processor' } });
  return { ticket, evidenceId, watchId: ticket.lastWatch.id };
}

describe('an occurrence that a log shows', () => {
  it('counts once whoever watched confirms it, in the order of time', () => {
    const { ticket, evidenceId, watchId } = watched();
    const occurredAt = ticket.minutesFromNow(-59);
    ticket.send({ type: 'confirmOccurrence', watchId, evidenceId, occurredAt, durationS: 2 });
    expect(ticket.lastWatch.occurrences).toHaveLength(2);
    expect(ticket.lastWatch.occurrences[0]).toMatchObject({ at: occurredAt, durationS: 2, withdrawn: null });
    expect(ticket.replayed()).toEqual(ticket.snapshot);
  });

  it('makes a reproduction of a watch in which nobody saw the fault', () => {
    const { ticket, evidenceId, watchId } = watched(0);
    expect(ticket.allowed()).not.toContain('acceptReproduction');
    ticket.send({ type: 'confirmOccurrence', watchId, evidenceId, occurredAt: ticket.minutesFromNow(-30) });
    expect(ticket.allowed()).toContain('acceptReproduction');
  });

  it('is not counted a second time', () => {
    const { ticket, evidenceId, watchId } = watched();
    const occurredAt = ticket.lastWatch.occurrences[0]?.at ?? '';
    const refusal = ticket.refused({ type: 'confirmOccurrence', watchId, evidenceId, occurredAt });
    expect(refusal.type).toBe('already-exists');
  });

  it('lies inside its watch, and takes a log that stands', () => {
    const { ticket, evidenceId, watchId } = watched();
    const confirm = { type: 'confirmOccurrence', watchId, evidenceId } as const;
    const before = ticket.minutesFromNow(-90);
    expect(ticket.refused({ ...confirm, occurredAt: before }).type).toBe('time-out-of-order');
    const within = { ...confirm, occurredAt: ticket.minutesFromNow(-59) };
    expect(ticket.refused({ ...within, watchId: uuid(7777) }).type).toBe('unknown-reference');
    const photo = ticket.addEvidence({ kind: 'photo' });
    expect(ticket.refused({ ...within, evidenceId: photo }).type).toBe('unknown-reference');
    ticket.withdrawEvidence(evidenceId, 'The log of another device');
    expect(ticket.allowed()).not.toContain('confirmOccurrence');
    expect(ticket.refused(within).type).toBe('no-occurrence');
  });

  it('is answered with a no, which can be taken back and is asked of nobody again', () => {
    const { ticket, evidenceId, watchId } = watched();
    const occurredAt = ticket.minutesFromNow(-40);
    const answer = (said: 'no' | 'open', at = occurredAt) =>
      ({ type: 'answerLogged', watchId, evidenceId, occurredAt: at, answer: said }) as const;
    expect(ticket.refused(answer('open')).type).toBe('already-exists');
    ticket.send(answer('no'));
    expect(ticket.lastWatch).toMatchObject({ loggedAsNone: [{ at: occurredAt, evidenceId }] });
    expect(ticket.lastWatch.occurrences).toHaveLength(1);
    expect(ticket.refused(answer('no')).type).toBe('already-exists');
    expect(ticket.refused(answer('no', ticket.minutesFromNow(-90))).type).toBe('time-out-of-order');
    ticket.send(answer('open'));
    expect(ticket.lastWatch.loggedAsNone).toEqual([]);
    expect(ticket.replayed()).toEqual(ticket.snapshot);
  });

  it('asks what the menu did in a watch for the side, and contradicts no side', () => {
    const ticket = new TriageCase().reproduced().menuWatch('processor', 'vanished');
    const evidenceId = ticket.addEvidence({ kind: 'log', tie: { deviceId: 'processor' } });
    const watchId = ticket.lastWatch.id;
    const occurredAt = ticket.minutesFromNow(-2);
    const confirm = { type: 'confirmOccurrence', watchId, evidenceId, occurredAt } as const;
    expect(ticket.refused(confirm).type).toBe('menu-answer-missing');
    ticket.send({ type: 'concludeSide', deviceId: 'processor' });
    expect(ticket.refused({ ...confirm, menu: 'stayed' }).type).toBe('side-contradiction');
    ticket.send({ ...confirm, menu: 'vanished' });
    expect(ticket.lastWatch.occurrences).toHaveLength(2);
  });

  it('has a verdict that was given on that watch decided anew', () => {
    const ticket = new TriageCase().substituting().tried('replaceCable', link('L3'), 'cleared');
    const evidenceId = ticket.addEvidence({ kind: 'log', tie: { deviceId: 'processor' } });
    const watchId = ticket.lastWatch.id;
    const occurredAt = ticket.minutesFromNow(-30);
    ticket.send({ type: 'confirmOccurrence', watchId, evidenceId, occurredAt });
    expect(ticket.lastChange.judgement).toMatchObject({ verdict: 'persists', occurrences: 1 });
    expect(ticket.lastChange.earlierJudgements).toMatchObject([
      { verdict: 'cleared', occurrences: 0, superseded: { because: 'correction' } },
    ]);
  });
});
