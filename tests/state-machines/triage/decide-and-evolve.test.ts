import { afterEach, describe, expect, it, vi } from 'vitest';
import {
  decide,
  EventNotTaken,
  type EventOf,
  evolve,
  replay,
  type TriageEvent,
} from '../../../state-machines/index.ts';
import { openChange } from '../../../state-machines/triage/record.ts';
import { rules } from '../../../state-machines/triage/rules/index.ts';
import { TriageCase } from './triage-case.ts';
import { link, opening } from './triage-events.ts';

/** The newest event of a type in a ticket's log. */
function lastOf<Type extends TriageEvent['type']>(ticket: TriageCase, type: Type): EventOf<Type> {
  const event = ticket.log.findLast((each) => each.type === type);
  if (event === undefined) throw new Error(`there is no ${type}`);
  return event as EventOf<Type>;
}

describe('an event', () => {
  it('holds what was decided: the side and its proof, the start of a watch, what follows from a kind of change', () => {
    const ticket = new TriageCase().substituting().declare('replaceCable', link('L3'));
    expect(lastOf(ticket, 'concludeSide').outcome).toEqual({
      side: 'input',
      proof: { kind: 'menu', watchIds: [ticket.lastWatch.id], occurrences: 1 },
    });
    expect(lastOf(ticket, 'startWatch').outcome).toEqual({
      purpose: 'side',
      trigger: null,
      triggerKind: null,
      startedAt: ticket.lastWatch.startedAt,
      menuDeviceId: 'processor',
      changeId: null,
    });
    expect(lastOf(ticket, 'declareChange').outcome).toEqual({
      declaredAt: ticket.now,
      diagnostic: false,
      plainCorrection: false,
      canBeUndone: true,
      showsCulprit: true,
      own: null,
    });
  });

  it('holds a verdict with its risk, the level and length it was judged by, and the figures’ revision', () => {
    const ticket = new TriageCase().substituting().tried('replaceCable', link('L3'), 'cleared');
    const { judgement, changeId } = lastOf(ticket, 'judgeRetest').outcome;
    expect(changeId).toBe(ticket.lastChange.id);
    expect(judgement).toMatchObject({
      verdict: 'cleared',
      computed: 'cleared',
      level: 0.05,
      figures: 1,
      needed: { mode: 'time', remainingMin: 0 },
      watchedMin: 60,
      occurrences: 0,
    });
    expect(judgement.riskOfBeingFooled).toBeLessThan(0.05);
    expect(ticket.lastChange.judgement).toEqual({ ...judgement, at: ticket.now, by: expect.any(String) });
  });

  it('holds the audit’s findings by code, and what its facts were is not in it twice', () => {
    const event = lastOf(new TriageCase().baseline(), 'reviewAudit');
    expect(event.outcome).toEqual({
      findings: [{ code: 'length-long', severity: 'shouldFix', place: link('L3') }],
      firmwareBelowLevel: [],
    });
    expect(event).not.toHaveProperty('known');
  });

  it('holds what closing, “no fault found” and handing over rest on', () => {
    const closed = new TriageCase().closed();
    expect(lastOf(closed, 'close').outcome.proof).toMatchObject({
      verdict: 'cleared',
      level: 0.05,
      figures: 1,
      watchedMin: 60,
      occurrences: 0,
    });
    const quiet = new TriageCase().baseline().watch(60, 0);
    quiet.send({ type: 'chooseRemedy', remedy: { kind: 'noFaultFound', what: 'Nothing seen' } });
    expect(quiet.record.quietProof).toMatchObject({ watchedMin: 60, level: 0.05, figures: 1 });
    const { neededMin } = quiet.record.quietProof ?? {};
    expect(neededMin).toBeCloseTo(-Math.log(0.05) * 10, 9);
  });

  it('keeps an earlier judgement, with why it counts no more', () => {
    const ticket = new TriageCase().substituting().declare('replaceCable', link('L3'));
    ticket.send({ type: 'applyChange' }).watch(5, 0).send({ type: 'judgeRetest' }).watch(60, 0);
    expect(ticket.lastChange).toMatchObject({
      status: 'applied',
      judgement: null,
      earlierJudgements: [{ verdict: 'inconclusive', watchedMin: 5, superseded: { because: 'watchedOn' } }],
    });
    ticket.send(
      { type: 'judgeRetest' },
      { type: 'judgeRetest', override: { verdict: 'persists', reason: 'Seen it' } },
    );
    expect(ticket.lastChange.earlierJudgements.map(({ superseded }) => superseded.because)).toEqual([
      'watchedOn',
      'judgedAgain',
    ]);
    expect(ticket.lastChange.judgement).toMatchObject({ verdict: 'persists', computed: 'cleared' });
  });
});

describe('figures that the organisation has changed', () => {
  const figures = { revision: 2, risk: 0.001, reopenDays: 30 };

  it('are taken in before what is decided by them, as an event of their own', () => {
    const ticket = new TriageCase().substituting().declare('replaceCable', link('L3'));
    ticket.send({ type: 'applyChange' }).watch(60, 0).sendWith({ figures }, { type: 'judgeRetest' });
    expect(ticket.log.slice(-2).map(({ type }) => type)).toEqual(['figuresChanged', 'judgeRetest']);
    expect(ticket.record.settings).toEqual(figures);
    expect(ticket.lastChange.judgement).toMatchObject({ verdict: 'inconclusive', level: 0.001, figures: 2 });
    expect(ticket.replayed()).toStrictEqual(ticket.snapshot);
  });

  it('are not, where the command is refused or the revision is the ticket’s', () => {
    const ticket = new TriageCase().baseline();
    ticket.refused({ type: 'judgeRetest' }, { figures });
    expect(ticket.record.settings.revision).toBe(1);
    ticket.sendWith({ figures: opening.settings }, { type: 'startWatch' });
    expect(ticket.log.at(-2)?.type).toBe('recordAsFound');
  });

  it('leave old verdicts as they were', () => {
    const ticket = new TriageCase().substituting().tried('replaceCable', link('L3'), 'cleared');
    const before = ticket.lastChange.judgement;
    ticket.send({ type: 'restoreChange' }).sendWith({ figures }, { type: 'startWatch' });
    expect(ticket.record.settings.risk).toBe(0.001);
    expect(ticket.lastChange.judgement).toEqual(before);
  });
});

describe('evolve', () => {
  afterEach(() => vi.restoreAllMocks());

  it('throws on a second change, however it was come by, with every refuse answering null', () => {
    const ticket = new TriageCase().substituting().declare('replaceCable', link('L3'));
    const declared = lastOf(ticket, 'declareChange');
    for (const rule of Object.values(rules)) {
      vi.spyOn(rule, 'ready').mockReturnValue(null);
      vi.spyOn(rule, 'refuse').mockReturnValue(null);
    }
    const second = { ...declared, changeId: ticket.newId() };
    expect(() => evolve(ticket.snapshot, second)).toThrow(EventNotTaken);
    const another = ticket.complete({
      type: 'declareChange',
      kind: 'reseat',
      target: link('L3'),
      expected: 'It stays away',
    });
    expect(() => decide(ticket.snapshot, another)).toThrow(EventNotTaken);
    ticket.send({ type: 'applyChange' });
    expect(() => evolve(ticket.snapshot, second)).toThrow(EventNotTaken);
    expect(openChange(ticket.record)?.id).toBe(declared.changeId);
  });

  it('throws on an event that has no place in the state, or is about another change', () => {
    const ticket = new TriageCase().substituting().declare('replaceCable', link('L3'));
    ticket.send({ type: 'applyChange' });
    expect(() => evolve(ticket.snapshot, lastOf(ticket, 'acceptReproduction'))).toThrow(EventNotTaken);
    const before = ticket.snapshot;
    ticket.watch(60, 0).send({ type: 'judgeRetest' });
    const judged = lastOf(ticket, 'judgeRetest');
    expect(() => evolve(before, judged)).not.toThrow();
    const ofAnother = { ...judged, outcome: { ...judged.outcome, changeId: ticket.newId() } };
    expect(() => evolve(before, ofAnother)).toThrow(EventNotTaken);
    expect(() => evolve(before, { type: 'nothing known' } as never)).toThrow(EventNotTaken);
  });

  it('takes in what was decided, without asking whether the rules would decide so', () => {
    const ticket = new TriageCase().reproduced().side('processor', 'stayed');
    const concluded = lastOf(ticket, 'concludeSide');
    const before = replay(opening, ticket.log.slice(0, -1));
    const other = { ...concluded, outcome: { ...concluded.outcome, side: 'output' as const } };
    expect(evolve(before, other).context.sides).toMatchObject([{ side: 'output' }]);
  });
});
