import { describe, expect, it } from 'vitest';
import { organisationSettings } from '../../../shared/contract/organisation.ts';
import type { OnlyWith, Pattern } from '../../../shared/contract/triage.ts';
import { knownOfChain, type PlanRequest, planTicket } from '../../../state-machines/index.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';
import { device, link, opening } from './triage-events.ts';

const chain = homeCinema();
const settings = organisationSettings.parse({});

/** A ticket whose fault comes like this, looked at and described. */
const caseWith = (pattern: Pattern, onlyWith: OnlyWith | null = null): TriageCase =>
  new TriageCase({
    opening: { symptom: { ...opening.symptom, perHour: null, pattern, onlyWith } },
  }).baseline();

function planOf(ticket: TriageCase) {
  const { record } = ticket;
  const known: PlanRequest['known'] = {
    ...knownOfChain(chain, record.symptom, settings, []),
    intake: { affectedSources: [], affectedDisplays: [], content: 'notKnown', workedBefore: true },
    facts: [],
    today: '2026-11-02',
  };
  const here = { kit: null, people: 2, refused: [] } as const;
  return planTicket(ticket.snapshot, { known, chainVersion: 3, here, now: ticket.now });
}
const firstStep = (ticket: TriageCase) => planOf(ticket).offers[0]?.steps[0];
/** Every code in the plan's sentence, those inside it included. */
const codesOf = (ticket: TriageCase): string[] =>
  [...JSON.stringify(planOf(ticket).sentence).matchAll(/"code":"(\w+)"/g)].map(([, code]) => code ?? '');

const look = (ticket: TriageCase, isBad: boolean, menu: 'stayed' | null = null): TriageCase => {
  ticket.send({ type: 'startWatch', mode: 'look', ...(menu === null ? {} : { menuDeviceId: 'processor' }) });
  if (isBad) ticket.send({ type: 'recordOccurrence', menu });
  return ticket.wait(1).send({ type: 'endWatch' });
};
/** One change is in place, and not watched yet. */
const changed = (ticket: TriageCase): TriageCase =>
  ticket
    .send({ type: 'acceptReproduction' })
    .side('processor', 'stayed')
    .send({ type: 'beginSubstitution' })
    .declare('replaceCable', link('L3'))
    .send({ type: 'applyChange' });
const judged = (ticket: TriageCase) => ticket.send({ type: 'judgeRetest' }).lastChange.judgement;
const codes = (messages: readonly { code: string }[] = []): string[] => messages.map(({ code }) => code);

describe('a fault that is always there', () => {
  const ticket = () => caseWith({ kind: 'always' });

  it('is reproduced by one look, and nobody is told to wait for a rate', () => {
    const told = ticket();
    expect(firstStep(told)).toMatchObject({ type: 'startWatch', mode: 'look' });
    expect(codesOf(told)).toContain('lookOnceForFault');
    expect(codesOf(told)).not.toContain('watchAtAssumedRate');
    look(told, true);
    expect(firstStep(told)).toEqual({ type: 'acceptReproduction' });
  });

  it('is cleared by one good look after a bad one', () => {
    const judgement = judged(look(changed(look(ticket(), true)), false));
    expect(judgement).toMatchObject({
      verdict: 'cleared',
      riskOfBeingFooled: 0.02,
      needed: { mode: 'look', totalLooks: 1, remainingLooks: 0 },
    });
    expect(codes(judgement?.reasons)).toEqual(['goodLooks', 'chanceBelowLimit']);
  });

  it('persists when it is there at the look', () => {
    expect(judged(look(changed(look(ticket(), true)), true))).toMatchObject({ verdict: 'persists' });
  });

  it('may come and go after all: what was judged by a look is judged again', () => {
    const told = look(changed(look(ticket(), true)), false);
    judged(told);
    told.send({
      type: 'amendIntake',
      symptom: { ...told.record.symptom, pattern: { kind: 'random', rarely: false } },
    });
    expect(told.lastChange.judgement).toMatchObject({ verdict: 'inconclusive' });
    expect(told.lastChange.earlierJudgements).toMatchObject([
      { verdict: 'cleared', superseded: { because: 'correction' } },
    ]);
  });

  it('that is not there at the look is no fault found, or told otherwise', () => {
    const told = look(ticket(), false);
    expect(codesOf(told)).toEqual(['wasNotAsTold']);
    expect(planOf(told).offers.map(({ steps }) => steps[0]?.type)).toEqual([
      'amendIntake',
      'chooseRemedy',
      'escalate',
    ]);
    told.send({ type: 'chooseRemedy', remedy: { kind: 'noFaultFound', what: 'It was not there' } });
    expect(told.record.quietProof).toMatchObject({ counted: { mode: 'look', done: 1, needed: 1 } });
  });
});

describe('a fault on a trigger', () => {
  const ticket = () => caseWith({ kind: 'trigger', trigger: 'sourceChange' });
  const tries = (told: TriageCase, good: number, failed: number): TriageCase => {
    told.send({ type: 'startWatch', mode: 'trigger', triggerKind: 'sourceChange' });
    for (let at = 0; at < failed; at += 1) told.wait(1).send({ type: 'recordOccurrence' });
    for (let at = 0; at < good; at += 1) told.wait(1).send({ type: 'recordTry' });
    return told.send({ type: 'endWatch' });
  };

  it('is reproduced by tries of that trigger, without a word typed', () => {
    const told = ticket();
    expect(planOf(told).offers[0]).toMatchObject({
      steps: [{ type: 'startWatch', mode: 'trigger', triggerKind: 'sourceChange' }],
      toSay: [],
    });
    expect(codesOf(told)).toEqual(['sentences', 'tryWhatMakesItCome']);
    tries(told, 0, 1);
    expect(codesOf(told)).toEqual(['seenTryForMore']);
    tries(told, 0, 2);
    expect(firstStep(told)).toEqual({ type: 'acceptReproduction' });
  });

  it('is cleared by none of 3 after 3 of 3', () => {
    expect(judged(tries(changed(tries(ticket(), 0, 3)), 3, 0))).toMatchObject({
      verdict: 'cleared',
      riskOfBeingFooled: expect.closeTo(0.05, 9) as number,
    });
  });

  it('is not cleared by waiting', () => {
    const judgement = judged(changed(tries(ticket(), 0, 3)).watch(600, 0));
    expect(judgement).toMatchObject({
      verdict: 'inconclusive',
      needed: { mode: 'trigger', totalTries: 3, remainingTries: 3 },
    });
    expect(codes(judgement?.reasons)).toEqual(['needsTrigger']);
  });

  it('whose name says nothing takes words', () => {
    const told = caseWith({ kind: 'trigger', trigger: 'other' });
    expect(planOf(told).offers[0]).toMatchObject({ toSay: ['trigger'] });
    expect(told.refused({ type: 'startWatch', mode: 'trigger', triggerKind: 'other' }).said.code).toBe(
      'triggerMissing',
    );
  });
});

describe('a fault that comes only when warm', () => {
  const ticket = () => caseWith({ kind: 'warm', afterMin: 40 });
  const since = (sincePowerOnMin: number | null) => ({ conditions: { sincePowerOnMin } });

  it('is watched for until it was warm for long enough, and nobody is taken to have waited before', () => {
    const always = firstStep(caseWith({ kind: 'bursts' }));
    const cold = firstStep(ticket());
    expect(cold).toMatchObject({ mode: 'time', conditions: { sincePowerOnMin: 0 } });
    expect(cold).toMatchObject({ plannedMin: 40 + Number(always?.plannedMin) });
    expect(codesOf(ticket())).toContain('watchOnceWarm');
  });

  it('is watched for at once while everything stays on, and from cold once it was switched off', () => {
    const told = changed(ticket().watch(60, 6, since(40)));
    const atOnce = { sincePowerOnMin: expect.toSatisfy((min: number) => min >= 100) };
    expect(firstStep(told)).toMatchObject({ type: 'startWatch', conditions: atOnce });
    told.send({ type: 'restoreChange' });
    told.send({ type: 'declareChange', kind: 'powerCycle', target: device('receiver'), expected: 'Quiet' });
    told.send({ type: 'applyChange' });
    expect(firstStep(told)).toMatchObject({ type: 'startWatch', conditions: { sincePowerOnMin: 0 } });
  });

  it('is not cleared cold, nor where nobody said how long the devices were on', () => {
    const told = changed(ticket().watch(60, 6, since(40)));
    const cold = judged(told.watch(39, 0, since(0)));
    expect([cold?.verdict, codes(cold?.reasons)]).toEqual(['inconclusive', ['notWarmYet']]);
    const unsaid = judged(told.watch(300, 0, since(null)));
    expect(unsaid?.verdict).toBe('inconclusive');
    expect(codes(unsaid?.reasons)).toEqual(['notWarmYet', 'timeOnNotSaid']);
  });

  it('counts minutes after warming up only', () => {
    const judgement = judged(changed(ticket().watch(60, 6, since(40))).watch(60, 0, since(0)));
    // 20 of the 60 min count. Before: 6 times in 60 min, and once in the 10 min with the menu up.
    expect(judgement?.needed).toMatchObject({ mode: 'time' });
    // Were they all independent; if some hang together, it is a little more.
    expect(judgement?.riskOfBeingFooled).toBeGreaterThan((70 / 90) ** 7);
    expect(judgement?.riskOfBeingFooled).toBeLessThan((70 / 90) ** 6);
    expect(codes(judgement?.reasons)).toContain('onlyWarmMinutes');
  });

  it('counts from the first occurrence, without it, where that came earlier than told', () => {
    const told = ticket().send({ type: 'startWatch', ...since(0) });
    for (const minutes of [39, 5, 5, 5]) told.wait(minutes).send({ type: 'recordOccurrence' });
    told.wait(5).send({ type: 'endWatch' });
    // Three in the 20 min after the first, and one in the 10 min with the menu up.
    const judgement = judged(changed(told).watch(60, 0, since(60)));
    expect(judgement?.riskOfBeingFooled).toBeGreaterThan((30 / 90) ** 4);
    expect(judgement?.riskOfBeingFooled).toBeLessThan((30 / 90) ** 3);
    expect(judgement?.verdict).toBe('cleared');
  });

  it('is watched on after it came once, for as long as it was told to take, before that is accepted', () => {
    const told = new TriageCase({
      opening: {
        symptom: { ...opening.symptom, perHour: 12, pattern: { kind: 'warm', afterMin: 40 }, onlyWith: null },
      },
    }).baseline();
    told
      .send({ type: 'startWatch', ...since(0) })
      .wait(41)
      .send({ type: 'recordOccurrence' })
      .wait(5);
    expect(planOf(told).offers[0]?.steps.map(({ type }) => type)).toEqual(['recordOccurrence']);
    told.wait(6);
    expect(planOf(told).offers[0]?.steps.map(({ type }) => type)).toEqual(['endWatch', 'acceptReproduction']);
  });
});

describe('a fault in bursts', () => {
  it('is judged by bursts, not by what is in them', () => {
    const told = caseWith({ kind: 'bursts' });
    expect(codesOf(told)).toContain('watchForBursts');
    // Three bursts of four, twenty minutes apart; a fourth comes with the menu up, 90 min watched in all.
    told.send({ type: 'startWatch' });
    for (let burst = 0; burst < 3; burst += 1) {
      told.wait(20);
      for (let at = 0; at < 4; at += 1) told.wait(1).send({ type: 'recordOccurrence' });
    }
    told.wait(8).send({ type: 'endWatch' });
    const judgement = judged(changed(told).watch(100, 0));
    expect(judgement?.riskOfBeingFooled).toBeGreaterThan((90 / 190) ** 4);
    expect(judgement?.riskOfBeingFooled).toBeLessThan((90 / 190) ** 3);
    expect(judgement?.verdict).toBe('inconclusive');
    expect(judgement?.reasons).toContainEqual({
      code: 'burstsCounted',
      values: { occurrences: 13, bursts: 4 },
    });
  });
});

describe('a fault with one title only', () => {
  const title: OnlyWith = { kind: 'title', what: 'The long river', deviceId: null };
  const playing = (asTold: boolean | null) => ({ conditions: { asTold } });

  it('is watched for while that title plays', () => {
    const told = caseWith({ kind: 'random', rarely: false }, title);
    expect(firstStep(told)).toMatchObject({ conditions: { asTold: true } });
    expect(codesOf(told)).toContain('playWhatShowsIt');
  });

  it('is not cleared with another title, and is where that one played', () => {
    const told = changed(caseWith({ kind: 'random', rarely: false }, title).watch(60, 6, playing(true)));
    const other = judged(told.watch(200, 0, playing(false)));
    expect([other?.verdict, codes(other?.reasons)]).toEqual(['inconclusive', ['otherContentPlayed']]);
    const same = judged(told.watch(200, 0, playing(true)));
    expect(same?.verdict).toBe('cleared');
    expect(codes(same?.warnings)).toEqual(['otherContentPlayed']);
  });

  it('is there when it comes with another title', () => {
    const told = changed(caseWith({ kind: 'random', rarely: false }, title).watch(60, 6, playing(true)));
    expect(judged(told.watch(30, 1, playing(false)))?.verdict).toBe('persists');
  });
});

describe('a fault that comes rarely', () => {
  it('is not waited for', () => {
    const told = caseWith({ kind: 'random', rarely: true });
    expect(codesOf(told)).toContain('tooRareToWatch');
    expect(planOf(told).watchMin).toBeNull();
    expect(planOf(told).offers.flatMap(({ steps }) => steps.map(({ type }) => type))).not.toContain(
      'startWatch',
    );
  });
});
