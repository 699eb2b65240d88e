import { describe, expect, it } from 'vitest';
import { organisationSettings } from '../../../shared/contract/organisation.ts';
import { type Wait, workingStates } from '../../../shared/contract/triage.ts';
import {
  dueOf,
  filledIn,
  knownOfChain,
  type PlanRequest,
  planTicket,
} from '../../../state-machines/index.ts';
import { currentWait } from '../../../state-machines/triage/record.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';
import { link, members, opening, type Sent } from './triage-events.ts';
import { working } from './working-states.ts';

const settings = organisationSettings.parse({});
const intake: PlanRequest['known']['intake'] = {
  affectedSources: [],
  affectedDisplays: [],
  content: 'notKnown',
  workedBefore: true,
};
const until = '2026-12-24T10:00:00.000Z';
const forPart = {
  type: 'waitFor',
  kind: 'part',
  what: 'An optical cable of twelve metres',
  actor: 'supplier',
  actorName: 'The wholesaler',
  until,
} satisfies Sent;
const resume = { type: 'resumeWork', note: 'It has come' } satisfies Sent;

const withChangeInPlace: readonly string[] = ['substitute.applied', 'substitute.judged'];

describe.each(workingStates)('waiting from %s', (state) => {
  const start = working[state];

  it('keeps what is waited for, who has to act, and what was left in place', () => {
    const ticket = start();
    expect(ticket.state).toBe(state);
    const open = ticket.record.changes.filter(({ status }) => status === 'applied' || status === 'judged');
    ticket.send(forPart);
    expect(ticket.state).toBe('waiting');
    expect(currentWait(ticket.record)).toMatchObject({
      kind: 'part',
      what: forPart.what,
      actor: 'supplier',
      actorName: 'The wholesaler',
      until,
      leftInPlace: open.map(({ id }) => id),
      by: members.technician,
      ended: null,
    });
    expect(dueOf(ticket.record)).toMatchObject({
      kind: 'wait',
      by: until,
      isInPlace: withChangeInPlace.includes(state),
    });
  });

  it('goes on where it was, and nothing else is changed', () => {
    const ticket = start();
    const { waits: _, ...before } = ticket.record;
    ticket.send(forPart, resume);
    expect(ticket.state).toBe(state);
    expect(ticket.record).toMatchObject(before);
    expect(ticket.record.waits).toMatchObject([{ ended: { because: 'resumed', note: 'It has come' } }]);
    expect(dueOf(ticket.record)).toBeNull();
    expect(ticket.replayed()).toStrictEqual(ticket.snapshot);
  });
});

describe('while a ticket waits', () => {
  const waiting = () => new TriageCase().substituting().send(forPart);

  it('the work is refused, with the way back to it', () => {
    const change = {
      type: 'declareChange',
      kind: 'reseat',
      target: link('L3'),
      expected: 'It stays away',
    } as const;
    const refusal = waiting().refused(change);
    expect(refusal).toMatchObject({ type: 'not-allowed-now', said: { code: 'ticketWaits' } });
    expect(refusal.allowedNow.map(({ type }) => type)).toContain('resumeWork');
  });

  it('notes, evidence and another date are taken', () => {
    const ticket = waiting().send({ type: 'note', text: 'The wholesaler called' });
    ticket.addEvidence({ kind: 'photo', tie: { deviceId: 'receiver' } });
    const later = '2027-01-08T10:00:00.000Z';
    ticket.send({ ...forPart, until: later });
    expect(ticket.state).toBe('waiting');
    expect(ticket.record.waits).toMatchObject([
      { until, ended: { because: 'revised' } },
      { until: later, ended: null },
    ]);
    expect(ticket.send(resume).state).toBe('substitute.ready');
  });

  it('somebody at the desk may put it off and let it go on', () => {
    const ticket = new TriageCase().substituting();
    ticket.sendWith({ role: 'dispatcher' }, forPart).sendWith({ role: 'dispatcher' }, resume);
    expect(ticket.state).toBe('substitute.ready');
  });
});

describe('waiting is refused', () => {
  it('until a time that is past', () => {
    const refusal = new TriageCase().refused({ ...forPart, until: '2025-01-01T10:00:00.000Z' });
    expect(refusal).toMatchObject({ type: 'time-out-of-order', said: { code: 'waitIsOver' } });
  });

  it('while a watch runs, with second line, and once the ticket is closed', () => {
    const watching = new TriageCase().baseline().send({ type: 'startWatch' });
    expect(watching.refused(forPart).type).toBe('watch-running');
    expect(new TriageCase().closed().refused(forPart).type).toBe('not-allowed-now');
    expect(new TriageCase().refused(resume).type).toBe('not-allowed-now');
  });
});

describe('the plan', () => {
  const rarely = { ...opening.symptom, pattern: { kind: 'random', rarely: true } as const, perHour: null };
  const offersOf = (ticket: TriageCase, kit: [] | null = null) => {
    const known = knownOfChain(homeCinema(), ticket.record.symptom, settings, []);
    const { offers } = planTicket(ticket.snapshot, {
      known: { ...known, intake, facts: [], today: '2026-11-02' },
      chainVersion: 3,
      here: { kit, people: 1, refused: [] },
      now: ticket.now,
    });
    return offers;
  };
  const keys = (ticket: TriageCase) => offersOf(ticket).map(({ key }) => key);

  it('lets a ticket wait for reports or logs of a fault that nobody can sit through, the cheaper first', () => {
    const ticket = new TriageCase({ opening: { symptom: rarely } }).baseline();
    const [logs, reports] = offersOf(ticket);
    expect([logs?.key, reports?.key]).toEqual(['waitFor other', 'waitFor client']);
    expect(logs?.toSay).toEqual(['what']);
    expect(logs?.steps[0]).toMatchObject({ actor: 'technician' });
    expect(reports?.steps[0]).toMatchObject({ actor: 'client' });
    const untilOf = (offer: typeof logs): number =>
      Date.parse((offer?.steps[0] as Wait | undefined)?.until ?? '');
    // What a log shows of it is there as soon as it comes: fewer days than until the client has noticed it often enough.
    expect(untilOf(logs)).toBeLessThan(untilOf(reports));
    const [wait] = filledIn(logs ?? { steps: [] }, { what: 'The receiver’s log' }) as Sent[];
    ticket.send(wait as Sent);
    expect(ticket.state).toBe('waiting');
    expect(keys(ticket)).toEqual(['resumeWork']);
  });

  it('advises no second wait of the same kind in a round, but offers it', () => {
    const ticket = new TriageCase({ opening: { symptom: rarely } }).baseline();
    ticket.send({ ...forPart, kind: 'client', actor: 'client' }, resume);
    expect(keys(ticket)[0]).toBe('waitFor other');
    ticket.send({ ...forPart, kind: 'other', actor: 'technician' }, resume);
    const [first, ...others] = keys(ticket);
    expect(first).toBe('escalate');
    expect(others).toEqual(expect.arrayContaining(['waitFor client', 'waitFor other']));
  });
});
