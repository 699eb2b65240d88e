import { describe, expect, it, vi } from 'vitest';
import { frozenLogFiles, readFrozenLogs } from './frozen-1.ts';
import { snapshotsToday } from './frozen-1-today.ts';
import { asHeldByVersion1 } from './held-by-version-1.ts';

// What will have been improved by then: every sentence says something else, every retest is judged otherwise, every
// figure of the fault model is another, and every kind of change means something else.

vi.mock('../../shared/message/en/index.ts', async (original) => saidByCode(await original()));
vi.mock('../../shared/message/de/index.ts', async (original) => saidByCode(await original()));
vi.mock('../../shared/isolation/retest-statistics.ts', async (original) => ({
  ...(await original<object>()),
  judgeRetest: () => ({
    verdict: 'persists',
    riskOfBeingFooled: 0.9,
    needed: null,
    reasons: [],
    warnings: [],
  }),
  noFaultFoundWatchMin: () => 1e6,
}));
vi.mock('../../shared/isolation/fault-table.ts', async (original) => halved(await original()));
vi.mock('../../shared/isolation/change-catalogue.ts', async (original) => {
  const module = await original<{ changeCatalogue: Record<string, Record<string, unknown>> }>();
  const turned = (kind: Record<string, unknown>) =>
    Object.fromEntries(
      Object.entries(kind).map(([name, value]) => [name, typeof value === 'boolean' ? !value : value]),
    );
  const changeCatalogue = Object.fromEntries(
    Object.entries(module.changeCatalogue).map(([name, kind]) => [name, turned(kind)]),
  );
  return { ...module, changeCatalogue };
});

const { saidByCode, halved } = vi.hoisted(() => {
  const halve = (value: unknown): unknown => {
    if (typeof value === 'number') return value / 2;
    if (Array.isArray(value)) return value.map(halve);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, halve(part)]));
  };
  const saidByCode = (module: object): object =>
    Object.fromEntries(
      Object.entries(module).map(([name, value]) =>
        typeof value === 'object' && value !== null && 'sentences' in value
          ? [
              name,
              { ...value, sentences: new Proxy(value.sentences, { get: (_, code) => () => String(code) }) },
            ]
          : [name, value],
      ),
    );
  return { saidByCode, halved: halve as (module: object) => object };
});

describe.each(frozenLogFiles)('once all has been improved, the logs of version 1: %s', (file) => {
  it('lead to what version 1 held all the same', () => {
    for (const log of readFrozenLogs(file)) {
      const today = [...snapshotsToday(log)].at(-1);
      const then = log.snapshots.at(-1);
      expect(today?.value, log.name).toStrictEqual(then?.value);
      expect(asHeldByVersion1(today?.context as never), log.name).toStrictEqual(then?.context);
    }
  });
});

describe('the improvements', () => {
  it('are there: today’s statistics and sentences do say something else', async () => {
    const { judgeRetest } = await import('../../shared/isolation/retest-statistics.ts');
    const quiet = { mode: 'time', minutes: 6000, occurrences: 0 } as const;
    expect(judgeRetest({ mode: 'time', minutes: 60, occurrences: 6 }, quiet, { risk: 0.05 }).verdict).toBe(
      'persists',
    );
    const { english } = await import('../../shared/message/en/index.ts');
    const { message, messageText } = await import('../../shared/message/index.ts');
    expect(messageText(message('watchRunning'), english, 'UTC')).toContain('watchRunning');
    const { changeCatalogue } = await import('../../shared/isolation/change-catalogue.ts');
    expect(changeCatalogue.replaceCable.canBeUndone).toBe(false);
  });
});
