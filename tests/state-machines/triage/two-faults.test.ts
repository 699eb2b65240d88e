import { describe, expect, it } from 'vitest';
import { chanceOfTwoFaults } from '../../../shared/isolation/two-faults.ts';
import { planTicket } from '../../../state-machines/index.ts';
import { baselineOf, resultsOf } from '../../../state-machines/triage/plan/case-of.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';
import { device, link, type Sent } from './triage-events.ts';

/** Two faults: at 6 an hour, of which the new cable takes five away. */
const rarer = (): TriageCase =>
  new TriageCase()
    .baseline()
    .watch(120, 12)
    .send({ type: 'acceptReproduction' })
    .side('processor', 'vanished')
    .send({ type: 'beginSubstitution' })
    .declare('replaceCable', link('L4'))
    .send({ type: 'applyChange' })
    .watch(120, 2)
    .send({ type: 'judgeRetest' });
const keepAsOneOfTwo = { type: 'keepChange', oneOfTwo: true } satisfies Sent;
const planOf = (ticket: TriageCase) =>
  planTicket(ticket.snapshot, {
    known: {
      chain: homeCinema(),
      intake: {
        affectedSources: [],
        affectedDisplays: ['projector'],
        content: 'notKnown',
        workedBefore: null,
      },
      findings: [],
      headroom: [],
      facts: [],
      today: ticket.now.slice(0, 10),
    },
    chainVersion: 3,
    here: { kit: null, people: 1, refused: [] },
    now: ticket.now,
  } as Parameters<typeof planTicket>[1]);

const judged = (kind: 'replaceCable' | 'bypassDevice', occurrences: number): TriageCase =>
  new TriageCase()
    .baseline()
    .watch(120, 12)
    .send({ type: 'acceptReproduction' })
    .side('processor', kind === 'replaceCable' ? 'vanished' : 'stayed')
    .send({ type: 'beginSubstitution' })
    .declare(kind, kind === 'replaceCable' ? link('L4') : device('receiver'))
    .send({ type: 'applyChange' })
    .watch(120, occurrences)
    .send({ type: 'judgeRetest' });

describe('a fault that became rarer and did not go', () => {
  it('is advised to stay as one of perhaps two, with the chance of that', () => {
    const ticket = rarer();
    expect(ticket.state).toBe('substitute.judged');
    expect(ticket.record.changes[0]?.judgement).toMatchObject({ verdict: 'persists', occurrences: 2 });
    const plan = planOf(ticket);
    expect(plan.sentence.code).toBe('changeMadeItRarer');
    expect(plan.offers[0]?.steps).toMatchObject([keepAsOneOfTwo]);
  });

  it('lets the change stay, and begins a round whose baseline is how often the fault comes now', () => {
    const ticket = rarer().send(keepAsOneOfTwo);
    expect(ticket.state).toBe('reproduce');
    expect(ticket.record).toMatchObject({ round: 2, reproductionAccepted: false });
    const [change] = ticket.record.changes;
    expect(change).toMatchObject({ status: 'kept', round: 1 });
    expect(change?.oneOfTwo?.chance).toBeGreaterThan(0.8);
    expect(baselineOf(ticket.record)).toMatchObject({ mode: 'time', minutes: 120, occurrences: 2 });
    const { twoFaults } = planOf(ticket);
    expect(twoFaults).toMatchObject({
      chance: change?.oneOfTwo?.chance,
      text: { code: 'perhapsTwoFaults' },
    });
    expect(ticket.replayed()).toStrictEqual(ticket.snapshot);
  });

  it('leads to the other fault: its own retest is measured by the rarer rate', () => {
    const ticket = rarer().send(keepAsOneOfTwo, { type: 'acceptReproduction' });
    expect(ticket.state).toBe('locateSide');
    ticket.side('processor', 'stayed').send({ type: 'beginSubstitution' });
    ticket.declare('bypassDevice', device('receiver')).send({ type: 'applyChange' }).watch(120, 0);
    ticket.send({ type: 'judgeRetest' });
    // Two in two hours: two quiet hours could be chance, which they couldn't at six an hour.
    expect(ticket.record.changes[1]?.judgement?.verdict).toBe('inconclusive');
    ticket.watch(600, 0).send({ type: 'judgeRetest' });
    expect(ticket.record.changes[1]?.judgement?.verdict).toBe('cleared');
  });

  it('is no longer one of two once the watch that said so is void, and stays as it was left', () => {
    const ticket = rarer().send(keepAsOneOfTwo);
    const retest = ticket.record.watches.find(({ purpose }) => purpose === 'retest')?.id ?? '';
    ticket.send({ type: 'voidWatch', watchId: retest, reason: 'Nobody looked' });
    expect(ticket.log.slice(-2).map(({ type }) => type)).toEqual(['voidWatch', 'judgementRevised']);
    expect(ticket.record.changes[0]).toMatchObject({ status: 'kept', oneOfTwo: null, judgement: null });
    expect(planOf(ticket).twoFaults).toBeNull();
    expect(ticket.replayed()).toStrictEqual(ticket.snapshot);
  });

  it('has another chance of two faults once one of the watches before it is void', () => {
    const ticket = new TriageCase()
      .baseline()
      .watch(60, 1)
      .watch(120, 12)
      .send({ type: 'acceptReproduction' });
    const [poor] = ticket.record.watches;
    ticket.side('processor', 'vanished').send({ type: 'beginSubstitution' });
    ticket.declare('replaceCable', link('L4')).send({ type: 'applyChange' }).watch(120, 2);
    ticket.send({ type: 'judgeRetest' }, keepAsOneOfTwo);
    const chance = ticket.record.changes[0]?.oneOfTwo?.chance ?? 1;
    ticket.send({ type: 'voidWatch', watchId: poor?.id ?? '', reason: 'Nobody looked' });
    expect(ticket.record.changes[0]?.oneOfTwo?.chance).toBeGreaterThan(chance);
  });

  it('may be put back all the same, and does not stay as the cure', () => {
    expect(rarer().refused({ type: 'keepChange' })).toMatchObject({
      type: 'change-cannot-stay',
      said: { code: 'sayOneOfTwo' },
    });
    expect(rarer().send({ type: 'restoreChange' }).state).toBe('substitute.ready');
  });
});

describe('a change can’t stay as one of two', () => {
  it('where the fault came about as often, or not at all', () => {
    expect(judged('replaceCable', 10).refused(keepAsOneOfTwo).type).toBe('change-cannot-stay');
    expect(judged('replaceCable', 0).refused(keepAsOneOfTwo).said.code).toBe('notOneOfTwoHere');
  });

  it('where it has to be put back whatever it showed', () => {
    expect(judged('bypassDevice', 2).refused(keepAsOneOfTwo).said.code).toBe('diagnosticMustGoBack');
  });
});

describe('the chance of two faults', () => {
  it('is what is assumed before, where rarer says nothing, and grows with how rare it became', () => {
    expect(chanceOfTwoFaults(1)).toBeCloseTo(0.1);
    expect(chanceOfTwoFaults(0.05)).toBeCloseTo(0.1 / (0.1 + 0.9 * 0.05));
    expect(chanceOfTwoFaults(0.001)).toBeGreaterThan(0.99);
  });
});

describe('what was seen while there were perhaps two faults', () => {
  const trustOf = (ticket: TriageCase) =>
    resultsOf(ticket.record).map((result) => [
      result.kind === 'menu' ? 'menu' : 'test' in result ? result.test : result.kind,
      result.trust,
    ]);

  it('counts for little in the next round; what stays is acquitted, since the fault came with it', () => {
    expect(trustOf(rarer().send(keepAsOneOfTwo))).toEqual([
      ['menu', 'perhapsTwo'],
      ['replaceCable', 'earlierRound'],
    ]);
  });

  it('takes little suspicion away where the change had to be put back', () => {
    const ticket = judged('bypassDevice', 2).send({ type: 'restoreChange' });
    expect(trustOf(ticket)).toContainEqual(['bypassDevice', 'perhapsTwo']);
    const asOften = judged('bypassDevice', 10).send({ type: 'restoreChange' });
    expect(trustOf(asOften)).toContainEqual(['bypassDevice', undefined]);
  });
});

describe('a retest in which the fault came late', () => {
  const retested = (minutes: number): TriageCase =>
    new TriageCase()
      .baseline()
      .watch(30, 3)
      .send({ type: 'acceptReproduction' })
      .side('processor', 'vanished')
      .send({ type: 'beginSubstitution' })
      .declare('replaceCable', link('L4'))
      .send({ type: 'applyChange' })
      .watch(minutes, 1);

  it('is watched on until it shows whether the fault comes more rarely', () => {
    const ticket = retested(50);
    const plan = planOf(ticket);
    expect(plan.sentence.code).toBe('changePerhapsRarer');
    expect(plan.offers[0]?.steps[0]?.type).toBe('startWatch');
    ticket.watch(Math.ceil(plan.watchMin ?? 0), 0);
    expect(planOf(ticket).offers[0]?.steps[0]?.type).toBe('judgeRetest');
    expect(planOf(ticket.send({ type: 'judgeRetest' })).sentence.code).toBe('changeMadeItRarer');
  });

  it('is judged at once where the fault came about as soon as it used to', () => {
    expect(planOf(retested(10)).sentence.code).toBe('changeStillFails');
  });
});
