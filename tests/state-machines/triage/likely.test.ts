import { describe, expect, it } from 'vitest';
import { organisationSettings } from '../../../shared/contract/organisation.ts';
import { faultTable, testKey } from '../../../shared/isolation/index.ts';
import { effectsOf } from '../../../shared/isolation/likelihood.ts';
import { applicableChanges, knownOfChain } from '../../../state-machines/index.ts';
import { askedOf } from '../../../state-machines/triage/plan/asked.ts';
import { planWithLikely } from '../../../state-machines/triage/plan/ticket-plan.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';

describe('the changes that a list begins with', () => {
  const ticket = new TriageCase().substituting('processor', 'stayed');
  const request = {
    known: {
      ...knownOfChain(homeCinema(), ticket.record.symptom, organisationSettings.parse({}), []),
      intake: {
        affectedSources: ['player'],
        affectedDisplays: ['projector'],
        content: 'notKnown' as const,
        workedBefore: true,
      },
      facts: [],
      today: '2026-11-02',
    },
    chainVersion: 3,
    here: { kit: null, people: 2 as const, refused: [] },
    table: faultTable,
    now: ticket.now,
  };
  const { likely, plan } = planWithLikely(ticket.snapshot, request);
  const { standing, changes } = askedOf(ticket.snapshot, request);

  /** Chance that a change takes the fault away or brings it on, written out. */
  const chanceOf = (key: string): number => {
    const change = changes.find(({ kind, target, own }) => testKey(kind, target, own) === key);
    if (change === undefined) return 0;
    const { because, provoked } = effectsOf(standing.model, { ...change, test: change.kind });
    let sum = 0;
    for (const [at, chance] of standing.chances.entries())
      sum += chance * Math.max(because[at] ?? 0, provoked[at] ?? 0);
    return sum;
  };

  it('are few, all of them applicable, and come with the same plan', () => {
    const keys = applicableChanges(ticket.snapshot).map(({ kind, target, own }) =>
      testKey(kind, target, own),
    );
    expect(likely.length).toBeGreaterThan(2);
    expect(likely.length).toBeLessThan(keys.length / 2);
    for (const key of likely) expect(keys).toContain(key);
    expect(new Set(likely).size).toBe(likely.length);
    expect(plan.next).not.toBeNull();
  });

  it('are those that most likely do something to the fault, the likeliest first', () => {
    const chances = likely.map(chanceOf);
    expect(chances).toEqual(chances.toSorted((one, other) => other - one));
    const least = chances.at(-1) ?? 0;
    const others = changes
      .map(({ kind, target, own }) => testKey(kind, target, own))
      .filter((key) => !likely.includes(key));
    for (const key of others) expect(chanceOf(key)).toBeLessThanOrEqual(least);
  });
});
