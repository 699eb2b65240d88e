import { describe, expect, it } from 'vitest';
import {
  faultTable,
  leftInAtMostDays,
  planNext,
  type Result,
  testKey,
  waysOverDays,
  withOverrides,
} from '../../shared/isolation/index.ts';
import { input } from './cinema-case.ts';

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

describe('a test of a fault that nobody can sit through', () => {
  /** Three occurrences in a day: quiet takes longer than a visit. Menus put it between processor and projector. */
  const rarely = { mode: 'time', minutes: 1440, occurrences: 3 } as const;
  const results = (['processor', 'receiver', 'projector'] as const).map(
    (deviceId): Result => ({
      kind: 'menu',
      deviceId,
      answer: deviceId === 'projector' ? 'stayed' : 'vanished',
    }),
  );
  const planOf = (perDay: number) => {
    const table = withOverrides(faultTable, { 'planning/day/minutes': perDay });
    if (!table.ok) throw new Error('refused');
    return planNext(input({ table: table.table, menus: [] }, { baseline: rarely, results })).advice;
  };

  it('is left in at the price of its days, so that testing goes on where sitting through it would not pay', () => {
    expect(planOf(20).kind).toBe('test');
    expect(planOf(480).kind).toBe('escalate');
  });

  it('is left in for no longer than a change may be, however long quiet would have to be', () => {
    const { changes } = input();
    const one = changes.filter(({ kind }) => kind === 'limitOutputBandwidth');
    const byClient = one.map(({ kind, target }) => testKey(kind, target));
    const baseline = { ...rarely, minutes: 4800 };
    const { advice } = planNext(input({ changes: one, byClient, menus: [] }, { baseline, results }));
    if (advice.kind !== 'test') throw new Error(`No test, but ${advice.kind}.`);
    // Four hours a day that count half: two hours of watching on each.
    expect(advice.next.quiet).toEqual({ mode: 'time', amount: leftInAtMostDays * 120 });
    expect(advice.next.minutes.watch).toBeGreaterThan(1000);
  });
});
