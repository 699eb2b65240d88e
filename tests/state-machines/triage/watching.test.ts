import { describe, expect, it } from 'vitest';
import { TriageCase } from './triage-case.ts';
import { uuid } from './triage-events.ts';

const nothingFound = {
  type: 'chooseRemedy',
  remedy: { kind: 'noFaultFound', what: 'Watched for an evening without a drop-out' },
} as const;

describe('watching for the fault', () => {
  it('counts occurrences and minutes between start and end', () => {
    const ticket = new TriageCase().baseline().watch(60, 6);
    const [watch] = ticket.record.watches;
    expect(watch).toMatchObject({ purpose: 'reproduce', mode: 'time', tries: 0, endedAt: ticket.now });
    expect(watch?.occurrences).toHaveLength(6);
    expect(Date.parse(watch?.endedAt ?? '') - Date.parse(watch?.startedAt ?? '')).toBe(60 * 60_000);
  });

  it('counts a try that went well, and a failed one, as tries', () => {
    const ticket = new TriageCase().baseline().tries(7, 3);
    expect(ticket.lastWatch).toMatchObject({ mode: 'trigger', trigger: 'Switch the source', tries: 10 });
    expect(ticket.lastWatch.occurrences).toHaveLength(3);
  });

  it('has one watch running at a time', () => {
    const ticket = new TriageCase().baseline().send({ type: 'startWatch' });
    expect(ticket.refused({ type: 'startWatch' }).type).toBe('watch-running');
    expect(ticket.refused({ type: 'acceptReproduction' }).type).toBe('watch-running');
    expect(ticket.refused({ type: 'escalate', question: 'What now?' }).type).toBe('watch-running');
    expect(ticket.allowed()).not.toContain('startWatch');
    ticket.send({ type: 'endWatch' });
    expect(ticket.refused({ type: 'endWatch' }).type).toBe('no-watch-running');
    expect(ticket.refused({ type: 'recordOccurrence' }).type).toBe('no-watch-running');
  });

  it('says that no watch runs also where none can', () => {
    expect(new TriageCase().refused({ type: 'recordOccurrence' }).type).toBe('no-watch-running');
  });

  it('never skips ahead while the fault was not seen', () => {
    const ticket = new TriageCase().baseline();
    expect(ticket.refused({ type: 'acceptReproduction' }).type).toBe('no-occurrence');
    ticket.watch(30, 0);
    expect(ticket.refused({ type: 'acceptReproduction' }).type).toBe('no-occurrence');
    expect(ticket.allowed()).not.toContain('acceptReproduction');
    expect(ticket.allowed()).toContain('startWatch');
    ticket.watch(30, 1);
    expect(ticket.allowed()).toContain('acceptReproduction');
    expect(ticket.send({ type: 'acceptReproduction' }).state).toBe('locateSide');
  });

  it('wants to know the trigger of tries, and remembers it', () => {
    const ticket = new TriageCase().baseline();
    expect(ticket.refused({ type: 'startWatch', mode: 'trigger' }).type).toBe('invalid-input');
    ticket.tries(2, 1, 'Wake from standby').send({ type: 'startWatch', mode: 'trigger' });
    expect(ticket.lastWatch.trigger).toBe('Wake from standby');
  });

  it('takes no tries in a watch that counts time', () => {
    const ticket = new TriageCase().baseline().send({ type: 'startWatch' });
    expect(ticket.refused({ type: 'recordTry' }).type).toBe('not-allowed-now');
    expect(ticket.allowed()).not.toContain('recordTry');
  });

  it('takes no id twice', () => {
    const ticket = new TriageCase().baseline().send({ type: 'startWatch', watchId: uuid(77) });
    ticket.send({ type: 'recordOccurrence', occurrenceId: uuid(78) });
    expect(ticket.refused({ type: 'recordOccurrence', occurrenceId: uuid(78) }).type).toBe('already-exists');
    ticket.send({ type: 'endWatch' });
    expect(ticket.refused({ type: 'startWatch', watchId: uuid(77) }).type).toBe('already-exists');
  });
});

describe('times', () => {
  it('are those of the phone where it was offline', () => {
    const ticket = new TriageCase().baseline().wait(300);
    ticket.send(
      { type: 'startWatch', happenedAt: ticket.minutesFromNow(-200) },
      { type: 'recordOccurrence', happenedAt: ticket.minutesFromNow(-170) },
      { type: 'endWatch', happenedAt: ticket.minutesFromNow(-140) },
    );
    expect(ticket.lastWatch).toMatchObject({
      startedAt: ticket.minutesFromNow(-200),
      endedAt: ticket.minutesFromNow(-140),
      occurrences: [{ at: ticket.minutesFromNow(-170) }],
    });
  });

  it('refuse what is still to come, or was before the ticket, beyond two minutes', () => {
    const ticket = new TriageCase().baseline().wait(10);
    const start = (minutes: number) =>
      ({ type: 'startWatch', happenedAt: ticket.minutesFromNow(minutes) }) as const;
    expect(ticket.refused(start(3)).type).toBe('time-out-of-order');
    expect(ticket.refused(start(-13)).type).toBe('time-out-of-order');
    expect(ticket.send(start(2)).lastWatch.startedAt).toBe(ticket.minutesFromNow(2));
  });

  it('refuse occurrences before the watch, and an end before what was seen', () => {
    const ticket = new TriageCase().baseline().wait(60).send({ type: 'startWatch' });
    const at = (minutes: number) => ({ happenedAt: ticket.minutesFromNow(minutes) });
    expect(ticket.refused({ type: 'recordOccurrence', ...at(-1) }).type).toBe('time-out-of-order');
    ticket.send({ type: 'recordOccurrence', ...at(0) });
    ticket.wait(10).send({ type: 'recordOccurrence' });
    expect(ticket.refused({ type: 'endWatch', ...at(-1) }).type).toBe('time-out-of-order');
    expect(ticket.send({ type: 'endWatch', ...at(0) }).lastWatch.endedAt).toBe(ticket.now);
  });

  it('never count a minute twice: a watch that began a little before the last one ended begins at that end', () => {
    const ticket = new TriageCase().baseline().watch(60, 1);
    const ended = ticket.lastWatch.endedAt;
    const early = (minutes: number) =>
      ({ type: 'startWatch', happenedAt: ticket.minutesFromNow(minutes) }) as const;
    expect(ticket.refused(early(-3)).type).toBe('time-out-of-order');
    expect(ticket.send(early(-1)).lastWatch.startedAt).toBe(ended);
  });
});

describe('an occurrence recorded by mistake', () => {
  it('is withdrawn with its reason, and its try with it', () => {
    const ticket = new TriageCase().baseline().tries(2, 2);
    const [first] = ticket.lastWatch.occurrences;
    ticket.send({ type: 'withdrawOccurrence', occurrenceId: first?.id ?? '', reason: 'Pressed by accident' });
    expect(ticket.lastWatch.tries).toBe(3);
    expect(ticket.lastWatch.occurrences[0]?.withdrawn).toMatchObject({ reason: 'Pressed by accident' });
    const again = { type: 'withdrawOccurrence', occurrenceId: first?.id ?? '', reason: 'Once more' } as const;
    expect(ticket.refused(again).type).toBe('not-allowed-now');
  });

  it('that was the only one takes the ticket back to watching', () => {
    const ticket = new TriageCase().baseline().watch(20, 1).send({ type: 'acceptReproduction' });
    const occurrenceId = ticket.lastWatch.occurrences[0]?.id ?? '';
    ticket.send({ type: 'withdrawOccurrence', occurrenceId, reason: 'That was the remote control' });
    expect(ticket.state).toBe('reproduce');
    expect(ticket.refused({ type: 'acceptReproduction' }).type).toBe('no-occurrence');
  });

  it('must be one that there is', () => {
    const ticket = new TriageCase().baseline().watch(20, 1);
    const unknown = { type: 'withdrawOccurrence', occurrenceId: uuid(5), reason: 'Not there' } as const;
    expect(ticket.refused(unknown).type).toBe('unknown-reference');
  });
});

describe('no fault found', () => {
  // -ln(0.05) / 6 an hour: 29.96 min; Hanley and Lippman-Hand 1983 give 3 / 6 h = 30 min.
  it('needs as long a quiet watch as the reported rate asks for', () => {
    const ticket = new TriageCase().baseline().watch(20, 0);
    const refusal = ticket.refused(nothingFound);
    expect(refusal).toMatchObject({ type: 'watch-record-too-short', remainingMin: 10 });
    expect(ticket.allowed()).not.toContain('chooseRemedy');
    ticket.watch(10, 0);
    expect(ticket.allowed()).toContain('chooseRemedy');
    expect(ticket.send(nothingFound).state).toBe('remedy');
  });

  it('is not for a fault that was seen, and no other remedy is for one that was not', () => {
    expect(new TriageCase().baseline().watch(600, 1).refused(nothingFound).type).toBe('not-allowed-now');
    const quiet = new TriageCase().baseline().watch(60, 0);
    const repair = { type: 'chooseRemedy', remedy: { kind: 'permanent', what: 'A new cable' } } as const;
    expect(quiet.refused(repair).type).toBe('not-allowed-now');
    expect(new TriageCase().culpritNamed().refused(nothingFound).type).toBe('not-allowed-now');
  });

  it('closes without another watch, unless the fault is seen after all', () => {
    const ticket = () =>
      new TriageCase()
        .baseline()
        .watch(60, 0)
        .send(nothingFound, { type: 'finishRemedy', asLeftChainVersion: 3 });
    expect(ticket().send({ type: 'close' }).state).toBe('closed');
    const seen = ticket().watch(5, 1);
    expect(seen.refused({ type: 'close' }).type).toBe('not-allowed-now');
    seen.send({ type: 'faultCameBack', reason: 'Seen while packing up' });
    expect(seen.state).toBe('reproduce');
    expect(seen.allowed()).toContain('acceptReproduction');
  });

  it('can be withdrawn: the ticket watches on', () => {
    const ticket = new TriageCase().baseline().watch(60, 0).send(nothingFound);
    ticket.send({ type: 'withdrawRemedy', reason: 'The client has seen it again' });
    expect(ticket.state).toBe('reproduce');
    expect(ticket.record.remedy).toBeNull();
    expect(ticket.record.setAside).toMatchObject([
      { because: 'remedyWithdrawn', remedy: nothingFound.remedy },
    ]);
  });
});
