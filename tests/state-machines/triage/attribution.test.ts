import { describe, expect, it } from 'vitest';
import { homeCinema, tmds9, withPort } from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';
import { port } from './triage-events.ts';

describe('what a retest can be put down to', () => {
  const readings = (before: Record<string, unknown>, after: Record<string, unknown>) => {
    const chain = withPort(homeCinema(), 'receiver', 'out1', { setMode: tmds9 });
    const ticket = new TriageCase({ chain }).substituting();
    ticket.declare('raisePortMode', port('receiver', 'out1'), {
      settings: [{ deviceId: 'receiver', key: 'Signal format', to: 'enhanced' }],
    });
    const tie = { deviceId: 'receiver', changeId: ticket.lastChange.id };
    const read = (phase: 'before' | 'after', values: Record<string, unknown>) =>
      ticket.addEvidence({ kind: 'settings', tie, reading: { kind: 'settings', phase, values } as never });
    read('before', before);
    ticket.send({ type: 'applyChange' });
    read('after', after);
    return ticket.watch(60, 0).send({ type: 'judgeRetest' });
  };

  it('is the change, where settings differ in what was declared and nothing else', () => {
    const ticket = readings(
      { 'Signal format': 'standard', Volume: 40 },
      { 'Signal format': 'enhanced', Volume: 40 },
    );
    expect(ticket.lastChange.judgement).toMatchObject({
      attributable: true,
      differences: [
        { deviceId: 'receiver', key: 'Signal format', before: 'standard', after: 'enhanced', declared: true },
      ],
    });
  });

  it('is not known, where more differs: the list says what', () => {
    const ticket = readings(
      { 'Signal format': 'standard', EDID: 'auto' },
      { 'Signal format': 'enhanced', EDID: 'copy', Scaling: true },
    );
    expect(ticket.lastChange.judgement).toMatchObject({
      verdict: 'cleared',
      attributable: false,
      differences: [
        { key: 'EDID', before: 'auto', after: 'copy', declared: false },
        { key: 'Scaling', before: null, after: true, declared: false },
        { key: 'Signal format', declared: true },
      ],
    });
    expect(ticket.lastChange.judgement?.warnings).toMatchObject([
      {
        code: 'settingNotDeclared',
        values: { device: { deviceId: 'receiver' }, setting: 'EDID', before: 'auto', after: 'copy' },
      },
      { code: 'settingNotDeclared', values: { setting: 'Scaling', before: null, after: 'true' } },
    ]);
    ticket.send({ type: 'restoreChange' });
    const changeId = ticket.lastChange.id;
    const confirmation = { kind: 'notDone', reason: 'The client had to leave' } as const;
    const name = { type: 'nameCulprit', changeId, place: port('receiver', 'out1') } as const;
    expect(ticket.refused({ ...name, explanation: 'Port mode', confirmation }).type).toBe(
      'retest-missing-or-weak',
    );
    expect(ticket.allowed()).not.toContain('nameCulprit');
  });

  it('is not known, where the declared change is not to be seen', () => {
    for (const after of ['standard', 'automatic']) {
      const ticket = readings({ 'Signal format': 'standard' }, { 'Signal format': after });
      expect(ticket.lastChange.judgement).toMatchObject({
        attributable: false,
        differences: [{ key: 'Signal format', before: 'standard', after, declared: false }],
      });
      expect(ticket.lastChange.judgement?.warnings).toMatchObject([
        {
          code: 'settingNotAsDeclared',
          values: { setting: 'Signal format', declared: 'enhanced', before: 'standard', after },
        },
      ]);
    }
  });

  it('is judged anew once a wrong reading is withdrawn', () => {
    const ticket = readings({ 'Signal format': 'standard' }, { 'Signal format': 'enhanced', Volume: 41 });
    expect(ticket.lastChange.judgement?.attributable).toBe(false);
    const tie = { deviceId: 'receiver', changeId: ticket.lastChange.id };
    const values = { 'Signal format': 'enhanced' };
    ticket.addEvidence({ kind: 'settings', tie, reading: { kind: 'settings', phase: 'after', values } });
    expect(ticket.send({ type: 'judgeRetest' }).lastChange.judgement?.attributable).toBe(true);
  });
});
