import { describe, expect, it } from 'vitest';
import { homeCinema, tmds9, withPort } from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';
import { port } from './triage-events.ts';

/** Three switchings, three failures, and nothing known of what the processor's input is set to. */
const failing = () =>
  new TriageCase({ chain: homeCinema() }).baseline().tries(0, 3).send({ type: 'acceptReproduction' });
const withoutSide = { type: 'goOnWithoutSide', reason: 'No menu tells anything of it' } as const;
const seen = {
  type: 'recordLook',
  what: { kind: 'portMode', deviceId: 'processor', portId: 'in1', found: { kind: 'set', mode: tmds9 } },
} as const;

describe('a mode that is known to be wrong', () => {
  it('can be raised once somebody has looked, and 3 of 3 bad before and 0 of 3 after prove it', () => {
    const ticket = failing().send(withoutSide);
    const raise = {
      type: 'declareChange',
      kind: 'raisePortMode',
      target: port('processor', 'in1'),
      expected: 'It stays',
    } as const;
    expect(ticket.refused(raise).said.code).toBe('lookAtPortModeFirst');
    ticket.send(seen, raise, { type: 'applyChange' }).tries(3, 0).send({ type: 'judgeRetest' });
    expect(ticket.lastChange.judgement).toMatchObject({ verdict: 'cleared' });
    expect(ticket.lastChange.judgement?.riskOfBeingFooled).toBeCloseTo(0.05, 9);
    ticket.send({ type: 'keepChange' });
    expect(ticket.lastChange).toMatchObject({ status: 'kept', plainCorrection: true });
  });

  it('may stay whatever the retest says, since it is wrong anyway', () => {
    const chain = withPort(homeCinema(), 'processor', 'in1', { setMode: tmds9 });
    const ticket = new TriageCase({ chain }).reproduced().send(withoutSide);
    ticket.tried('raisePortMode', port('processor', 'in1'), 'persists').send({ type: 'keepChange' });
    expect(ticket.lastChange.status).toBe('kept');
  });
});
