import { describe, expect, it } from 'vitest';
import { TriageCase } from './triage-case.ts';
import { link } from './triage-events.ts';

/** An hour of quiet watching with a change in place: `cleared` at a chance of being fooled of 5 %. */
const watchedQuietly = (): TriageCase =>
  new TriageCase()
    .substituting()
    .declare('replaceCable', link('L3'))
    .send({ type: 'applyChange' })
    .watch(60, 0);

describe('a command that was sent on an outcome', () => {
  it('is taken where the outcome is that one, and the event does not hold what was shown', () => {
    const ticket = watchedQuietly().send({ type: 'judgeRetest', shown: { verdict: 'cleared' } });
    expect(ticket.lastChange.judgement?.verdict).toBe('cleared');
    expect(ticket.log.at(-1)).not.toHaveProperty('shown');
  });

  it('is refused where another is decided, with both', () => {
    const ticket = watchedQuietly();
    const refusal = ticket.refused({ type: 'judgeRetest', shown: { verdict: 'persists' } });
    expect(refusal).toMatchObject({
      type: 'outcome-differs',
      outcomes: { of: 'judgeRetest', shown: { verdict: 'persists' }, decided: { verdict: 'cleared' } },
    });
    expect(refusal.allowedNow.map(({ type }) => type)).toContain('judgeRetest');
  });

  it('is taken once the other outcome is taken, or one’s own is kept with a reason', () => {
    expect(
      watchedQuietly().send({ type: 'judgeRetest', shown: { verdict: 'cleared' } }).lastChange.judgement,
    ).toMatchObject({ verdict: 'cleared', override: null });
    const override = { verdict: 'persists' as const, reason: 'I saw it at the very end' };
    expect(watchedQuietly().send({ type: 'judgeRetest', override }).lastChange.judgement).toMatchObject({
      verdict: 'persists',
      computed: 'cleared',
      override: { reason: override.reason },
    });
  });

  it('is refused for figures that are stricter by now', () => {
    const ticket = new TriageCase()
      .substituting()
      .declare('replaceCable', link('L3'))
      .send({ type: 'applyChange' })
      .watch(60, 0);
    const figures = { revision: 2, risk: 0.0005, reopenDays: 14 };
    const refusal = ticket.refused({ type: 'judgeRetest', shown: { verdict: 'cleared' } }, { figures });
    expect(refusal).toMatchObject({
      type: 'outcome-differs',
      outcomes: { decided: { verdict: 'inconclusive' } },
    });
    expect(ticket.record.settings.revision).toBe(1);
  });

  it('of a side and of an audit too', () => {
    const ticket = new TriageCase().reproduced().menuWatch('processor', 'stayed');
    expect(
      ticket.refused({ type: 'concludeSide', deviceId: 'processor', shown: { side: 'output' } }),
    ).toMatchObject({ type: 'outcome-differs', outcomes: { decided: { side: 'input' } } });
    const findings = [{ place: link('L3'), severity: 'shouldFix' as const, code: 'length-long' }];
    const review = { type: 'reviewAudit', chainVersion: 3 } as const;
    const ticketNow = new TriageCase();
    expect(ticketNow.refused({ ...review, shown: { findings: [] } })).toMatchObject({
      type: 'outcome-differs',
      outcomes: { of: 'reviewAudit', shown: { findings: [] }, decided: { findings } },
    });
    expect(ticketNow.send({ ...review, shown: { findings } }).record.audit?.findings).toEqual(findings);
  });
});
