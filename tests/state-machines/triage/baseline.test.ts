import { describe, expect, it } from 'vitest';
import { homeCinema, withDevice } from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';
import type { Sent } from './triage-events.ts';

const audit = { type: 'reviewAudit', chainVersion: 3 } satisfies Sent;
const answers: Sent = { type: 'answerWhatChanged', answers: [{ kind: 'firmware', text: 'Receiver' }] };
const asFound = { type: 'recordAsFound', chainVersion: 3 } satisfies Sent;

describe('baseline', () => {
  it('goes on to reproduce once audit, what-changed and as-found are there, in any order', () => {
    for (const order of [
      [audit, answers, asFound],
      [asFound, audit, answers],
      [answers, asFound, audit],
    ]) {
      const ticket = new TriageCase();
      const states = order.map((command) => ticket.send(command).state);
      expect(states).toEqual(['baseline', 'baseline', 'reproduce']);
    }
  });

  it('takes what has changed from the call', () => {
    const ticket = new TriageCase({
      opening: { whatChanged: [{ kind: 'cable', text: 'New cable', when: null }] },
    });
    expect(ticket.record.whatChanged?.answers).toEqual([{ kind: 'cable', text: 'New cable', when: null }]);
    expect(ticket.send(audit, asFound).state).toBe('reproduce');
  });

  it('lets each part be done again while it lasts', () => {
    const ticket = new TriageCase()
      .send(audit, answers)
      .send({ ...audit, chainVersion: 4, note: 'Label seen' });
    expect(ticket.record.audit).toMatchObject({
      chainVersion: 4,
      note: 'Label seen',
      findings: [{ severity: 'shouldFix' }],
    });
    expect(ticket.state).toBe('baseline');
  });

  it('keeps which firmware the audit found below the organisation’s level', () => {
    const ticket = new TriageCase().sendWith({ firmwareBelowLevel: ['receiver'] }, audit);
    expect(ticket.record.audit?.firmwareBelowLevel).toEqual(['receiver']);
  });

  it('does not watch, change or close anything yet', () => {
    const ticket = new TriageCase();
    for (const type of ['acceptReproduction', 'beginSubstitution', 'applyChange', 'close'] as const) {
      const refusal = ticket.refused({ type });
      expect(refusal.allowedNow.map((each) => each.type)).toEqual([
        'note',
        'amendIntake',
        'answerWhatChanged',
        'waitFor',
        'reviewAudit',
        'recordAsFound',
        'escalate',
      ]);
    }
    expect(ticket.refused({ type: 'acceptReproduction' }).type).toBe('not-allowed-now');
  });

  it('lets the chain be corrected until a side is known', () => {
    const corrected = withDevice(homeCinema(), 'receiver', { firmware: '2.1' });
    const ticket = new TriageCase().reproduced();
    ticket.sendWith({ chain: corrected }, { ...asFound, chainVersion: 4 });
    expect(ticket.record.asFound).toMatchObject({ chainVersion: 4, chain: corrected });
    expect(ticket.state).toBe('locateSide');
    ticket.side('processor', 'stayed');
    expect(ticket.refused({ ...asFound, chainVersion: 5 })).toMatchObject({ type: 'not-allowed-now' });
    expect(ticket.allowed()).not.toContain('recordAsFound');
  });

  it('takes a dispatcher’s answers on what has changed at any time before closing', () => {
    const ticket = new TriageCase().substituting();
    ticket.sendWith({ role: 'dispatcher' }, answers);
    expect(ticket.record.whatChanged).toMatchObject({ answers: [{ kind: 'firmware' }] });
    expect(ticket.state).toBe('substitute.ready');
    expect(new TriageCase().closed().refused(answers).type).toBe('not-allowed-now');
  });

  it('lets the symptom be corrected, which the machine keeps', () => {
    const ticket = new TriageCase().sendWith(
      { role: 'dispatcher' },
      { type: 'amendIntake', symptom: { kind: 'sparkles', perHour: 2 } },
    );
    expect(ticket.record.symptom).toEqual({
      kind: 'sparkles',
      perHour: 2,
      lastsS: null,
      pattern: { kind: 'notKnown' },
      onlyWith: null,
    });
  });
});
