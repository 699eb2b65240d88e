import { describe, expect, it } from 'vitest';
import { ownChange } from '../../../shared/contract/own-change.ts';
import { TriageCase } from './triage-case.ts';
import { device, link, type Sent } from './triage-events.ts';

const late = (ticket: TriageCase, facts: Partial<Extract<Sent, { type: 'enterLateChange' }>> = {}): Sent => ({
  type: 'enterLateChange',
  kind: 'replaceCable',
  target: link('L3'),
  madeAt: ticket.minutesFromNow(-120),
  madeBy: 'The client',
  seen: 'came',
  ...facts,
});

describe('a change that nobody declared', () => {
  it('is entered at the time at which it was made, with who made it, and is part of the chain where it stays', () => {
    const ticket = new TriageCase().baseline();
    const madeAt = ticket.minutesFromNow(-120);
    ticket.send(late(ticket));
    expect(ticket.state).toBe('reproduce');
    expect(ticket.record.changes).toMatchObject([
      {
        kind: 'replaceCable',
        status: 'kept',
        declaredAt: madeAt,
        appliedAt: madeAt,
        finishedAt: madeAt,
        judgement: null,
        enteredLate: { madeBy: 'The client', seen: 'came', at: ticket.now },
      },
    ]);
    expect(ticket.replayed()).toStrictEqual(ticket.snapshot);
  });

  it('is open where changes are tested and it is still in place: then it is retested and put back like any other', () => {
    const ticket = new TriageCase().substituting().wait(30);
    ticket.send(
      late(ticket, { kind: 'bypassDevice', target: device('receiver'), madeAt: ticket.minutesFromNow(-5) }),
    );
    expect(ticket.state).toBe('substitute.applied');
    expect(ticket.refused(late(ticket)).type).not.toBe('already-exists');
    expect(ticket.send({ type: 'restoreChange' }).state).toBe('substitute.ready');
  });

  it('stands among the others in the order in which they were made', () => {
    const ticket = new TriageCase().substituting();
    const before = ticket.minutesFromNow(5);
    ticket.wait(10).tried('reseat', link('L3'), 'persists').send({ type: 'restoreChange' }).wait(60);
    ticket.send(late(ticket, { madeAt: before, undoneAt: before }));
    expect(ticket.record.changes.map(({ kind }) => kind)).toEqual(['replaceCable', 'reseat']);
  });
});

describe('entering a change late is refused', () => {
  it('before the chain is recorded, while another one is open, and of a place that there is not', () => {
    expect(new TriageCase().refused(late(new TriageCase())).type).toBe('not-allowed-now');
    const open = new TriageCase().substituting().declare('reseat', link('L3')).send({ type: 'applyChange' });
    expect(open.refused(late(open)).type).toBe('change-open');
    const ticket = new TriageCase().baseline();
    expect(ticket.refused(late(ticket, { target: link('L99') })).type).toBe('unknown-reference');
  });

  it('for the future, and undone before it was made', () => {
    const ticket = new TriageCase().baseline();
    const codes = [
      ticket.refused(late(ticket, { madeAt: ticket.minutesFromNow(60) })),
      ticket.refused(late(ticket, { undoneAt: ticket.minutesFromNow(-180) })),
    ].map(({ said }) => said.code);
    expect(codes).toEqual(['lateChangeInFuture', 'undoneBeforeMade']);
  });

  it('beside another change that was in place then: one at a time', () => {
    const ticket = new TriageCase().substituting().wait(10);
    const before = ticket.minutesFromNow(-1);
    ticket.tried('reseat', link('L3'), 'persists').send({ type: 'restoreChange' }).wait(60);
    const refusal = ticket.refused(late(ticket, { madeAt: before, undoneAt: ticket.minutesFromNow(-1) }));
    expect(refusal).toMatchObject({
      type: 'time-out-of-order',
      said: { code: 'lateChangeBesideAnother' },
      place: link('L3'),
    });
  });

  it('where it has to be put back and is still there, before changes are tested; what to do is said', () => {
    const ticket = new TriageCase().baseline();
    const bypass = late(ticket, { kind: 'bypassDevice', target: device('receiver') });
    expect(ticket.refused(bypass).said.code).toBe('lateDiagnosticStillThere');
    ticket.send({ ...bypass, undoneAt: ticket.now } as Sent);
    expect(ticket.record.changes).toMatchObject([{ status: 'restored', finishedAt: ticket.now }]);
  });
});

describe('a change that the program does not know is entered late too', () => {
  const own = ownChange.parse({
    id: '00000000-0000-4000-8000-0000000000aa',
    name: 'Dry the floor socket',
    actsOn: 'link',
    setupMin: 5,
    restoreMin: 0,
    mayStay: true,
  });
  const dried = { kind: 'ownKind', ownKindId: own.id } as const;

  it('of an organisation’s own kinds, with what that says of it', () => {
    const ticket = new TriageCase().baseline();
    ticket.sendWith({ ownChanges: [own] }, late(ticket, dried));
    expect(ticket.record.changes).toMatchObject([
      { kind: 'ownKind', own, status: 'kept', diagnostic: false },
    ]);
    expect(ticket.replayed()).toStrictEqual(ticket.snapshot);
    const elsewhere = late(ticket, { ...dried, target: device('receiver') });
    expect(ticket.refused(elsewhere, { ownChanges: [own] }).type).toBe('change-not-applicable');
  });

  it('described in words, which stays where whoever enters it says so', () => {
    const ticket = new TriageCase().baseline();
    const other = { kind: 'otherChange', detail: 'Moved the rack off the heating pipe' } as const;
    expect(ticket.refused(late(ticket, { kind: 'otherChange' })).said.code).toBe('describeTheChange');
    expect(ticket.refused(late(ticket, other)).said.code).toBe('lateDiagnosticStillThere');
    ticket.send(late(ticket, { ...other, mayStay: true }));
    expect(ticket.record.changes).toMatchObject([{ detail: other.detail, status: 'kept' }]);
  });

  it('is refused of a kind that the organisation does not have', () => {
    const ticket = new TriageCase().baseline();
    expect(ticket.refused(late(ticket, dried)).said.code).toBe('ownKindUnknown');
  });
});
