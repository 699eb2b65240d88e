import { describe, expect, it } from 'vitest';
import { dueOf } from '../../../state-machines/index.ts';
import { picturesToCheck } from '../../../state-machines/triage/rules/leaving.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';
import { link, members, type Sent } from './triage-events.ts';

const offered = [
  { way: 'goOn', minutes: 1200, days: 3, sureness: 0.9, change: null },
  {
    way: 'replace',
    minutes: 40,
    days: 14,
    sureness: 0.6,
    change: { kind: 'replaceCable', target: link('L4') },
  },
  { way: 'handOver', minutes: 60, days: 2, sureness: 0.5, change: null },
] as const;
const chooses = (way: 'goOn' | 'replace' | 'handOver') =>
  ({ type: 'recordChoice', way, offered: [...offered], chosenBy: 'Mrs Overwell' }) satisfies Sent;
const replace = { type: 'replaceOnSuspicion', place: link('L4'), what: 'A new optical cable' } satisfies Sent;
const finish = { type: 'finishRemedy', asLeftChainVersion: 4 } satisfies Sent;
const replaced = (): TriageCase => new TriageCase().substituting().send(chooses('replace'), replace);
const closed = (): TriageCase => replaced().send(finish, { type: 'close' });
const day = 86_400_000;

describe('the client’s choice', () => {
  it('is kept with who chose, when, and what was shown to them', () => {
    const ticket = new TriageCase().substituting().send(chooses('goOn'));
    expect(ticket.state).toBe('substitute.ready');
    expect(ticket.record.choices).toEqual([
      {
        way: 'goOn',
        offered,
        chosenBy: 'Mrs Overwell',
        round: 1,
        at: ticket.now,
        by: members.technician,
        outcome: null,
      },
    ]);
    expect(ticket.replayed()).toStrictEqual(ticket.snapshot);
  });

  it('comes before a part is replaced on suspicion', () => {
    const ticket = new TriageCase().substituting();
    expect(ticket.refused(replace).said.code).toBe('clientChoosesFirst');
    expect(ticket.send(chooses('goOn')).refused(replace).said.code).toBe('clientChoosesFirst');
    expect(ticket.send(chooses('replace'), replace).state).toBe('remedy');
  });

  it('marks the replacement as unproven, with its chance and whose choice it was', () => {
    expect(replaced().record.remedy).toMatchObject({
      kind: 'onSuspicion',
      place: link('L4'),
      chance: 0.6,
      acceptedBy: 'Mrs Overwell',
    });
    expect(replaced().record.culprit).toBeNull();
  });

  it('is taken back with the remedy', () => {
    const ticket = replaced().send({ type: 'withdrawRemedy', reason: 'The part is not to be had' });
    expect(ticket.state).toBe('reproduce');
    expect(ticket.record.setAside).toMatchObject([{ remedy: { kind: 'onSuspicion' } }]);
  });
});

describe('a repair that nothing has proven', () => {
  it('closes without a watch, and is asked after in fourteen days', () => {
    const ticket = closed();
    expect(ticket.state).toBe('closed');
    const askBy = new Date(Date.parse(ticket.now) + 14 * day).toISOString();
    expect(ticket.record.followUp).toEqual({ askBy, since: ticket.now, answers: [] });
    expect(dueOf(ticket.record)).toEqual({ kind: 'followUp', by: askBy, since: ticket.now });
    expect(new TriageCase().closed().record.followUp).toBeNull();
  });

  it('keeps for the figures that it held', () => {
    const ticket = closed().wait(14 * 1440);
    ticket.sendWith({ role: 'dispatcher' }, { type: 'recordFollowUp', heard: 'held' });
    expect(ticket.record.choices).toMatchObject([{ way: 'replace', outcome: { kind: 'held' } }]);
    expect(dueOf(ticket.record)).toBeNull();
    expect(ticket.refused({ type: 'recordFollowUp', heard: 'held' }).said.code).toBe('nothingToAskAfter');
    expect(ticket.replayed()).toStrictEqual(ticket.snapshot);
  });

  it('is asked after again where nobody was reached', () => {
    const ticket = closed()
      .wait(14 * 1440)
      .send({ type: 'recordFollowUp', heard: 'notReached' });
    const askBy = new Date(Date.parse(ticket.now) + 7 * day).toISOString();
    expect(ticket.record.followUp?.askBy).toBe(askBy);
    expect(ticket.record.choices[0]?.outcome).toBeNull();
  });

  it('keeps for the figures that the fault came back, as heard, seen or reopened', () => {
    const heard = closed().send({ type: 'recordFollowUp', heard: 'cameBack' });
    const seen = replaced().send(finish).watch(30, 1).send({ type: 'faultCameBack', reason: 'It is back' });
    const reopened = closed().send({ type: 'reopen', reason: 'It is back' });
    for (const ticket of [heard, seen, reopened])
      expect(ticket.record.choices[0]?.outcome?.kind).toBe('cameBack');
    expect(dueOf(reopened.record)).toBeNull();
  });
});

describe('before leaving', () => {
  const pictures = picturesToCheck(homeCinema()).map((pair) => ({ ...pair, answer: 'works' as const }));
  const check = { type: 'checkBeforeLeaving', sound: 'works', usualStart: 'notChecked' } as const;

  it('every source is tried once on every display; not checked is an answer', () => {
    const ticket = new TriageCase().repaired();
    expect(pictures.length).toBeGreaterThan(1);
    ticket.send({ ...check, pictures });
    expect(ticket.state).toBe('verify');
    expect(ticket.record.leavingCheck).toMatchObject({ sound: 'works', usualStart: 'notChecked', pictures });
  });

  it('leaving a source out is none', () => {
    const refusal = new TriageCase().repaired().refused({ ...check, pictures: pictures.slice(1) });
    expect(refusal).toMatchObject({
      type: 'invalid-input',
      said: { code: 'picturesLeftOut', values: { count: 1 } },
    });
  });

  it('is of one round', () => {
    const ticket = new TriageCase()
      .repaired()
      .send({ ...check, pictures })
      .watch(20, 1);
    ticket.send({ type: 'faultCameBack', reason: 'It is back' });
    expect(ticket.record.leavingCheck).toBeNull();
  });
});
