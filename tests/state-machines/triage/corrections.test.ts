import { describe, expect, it } from 'vitest';
import { type EventOf, evolve, type TriageEvent } from '../../../state-machines/index.ts';
import { standingSides } from '../../../state-machines/triage/record.ts';
import { TriageCase } from './triage-case.ts';
import { link, uuid } from './triage-events.ts';

const reason = 'Pressed by accident';
/** The types of the events that a command came to, its own first. */
function eventsOf(ticket: TriageCase, command: Parameters<TriageCase['send']>[0]): TriageEvent['type'][] {
  const before = ticket.log.length;
  ticket.send(command);
  expect(ticket.replayed()).toEqual(ticket.snapshot);
  return ticket.log.slice(before).map(({ type }) => type);
}
const lastSeen = (ticket: TriageCase): string => ticket.lastWatch.occurrences.at(-1)?.id ?? '';
const watchFor = (ticket: TriageCase, purpose: string): string =>
  ticket.record.watches.findLast((watch) => watch.purpose === purpose)?.id ?? '';

describe('an occurrence that is withdrawn', () => {
  it('takes the side along that rested on it alone, and the ticket back to finding it', () => {
    const ticket = new TriageCase().substituting();
    const types = eventsOf(ticket, { type: 'withdrawOccurrence', occurrenceId: lastSeen(ticket), reason });
    expect(types).toEqual(['withdrawOccurrence', 'sideRevised']);
    expect(ticket.state).toBe('locateSide');
    expect(standingSides(ticket.record)).toEqual([]);
    expect(ticket.record.sides).toMatchObject([
      { deviceId: 'processor', side: 'input', withdrawn: null, superseded: { because: 'correction' } },
    ]);
    expect(ticket.refused({ type: 'beginSubstitution' }).type).toBe('side-unknown');
  });

  it('leaves the side where others show it, with one occurrence less as its proof', () => {
    const ticket = new TriageCase().reproduced().menuWatch('processor', 'stayed', 'stayed');
    ticket.send({ type: 'concludeSide', deviceId: 'processor' });
    ticket.send({ type: 'withdrawOccurrence', occurrenceId: lastSeen(ticket), reason });
    expect(standingSides(ticket.record)).toMatchObject([
      { side: 'input', proof: { kind: 'menu', occurrences: 1 }, superseded: null },
    ]);
    expect(ticket.record.sides).toHaveLength(2);
  });

  it('takes the ticket back to watching where nothing shows the fault any more', () => {
    const ticket = new TriageCase().baseline().watch(20, 1).send({ type: 'acceptReproduction' });
    const only = lastSeen(ticket);
    ticket.side('processor', 'stayed').send({ type: 'beginSubstitution' });
    ticket.send({ type: 'withdrawOccurrence', occurrenceId: only, reason });
    expect(ticket.state).toBe('substitute.ready');
    const types = eventsOf(ticket, { type: 'withdrawOccurrence', occurrenceId: lastSeen(ticket), reason });
    expect(types).toEqual(['withdrawOccurrence', 'reproductionRevised', 'sideRevised']);
    expect(ticket.state).toBe('reproduce');
  });

  it('has the retest judged again that it was seen in; the old judgement stays, superseded', () => {
    const ticket = new TriageCase().substituting().declare('replaceCable', link('L3'));
    ticket.send({ type: 'applyChange' }).watch(120, 1).send({ type: 'judgeRetest' });
    expect(ticket.lastChange.judgement?.verdict).toBe('persists');
    const types = eventsOf(ticket, { type: 'withdrawOccurrence', occurrenceId: lastSeen(ticket), reason });
    expect(types).toEqual(['withdrawOccurrence', 'judgementRevised']);
    expect(ticket.lastChange).toMatchObject({
      status: 'judged',
      judgement: { verdict: 'cleared', computed: 'cleared', occurrences: 0, watchedMin: 120 },
      earlierJudgements: [{ verdict: 'persists', occurrences: 1, superseded: { because: 'correction' } }],
    });
  });

  it('leaves a verdict by hand to whoever gave it, beside what is computed now', () => {
    const ticket = new TriageCase().substituting().declare('replaceCable', link('L3'));
    ticket.send({ type: 'applyChange' }).watch(120, 1);
    ticket.send({ type: 'judgeRetest', override: { verdict: 'persists', reason: 'I saw it' } });
    ticket.send({ type: 'withdrawOccurrence', occurrenceId: lastSeen(ticket), reason });
    expect(ticket.lastChange.judgement).toMatchObject({
      verdict: 'persists',
      computed: 'cleared',
      override: { reason: 'I saw it' },
    });
  });

  it('of the watch before changes nothing that was judged after other watches of other rounds', () => {
    const ticket = new TriageCase().repaired().watch(20, 1);
    ticket.send({ type: 'faultCameBack', reason: 'Seen again' });
    const types = eventsOf(ticket, { type: 'withdrawOccurrence', occurrenceId: lastSeen(ticket), reason });
    expect(types).toEqual(['withdrawOccurrence']);
  });

  it('lets a culprit that falls while a watch runs stand until that has ended', () => {
    const ticket = new TriageCase().repaired().send({ type: 'startWatch' });
    const symptom = { kind: 'dropOuts', pattern: { kind: 'trigger', trigger: 'switchingOn' } } as const;
    const then = eventsOf(ticket, { type: 'amendIntake', symptom });
    expect(then).toContain('judgementRevised');
    expect(ticket.state).toBe('verify');
    expect(eventsOf(ticket, { type: 'endWatch' })).toEqual(['endWatch', 'culpritRevised']);
    expect(ticket.record.culprit).toBeNull();
  });

  it('takes the culprit along whose return it was, and work goes on before it was named', () => {
    const ticket = new TriageCase().repaired();
    const confirming = ticket.record.watches.find(({ purpose }) => purpose === 'confirm');
    const occurrenceId = confirming?.occurrences[0]?.id ?? '';
    const types = eventsOf(ticket, { type: 'withdrawOccurrence', occurrenceId, reason });
    expect(types).toEqual(['withdrawOccurrence', 'culpritRevised']);
    expect(ticket.state).toBe('substitute.ready');
    expect(ticket.record.culprit).toBeNull();
    expect(ticket.record.setAside).toMatchObject([
      { because: 'correction', culprit: { place: link('L3') }, remedy: { kind: 'permanent' } },
    ]);
  });

  it('waits while another watch runs', () => {
    const ticket = new TriageCase().reproduced();
    const before = lastSeen(ticket);
    ticket.send({ type: 'startWatch', menuDeviceId: 'processor' });
    const withdraw = { type: 'withdrawOccurrence', occurrenceId: before, reason } as const;
    expect(ticket.refused(withdraw).type).toBe('watch-running');
    ticket.wait(5).send({ type: 'recordOccurrence', menu: 'stayed' });
    ticket.send({ ...withdraw, occurrenceId: lastSeen(ticket) });
    expect(ticket.lastWatch.occurrences[0]?.withdrawn).toMatchObject({ reason });
  });
});

describe('a watch that does not count any more', () => {
  const voiding = (watchId: string) => ({ type: 'voidWatch', watchId, reason: 'Nobody looked' }) as const;

  it('stays with its reason, and what it saw counts nowhere', () => {
    const ticket = new TriageCase().baseline().watch(60, 2);
    ticket.send(voiding(ticket.lastWatch.id));
    expect(ticket.lastWatch).toMatchObject({ voided: { reason: 'Nobody looked' }, occurrences: [{}, {}] });
    expect(ticket.refused({ type: 'acceptReproduction' }).type).toBe('no-occurrence');
    expect(ticket.refused(voiding(ticket.lastWatch.id)).type).toBe('not-allowed-now');
    expect(ticket.refused(voiding(uuid(7777))).type).not.toBe('time-out-of-order');
  });

  it('leaves a retest to be made again where it was the only one', () => {
    const ticket = new TriageCase().substituting().tried('replaceCable', link('L3'), 'cleared');
    expect(eventsOf(ticket, voiding(ticket.lastWatch.id))).toEqual(['voidWatch', 'judgementRevised']);
    expect(ticket.state).toBe('substitute.applied');
    expect(ticket.lastChange).toMatchObject({ status: 'applied', judgement: null });
    expect(ticket.refused({ type: 'judgeRetest' }).type).toBe('retest-missing');
    ticket.watch(60, 0).send({ type: 'judgeRetest' });
    expect(ticket.lastChange.judgement?.verdict).toBe('cleared');
  });

  it('has a retest judged again that was compared with it', () => {
    const ticket = new TriageCase().baseline().watch(60, 6).watch(60, 1);
    ticket.send({ type: 'acceptReproduction' }).side('processor', 'stayed');
    ticket.send({ type: 'beginSubstitution' }).declare('replaceCable', link('L3'));
    ticket.send({ type: 'applyChange' }).watch(60, 0).send({ type: 'judgeRetest' });
    const risk = ticket.lastChange.judgement?.riskOfBeingFooled ?? 0;
    const first = ticket.record.watches[0]?.id ?? '';
    expect(eventsOf(ticket, voiding(first))).toEqual(['voidWatch', 'judgementRevised']);
    expect(ticket.lastChange.judgement?.riskOfBeingFooled).toBeGreaterThan(risk);
  });

  it('takes culprit and repair along when it was what showed them, even once the repair was done', () => {
    const ticket = new TriageCase().repaired();
    const types = eventsOf(ticket, voiding(watchFor(ticket, 'retest')));
    expect(types).toEqual(['voidWatch', 'judgementRevised', 'culpritRevised']);
    expect(ticket.record).toMatchObject({ culprit: null, remedy: null, asLeft: null });
    expect(ticket.state).toBe('substitute.ready');
  });

  it('undoes “no fault found” that rested on it', () => {
    const ticket = new TriageCase().baseline().watch(60, 0);
    ticket.send({ type: 'chooseRemedy', remedy: { kind: 'noFaultFound', what: 'Nothing seen' } });
    expect(eventsOf(ticket, voiding(ticket.lastWatch.id))).toEqual(['voidWatch', 'remedyRevised']);
    expect(ticket.state).toBe('reproduce');
    expect(ticket.record.setAside).toMatchObject([
      { because: 'correction', remedy: { kind: 'noFaultFound' } },
    ]);
  });
});

describe('the time of an occurrence that is put right', () => {
  it('is told with what it was before, and lies inside its watch', () => {
    const ticket = new TriageCase().baseline().watch(60, 1);
    const [seen] = ticket.lastWatch.occurrences;
    const correct = (occurredAt: string) =>
      ({
        type: 'correctOccurrence',
        occurrenceId: seen?.id ?? '',
        occurredAt,
        reason: 'By the clock',
      }) as const;
    expect(ticket.refused(correct(ticket.minutesFromNow(-70))).type).toBe('time-out-of-order');
    const at = ticket.minutesFromNow(-10);
    ticket.send(correct(at));
    expect(ticket.lastWatch.occurrences).toMatchObject([
      { at, corrections: [{ was: seen?.at, reason: 'By the clock' }] },
    ]);
  });

  it('has the retest judged again that rested on when the fault came', () => {
    const ticket = new TriageCase().baseline().watch(60, 6).send({ type: 'acceptReproduction' });
    const [first] = ticket.lastWatch.occurrences;
    const last = ticket.lastWatch.occurrences.at(-1)?.at ?? '';
    ticket.side('processor', 'stayed').send({ type: 'beginSubstitution' });
    ticket.declare('replaceCable', link('L3')).send({ type: 'applyChange' }).watch(60, 0);
    ticket.send({ type: 'judgeRetest' });
    const before = ticket.lastChange.judgement;
    const occurredAt = new Date(Date.parse(last) + 1000).toISOString();
    ticket.send({
      type: 'correctOccurrence',
      occurrenceId: first?.id ?? '',
      occurredAt,
      reason: 'By the log',
    });
    expect(ticket.replayed()).toEqual(ticket.snapshot);
    expect(ticket.lastChange.judgement?.occurrences).toBe(before?.occurrences);
  });
});

describe('what follows from a correction', () => {
  it('is taken by the machine only where there is something that it can be about', () => {
    const ticket = new TriageCase().substituting();
    const { at, by, role } = ticket.log.at(-1) as EventOf<'beginSubstitution'>;
    const signed = { at, by, role };
    const forged: TriageEvent[] = [
      { type: 'culpritRevised', outcome: { resumeAt: 'substitute.ready' }, ...signed },
      { type: 'remedyRevised', ...signed },
      {
        type: 'judgementRevised',
        outcome: { changeId: uuid(7), judgement: null, oneOfTwo: null },
        ...signed,
      },
    ];
    for (const event of forged) expect(() => evolve(ticket.snapshot, event)).toThrow(/is not taken/);
  });
});
