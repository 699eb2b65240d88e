import { describe, expect, it } from 'vitest';
import type { Result } from '../../../shared/isolation/index.ts';
import { resultsOf } from '../../../state-machines/triage/plan/case-of.ts';
import { TriageCase } from './triage-case.ts';
import { device, link } from './triage-events.ts';

describe('what earlier rounds learnt', () => {
  const rounds = (): TriageCase => {
    const ticket = new TriageCase()
      .substituting()
      .tried('reseat', link('L3'), 'persists')
      .send({ type: 'restoreChange' })
      .tried('replaceCable', link('L3'), 'cleared')
      .send({ type: 'keepChange' });
    const changeId = ticket.lastChange.id;
    return ticket
      .send(
        {
          type: 'nameCulprit',
          changeId,
          place: link('L3'),
          explanation: 'The cable',
          confirmation: { kind: 'notDone', reason: 'The client has no time' },
        },
        { type: 'chooseRemedy', remedy: { kind: 'permanent', what: 'The new cable stays' } },
        { type: 'finishRemedy', asLeftChainVersion: 4 },
      )
      .watch(60, 0)
      .send({ type: 'close' }, { type: 'reopen', reason: 'It is back' });
  };
  const told = ({ kind, trust, ...rest }: Result) => [kind, trust, 'test' in rest ? rest.test : null];

  it('stays at a discount once the ticket is reopened: menus, and what did not help', () => {
    const results = resultsOf(rounds().record).map(told);
    expect(results).toEqual([
      ['menu', 'earlierRound', null],
      ['test', 'earlierRound', 'reseat'],
    ]);
  });

  it('convicts no part that was put right since', () => {
    const quiet = resultsOf(rounds().record).filter(
      (result) => result.kind === 'test' && result.test === 'replaceCable',
    );
    expect(quiet).toEqual([]);
  });

  it('acquits what was put right, where the fault came on with the remedy in place', () => {
    const ticket = new TriageCase().substituting().tried('replaceCable', link('L3'), 'cleared');
    ticket.send({ type: 'keepChange' }).send(
      {
        type: 'nameCulprit',
        changeId: ticket.lastChange.id,
        place: link('L3'),
        explanation: 'The cable',
        confirmation: { kind: 'notDone', reason: 'The client has no time' },
      },
      { type: 'chooseRemedy', remedy: { kind: 'permanent', what: 'The new cable stays' } },
      { type: 'finishRemedy', asLeftChainVersion: 4 },
    );
    ticket.watch(30, 1).send({ type: 'faultCameBack', reason: 'It came again' });
    expect(resultsOf(ticket.record)).toContainEqual({
      kind: 'outcome',
      test: 'replaceCable',
      target: link('L3'),
      own: null,
      outcome: 'persists',
      trust: 'earlierRound',
    });
  });

  it('stands beside what this round learns, which counts in full', () => {
    const ticket = rounds().watch(30, 2).send({ type: 'acceptReproduction' }).side('processor', 'stayed');
    ticket.send({ type: 'beginSubstitution' }).tried('bypassDevice', device('receiver'), 'persists');
    const results = resultsOf(ticket.record).map(told);
    expect(results).toContainEqual(['test', undefined, 'bypassDevice']);
    expect(results).toContainEqual(['menu', 'earlierRound', null]);
    expect(results).toContainEqual(['menu', undefined, null]);
  });
});
