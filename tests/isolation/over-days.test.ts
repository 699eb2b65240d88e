import { describe, expect, it } from 'vitest';
import { faultTable, waysOverDays, withOverrides } from '../../shared/isolation/index.ts';

const once = { perHour: 0.125, risk: 0.05, wanted: 'baseline' } as const;
const kinds = (ways: ReturnType<typeof waysOverDays>) => ways.map(({ kind }) => kind);

describe('the ways of a rare fault', () => {
  it('are weighed by minutes and days: a fault that comes once in two days is not watched for', () => {
    const ways = waysOverDays(once);
    expect(kinds(ways).at(-1)).toBe('visit');
    expect(kinds(ways).toSorted()).toEqual(['diary', 'logs', 'visit']);
    const diary = ways.find(({ kind }) => kind === 'diary');
    // Three occurrences at one in two days, each of which counts half.
    expect(diary?.days).toBeCloseTo(12);
    expect(ways.find(({ kind }) => kind === 'visit')?.minutes).toBeGreaterThan(1000);
    for (const { minutes, days, costMin } of ways) expect(costMin).toBeCloseTo(minutes + 20 * days);
  });

  it('name a change that is left in, and one by the client, once a change is in place', () => {
    expect(kinds(waysOverDays({ ...once, wanted: 'retest' }))).toEqual(
      expect.arrayContaining(['unattended', 'remote', 'logs', 'visit']),
    );
  });

  it('turn with the price of a day that an organisation sets', () => {
    const dear = withOverrides(faultTable, { 'planning/day/minutes': 2000 });
    if (!dear.ok) throw new Error('refused');
    expect(kinds(waysOverDays(once, dear.table))[0]).toBe('visit');
    const free = withOverrides(faultTable, { 'planning/day/minutes': 0 });
    if (!free.ok) throw new Error('refused');
    expect(kinds(waysOverDays(once, free.table))[0]).toBe('diary');
  });

  it('take “rarely” without a rate for once in two days', () => {
    expect(waysOverDays({ ...once, perHour: null })).toEqual(waysOverDays(once));
  });
});
