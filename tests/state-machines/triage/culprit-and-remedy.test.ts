import { describe, expect, it } from 'vitest';
import { TriageCase } from './triage-case.ts';
import { device, link, type Sent, uuid } from './triage-events.ts';

const repair = { type: 'chooseRemedy', remedy: { kind: 'permanent', what: 'A new cable' } } satisfies Sent;
const notDone = { kind: 'notDone', reason: 'The client had to leave' } as const;
const name = (ticket: TriageCase, facts: Partial<Extract<Sent, { type: 'nameCulprit' }>> = {}) =>
  ({
    type: 'nameCulprit',
    changeId: ticket.lastChange.id,
    place: link('L3'),
    explanation: 'The cable',
    confirmation: notDone,
    ...facts,
  }) satisfies Sent;
const triedAndRestored = (result: 'cleared' | 'persists') =>
  new TriageCase().substituting().tried('replaceCable', link('L3'), result).send({ type: 'restoreChange' });

describe('naming the culprit', () => {
  it('rests on a change that cleared the fault, and on seeing the fault return', () => {
    const ticket = triedAndRestored('cleared');
    ticket.send({ type: 'startWatch' });
    expect(ticket.lastWatch).toMatchObject({ purpose: 'confirm', changeId: ticket.lastChange.id });
    ticket.wait(10).send({ type: 'recordOccurrence' }, { type: 'endWatch' });
    const confirmation = { kind: 'returned', watchId: ticket.lastWatch.id } as const;
    expect(ticket.send(name(ticket, { confirmation })).state).toBe('culpritFound');
    expect(ticket.record.culprit).toMatchObject({ place: link('L3'), namedBy: 'technician', confirmation });
  });

  it('takes a reason where the confirmation was not made', () => {
    const ticket = triedAndRestored('cleared');
    expect(ticket.send(name(ticket)).record.culprit?.confirmation).toEqual(notDone);
  });

  it('takes no watch for a confirmation that is not one', () => {
    const ticket = triedAndRestored('cleared');
    const confirmedBy = (watchId: string) => name(ticket, { confirmation: { kind: 'returned', watchId } });
    expect(ticket.refused(confirmedBy(uuid(66))).type).toBe('unknown-reference');
    expect(ticket.refused(confirmedBy(ticket.lastWatch.id)).type).toBe('confirmation-missing');
    ticket.watch(20, 0);
    expect(ticket.refused(confirmedBy(ticket.lastWatch.id)).type).toBe('confirmation-missing');
  });

  it('needs a verdict that counts', () => {
    const ticket = triedAndRestored('persists');
    expect(ticket.refused(name(ticket)).type).toBe('retest-missing-or-weak');
    expect(ticket.allowed()).not.toContain('nameCulprit');
    expect(ticket.allowed()).not.toContain('startWatch');
    ticket.declare('reseat', link('L3')).send({ type: 'applyChange' }, { type: 'restoreChange' });
    expect(ticket.refused(name(ticket)).type).toBe('retest-missing-or-weak');
  });

  it('can’t rest on re-issuing hot plug, whatever its retest says', () => {
    const ticket = new TriageCase().substituting().tried('reissueHotPlug', device('receiver'), 'cleared');
    ticket.send({ type: 'restoreChange' });
    expect(ticket.refused(name(ticket)).type).toBe('retest-missing-or-weak');
  });

  it('names a change of this ticket and a place of this chain', () => {
    const ticket = triedAndRestored('cleared');
    expect(ticket.refused(name(ticket, { changeId: uuid(66) })).type).toBe('unknown-reference');
    expect(ticket.refused(name(ticket, { place: link('L99') }))).toMatchObject({
      type: 'unknown-reference',
      place: link('L99'),
    });
  });

  it('waits while a watch runs', () => {
    const ticket = triedAndRestored('cleared').send({ type: 'startWatch' });
    expect(ticket.refused(name(ticket)).type).toBe('watch-running');
  });

  it('can rest on a change that was kept, whose return can’t be watched for', () => {
    const ticket = new TriageCase().substituting().tried('replaceCable', link('L3'), 'cleared');
    ticket.send({ type: 'keepChange' });
    expect(ticket.allowed()).not.toContain('startWatch');
    expect(ticket.send(name(ticket)).state).toBe('culpritFound');
  });
});

describe('a change still in place', () => {
  it('blocks culprit, remedy and closing, and is named', () => {
    const ticket = new TriageCase().substituting().declare('bypassDevice', device('receiver'));
    ticket.send({ type: 'applyChange' });
    const blocked = () => {
      for (const command of [name(ticket), repair, { type: 'close' } satisfies Sent]) {
        const refusal = ticket.refused(command);
        expect(refusal).toMatchObject({
          type: 'diagnostic-change-in-place',
          place: device('receiver'),
          openChangeId: ticket.lastChange.id,
        });
        expect(refusal.said).toMatchObject({
          code: 'diagnosticInPlace',
          values: { change: 'bypassDevice', place: { kind: 'device', deviceId: 'receiver' } },
        });
      }
      return ticket.state;
    };
    expect(blocked()).toBe('substitute.applied');
    ticket.send({ type: 'startWatch' });
    expect(blocked()).toBe('substitute.retest');
    ticket.wait(60).send({ type: 'endWatch' }, { type: 'judgeRetest' });
    expect(blocked()).toBe('substitute.judged');
    ticket.send({ type: 'restoreChange' });
    expect(ticket.send(name(ticket)).state).toBe('culpritFound');
  });

  it('that may stay has to be finished first, too', () => {
    const ticket = new TriageCase().substituting().tried('replaceCable', link('L3'), 'cleared');
    expect(ticket.refused(name(ticket)).type).toBe('change-open');
    expect(ticket.refused(repair).type).toBe('change-open');
  });
});

describe('the remedy', () => {
  it('is a repair, done with the chain as left', () => {
    const ticket = new TriageCase().culpritNamed().send(repair);
    expect(ticket.state).toBe('remedy');
    ticket.send({ type: 'finishRemedy', asLeftChainVersion: 5 });
    expect(ticket.state).toBe('verify');
    expect(ticket.record.asLeft).toMatchObject({ chainVersion: 5 });
  });

  it('is a workaround with its limits and the client’s acceptance', () => {
    const ticket = new TriageCase().culpritNamed();
    const workaround = (acceptedAt: string) =>
      ({
        type: 'chooseRemedy',
        remedy: {
          kind: 'workaround',
          what: 'Output set to 4:2:0',
          limits: 'Colour edges are softer',
          acceptedBy: 'The client',
          acceptedAt,
        },
      }) satisfies Sent;
    expect(ticket.refused(workaround(ticket.minutesFromNow(30))).type).toBe('time-out-of-order');
    expect(ticket.send(workaround(ticket.now)).record.remedy?.kind).toBe('workaround');
  });

  it('is withdrawn for another, and kept in the record', () => {
    const ticket = new TriageCase()
      .repaired()
      .watch(10, 0)
      .send({ type: 'withdrawRemedy', reason: 'Wrong cable' });
    expect(ticket.state).toBe('culpritFound');
    expect(ticket.record).toMatchObject({ remedy: null, asLeft: null, culprit: { place: link('L3') } });
    expect(ticket.record.setAside).toMatchObject([{ because: 'remedyWithdrawn', reason: 'Wrong cable' }]);
  });

  it('is not settled once the culprit is withdrawn: the search goes on', () => {
    const ticket = new TriageCase().culpritNamed().send({ type: 'withdrawCulprit', reason: 'It came back' });
    expect(ticket.state).toBe('substitute.ready');
    expect(ticket.record.culprit).toBeNull();
    expect(ticket.record.setAside).toMatchObject([
      { because: 'culpritWithdrawn', culprit: { place: link('L3') } },
    ]);
    expect(ticket.allowed()).toContain('declareChange');
  });
});

describe('verifying and closing', () => {
  // Baseline 7 in 70 min: 37.4 quiet minutes at 5 %, as for a retest.
  it('takes as much quiet as a retest does', () => {
    const ticket = new TriageCase().repaired();
    expect(ticket.refused({ type: 'close' }).type).toBe('watch-record-too-short');
    ticket.watch(30, 0);
    expect(ticket.refused({ type: 'close' })).toMatchObject({
      type: 'watch-record-too-short',
      remainingMin: 8,
    });
    ticket.watch(8, 0).send({ type: 'close', note: 'All formats checked' });
    expect(ticket.state).toBe('closed');
    expect(ticket.record).toMatchObject({ closedAt: ticket.now, closing: { note: 'All formats checked' } });
  });

  it('takes a reason instead of more quiet', () => {
    const override = { reason: 'The client wants to use the room tonight' };
    const ticket = new TriageCase().repaired().send({ type: 'close', override });
    expect(ticket.record.closing?.override).toEqual(override);
  });

  it('does not close on a fault that is still there, reason or not', () => {
    const ticket = new TriageCase().repaired().watch(60, 1);
    const override = { reason: 'It is good enough' };
    expect(ticket.refused({ type: 'close', override }).type).toBe('not-allowed-now');
    expect(ticket.allowed()).toContain('faultCameBack');
  });

  it('closes a workaround whose limits the client accepted, with a reason', () => {
    const ticket = new TriageCase().culpritNamed().send({
      type: 'chooseRemedy',
      remedy: {
        kind: 'workaround',
        what: 'A shorter route',
        limits: 'One drop-out an evening',
        acceptedBy: 'The client',
        acceptedAt: '2026-11-02T09:00:00.000Z',
      },
    });
    ticket.send({ type: 'finishRemedy', asLeftChainVersion: 4 }).watch(60, 1);
    expect(ticket.refused({ type: 'close' }).type).toBe('not-allowed-now');
    ticket.send({ type: 'close', override: { reason: 'Within the limits that were accepted' } });
    expect(ticket.state).toBe('closed');
  });

  it('counts only what was watched after the remedy', () => {
    const ticket = new TriageCase()
      .repaired()
      .watch(60, 0)
      .send({ type: 'withdrawRemedy', reason: 'Another way' });
    ticket.send(repair, { type: 'finishRemedy', asLeftChainVersion: 5 });
    expect(ticket.refused({ type: 'close' }).type).toBe('watch-record-too-short');
  });

  it('waits for the end of a watch', () => {
    const ticket = new TriageCase().repaired().watch(60, 0).send({ type: 'startWatch' });
    expect(ticket.refused({ type: 'close' }).type).toBe('watch-running');
    expect(ticket.refused({ type: 'withdrawRemedy', reason: 'Another way' }).type).toBe('watch-running');
  });
});

describe('a fault that comes back', () => {
  it('is taken up again in a new round, with what was seen as its reproduction', () => {
    const ticket = new TriageCase().repaired();
    expect(ticket.refused({ type: 'faultCameBack', reason: 'No change' }).type).toBe('no-occurrence');
    ticket.watch(60, 3).send({ type: 'faultCameBack', reason: 'Three drop-outs in a film' });
    expect(ticket.state).toBe('reproduce');
    expect(ticket.record).toMatchObject({
      round: 2,
      culprit: null,
      remedy: null,
      reproductionAccepted: false,
    });
    expect(ticket.record.setAside).toMatchObject([
      { because: 'faultCameBack', culprit: { place: link('L3') } },
    ]);
    ticket.send({ type: 'acceptReproduction' });
    expect(ticket.refused({ type: 'beginSubstitution' }).type).toBe('side-unknown');
  });

  it('is measured by the chain as it is now: earlier rounds prove nothing any more', () => {
    const ticket = new TriageCase().repaired().watch(60, 3).send({ type: 'faultCameBack', reason: 'Again' });
    ticket
      .send({ type: 'acceptReproduction' })
      .side('processor', 'stayed')
      .send({ type: 'beginSubstitution' });
    ticket.tried('reseat', link('L2'), 'persists').send({ type: 'restoreChange' });
    const cleared = ticket.record.changes[0]?.id ?? '';
    const old = name(ticket, { changeId: cleared });
    expect(ticket.refused(old).type).toBe('retest-missing-or-weak');
    ticket.tried('replaceCable', link('L1'), 'cleared');
    // 4 in 70 min now: 70 · (20^(1/4) − 1) = 78 min, so an hour is not enough.
    expect(ticket.lastChange.judgement?.computed).toBe('inconclusive');
  });
});

describe('reopening', () => {
  it('continues the record within the time that is set', () => {
    const ticket = new TriageCase().closed().wait(30 * 24 * 60);
    ticket.sendWith({ role: 'dispatcher' }, { type: 'reopen', reason: 'The client called again' });
    expect(ticket.state).toBe('reproduce');
    expect(ticket.record).toMatchObject({ round: 2, closedAt: null, closing: null, remedy: null });
    expect(ticket.record.reopenings).toMatchObject([{ reason: 'The client called again' }]);
    expect(ticket.record.setAside).toMatchObject([{ because: 'reopened', closing: { override: null } }]);
    expect(ticket.refused({ type: 'acceptReproduction' }).type).toBe('no-occurrence');
  });

  it('is refused afterwards, and no longer listed', () => {
    const ticket = new TriageCase().closed();
    expect(ticket.allowed()).toContain('reopen');
    ticket.wait(30 * 24 * 60 + 1);
    expect(ticket.refused({ type: 'reopen', reason: 'The client called again' }).type).toBe(
      'reopen-too-late',
    );
    expect(ticket.allowed()).not.toContain('reopen');
  });

  it('is, with notes, all that a closed ticket takes', () => {
    const ticket = new TriageCase().closed();
    expect(ticket.allowed()).toEqual(['note', 'reopen']);
    expect(ticket.send({ type: 'note', text: 'The client is happy' }).state).toBe('closed');
    expect(() => ticket.addEvidence({ kind: 'note' })).toThrow('closedReopenFirst');
  });

  it('takes the client’s signature under its report, which is whole only then, and replays', () => {
    const ticket = new TriageCase().closed();
    const id = ticket.addEvidence({ kind: 'document', tie: { shows: 'signature' } });
    expect(ticket.state).toBe('closed');
    expect(ticket.record.evidence.at(-1)).toMatchObject({ id, tie: { shows: 'signature' } });
    expect(ticket.replayed()).toEqual(ticket.snapshot);
  });
});
