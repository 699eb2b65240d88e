import { describe, expect, it, vi } from 'vitest';
import { replay, type TriageEvent } from '../../../state-machines/index.ts';
import { TriageCase } from './triage-case.ts';
import { device, link, opening, waiveAll } from './triage-events.ts';

const { computing, guarded } = vi.hoisted(() => {
  /** Set once the logs are written: from then on whoever computes anything fails. */
  const computing = { isForbidden: false };
  const guard =
    (name: string, value: (...given: unknown[]) => unknown) =>
    (...given: unknown[]): unknown => {
      if (computing.isForbidden) throw new Error(`${name} was asked during a replay`);
      return value(...given);
    };
  const guarded = <Module extends object>(module: Module): Module =>
    Object.fromEntries(
      Object.entries(module).map(([name, value]) => [
        name,
        typeof value === 'function' ? guard(name, value) : value,
      ]),
    ) as Module;
  return { computing, guarded };
});

vi.mock('../../../shared/isolation/retest-statistics.ts', async (original) => guarded(await original()));
vi.mock('../../../state-machines/triage/retest.ts', async (original) => guarded(await original()));
vi.mock('../../../state-machines/triage/segment.ts', async (original) => guarded(await original()));
vi.mock('../../../state-machines/triage/attribution.ts', async (original) => guarded(await original()));
vi.mock('../../../state-machines/triage/completeness.ts', async (original) => guarded(await original()));
vi.mock('../../../state-machines/triage/rules/timing.ts', async (original) => guarded(await original()));
vi.mock('../../../state-machines/triage/rules/refusal.ts', async (original) => guarded(await original()));
vi.mock('../../../state-machines/triage/changes/applicable.ts', async (original) =>
  guarded(await original()),
);
vi.mock('../../../shared/isolation/change-catalogue.ts', async (original) => {
  const module: { changeCatalogue: object } = await original();
  const changeCatalogue = new Proxy(module.changeCatalogue, {
    get: (target, name) => {
      if (computing.isForbidden) throw new Error('the catalogue was looked up during a replay');
      return Reflect.get(target, name);
    },
  });
  return { ...guarded(module), changeCatalogue };
});

/** Tickets that take every rule whose outcome is computed, and most others. */
const tickets: Record<string, () => TriageCase> = {
  'closed and reopened': () =>
    new TriageCase().closed().send({ type: 'reopen', reason: 'It is back' }).watch(30, 2),
  'a fault that came back': () =>
    new TriageCase().repaired().watch(20, 1).send({ type: 'faultCameBack', reason: 'Seen again' }),
  'judged again, by hand, and kept': () =>
    new TriageCase()
      .substituting()
      .declare('replaceCable', link('L3'))
      .send({ type: 'applyChange' })
      .watch(5, 0)
      .send({ type: 'judgeRetest' })
      .watch(60, 0)
      .send(
        { type: 'judgeRetest' },
        { type: 'judgeRetest', override: { verdict: 'cleared', reason: 'Sure' } },
      )
      .send({ type: 'keepChange' }),
  'by tries, declared and withdrawn': () =>
    new TriageCase()
      .baseline()
      .tries(4, 3)
      .send({ type: 'acceptReproduction' })
      .side('processor', 'stayed')
      .send({ type: 'beginSubstitution' })
      .declare('bypassDevice', device('receiver'))
      .send({ type: 'withdrawChange', reason: 'Not now' }),
  'no fault found, and taken back': () =>
    new TriageCase()
      .baseline()
      .watch(60, 0)
      .send(
        { type: 'chooseRemedy', remedy: { kind: 'noFaultFound', what: 'Nothing seen' } },
        { type: 'withdrawRemedy', reason: 'Watch on' },
      ),
  'second line': () =>
    new TriageCase()
      .culpritNamed()
      .send(
        { type: 'withdrawCulprit', reason: 'Not that' },
        { type: 'escalate', question: 'What is it?', waivers: waiveAll },
        { type: 'takeCase' },
        { type: 'askForMore', requests: [{ text: 'The EDID' }] },
      ),
  'corrections, and what was decided anew after them': () => {
    const ticket = new TriageCase().culpritNamed();
    const occurrenceId = ticket.lastWatch.occurrences[0]?.id ?? '';
    ticket.send({ type: 'withdrawOccurrence', occurrenceId, reason: 'Pressed by accident' });
    const [retest] = ticket.record.watches.filter(({ purpose }) => purpose === 'retest');
    return ticket.send({ type: 'voidWatch', watchId: retest?.id ?? '', reason: 'The player was paused' });
  },
  'an occurrence withdrawn, and with it the reproduction': () => {
    const ticket = new TriageCase().baseline().watch(30, 1).send({ type: 'acceptReproduction' });
    const occurrenceId = ticket.lastWatch.occurrences[0]?.id ?? '';
    return ticket.send({ type: 'withdrawOccurrence', occurrenceId, reason: 'Pressed by accident' });
  },
};

describe('replay', () => {
  it.each(Object.keys(tickets))('asks neither statistics nor catalogue nor clock: %s', (name) => {
    const ticket = tickets[name]?.();
    if (ticket === undefined) throw new Error('no such ticket');
    const log: TriageEvent[] = JSON.parse(JSON.stringify(ticket.log));
    computing.isForbidden = true;
    vi.spyOn(Date, 'now').mockImplementation(() => {
      throw new Error('the clock was read during a replay');
    });
    try {
      expect(JSON.parse(JSON.stringify(replay(opening, log)))).toStrictEqual(ticket.snapshot);
    } finally {
      computing.isForbidden = false;
      vi.restoreAllMocks();
    }
  });

  it('would be caught if it did: deciding asks them', () => {
    const ticket = new TriageCase().substituting().declare('replaceCable', link('L3'));
    ticket.send({ type: 'applyChange' }).watch(60, 0);
    computing.isForbidden = true;
    try {
      expect(() => ticket.send({ type: 'judgeRetest' })).toThrow(/was asked during a replay/);
    } finally {
      computing.isForbidden = false;
    }
  });
});
