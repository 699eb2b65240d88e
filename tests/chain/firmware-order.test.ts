import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareFirmware, relateFirmware } from '../../shared/chain/firmware.ts';

const versions = fc
  .tuple(
    // Two numbers alone can be read in two ways, which is told of in firmware.test.ts; three can't.
    fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 3, maxLength: 5 }),
    fc.constantFrom('', 'a', 'b', 'rc1', 'rc2', 'beta', ' patch 1', 'a.3'),
    fc.constantFrom('', ' (7)', ' build 12', ' [build 7]'),
    fc.constantFrom('', 'v', 'FW V0', 'Ver. '),
  )
  .map(([numbers, tail, build, prefix]) => `${prefix}${numbers.join('.')}${tail}${build}`);
const days = fc.tuple(
  fc.integer({ min: 2020, max: 2026 }),
  fc.integer({ min: 1, max: 12 }),
  fc.integer({ min: 1, max: 28 }),
);
const padded = (value: number): string => String(value).padStart(2, '0');
const dates = fc
  .tuple(days, fc.constantFrom('-', '', '.', '/'), fc.constantFrom('', 'a', '.2'))
  .map(([[year, month, day], mark, tail]) => `${[year, padded(month), padded(day)].join(mark)}${tail}`);
const twoWayDates = days.map(([year, month, day]) => `${padded(day)}.${padded(month)}.${year}`);
const buildNumbers = fc
  .integer({ min: 10_000, max: 19_999_999 })
  .filter((n) => n < 19_900_000)
  .map(String);
const anything = fc.oneof(
  versions,
  dates,
  twoWayDates,
  buildNumbers,
  fc.string(),
  fc.string({ unit: 'binary' }),
  fc.stringMatching(/^[v0-9a-c .()/-]{1,12}$/),
);

describe('the order of firmware', () => {
  it('is the same seen from either side, whatever the two texts are', () => {
    fc.assert(
      fc.property(anything, anything, (a, b) => {
        const order = compareFirmware(a, b);
        expect(compareFirmware(b, a)).toBe(order === null ? null : order === 0 ? 0 : -order);
        expect(relateFirmware(a, b).reason === null).toBe(order !== null);
      }),
      { numRuns: 1000 },
    );
  });

  it('never contradicts itself over three texts that can be compared', () => {
    const contradicts = (a: string, b: string, c: string): boolean => {
      const [first, second, across] = [compareFirmware(a, b), compareFirmware(b, c), compareFirmware(a, c)];
      if (first === null || second === null || across === null || first > 0 || second > 0) return false;
      return across !== Math.min(first, second);
    };
    fc.assert(
      fc.property(anything, anything, anything, (a, b, c) => {
        for (const [x, y, z] of [
          [a, b, c],
          [a, c, b],
          [b, a, c],
          [b, c, a],
          [c, a, b],
          [c, b, a],
        ] as const)
          expect(contradicts(x, y, z)).toBe(false);
      }),
      { numRuns: 1000 },
    );
  });

  it.each([
    ['versions', versions],
    ['dates', dates],
    ['build numbers', buildNumbers],
  ] as const)('is total among %s', (_name, texts) => {
    fc.assert(
      fc.property(texts, texts, texts, (a, b, c) => {
        const sorted = [a, b, c].sort((x, y) => compareFirmware(x, y) ?? Number.NaN);
        const [low = '', middle = '', high = ''] = sorted;
        expect([0, -1]).toContain(compareFirmware(low, middle));
        expect([0, -1]).toContain(compareFirmware(middle, high));
        expect([0, -1]).toContain(compareFirmware(low, high));
      }),
      { numRuns: 500 },
    );
  });

  it('is the order of the numbers themselves', () => {
    const numbers = fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 3, maxLength: 3 });
    fc.assert(
      fc.property(numbers, numbers, (one, other) => {
        const weigh = (parts: number[]): number => parts.reduce((sum, part) => sum * 31 + part, 0);
        expect(compareFirmware(`v${one.join('.')}`, `FW ${other.join('.')}`)).toBe(
          Math.sign(weigh(one) - weigh(other)),
        );
      }),
    );
  });

  it('is the order of the calendar, for both ways to write a date where they agree', () => {
    fc.assert(
      fc.property(days, days, ([y1, m1, d1], [y2, m2, d2]) => {
        const calendar = Math.sign(Date.UTC(y1, m1 - 1, d1) - Date.UTC(y2, m2 - 1, d2));
        expect(compareFirmware(`${y1}-${m1}-${d1}`, `${y2}${padded(m2)}${padded(d2)}`)).toBe(calendar);
        const two = compareFirmware(`${padded(d1)}.${padded(m1)}.${y1}`, `${y2}-${m2}-${d2}`);
        expect([calendar, null]).toContain(two);
        if (d1 > 12) expect(two).toBe(calendar);
      }),
    );
  });
});
