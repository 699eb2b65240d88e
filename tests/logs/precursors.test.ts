import { describe, expect, it } from 'vitest';
import { kindWords, precursors } from '../../shared/logs/index.ts';
import { seededRandom } from '../../shared/logs/seeded-random.ts';
import { message } from '../../shared/message/index.ts';
import { at, logOf } from './log-of.ts';

const day = 24 * 3600;
const scattered = (count: number, seed: number, lengthS = day): number[] => {
  const random = seededRandom(seed);
  return Array.from({ length: count }, () => 60 + random() * (lengthS - 120));
};
const saying = (seconds: readonly number[], message: string) =>
  seconds.map((second) => [second, message] as const);
const occurrencesAt = (seconds: readonly number[]) =>
  seconds.map((second) => ({ at: at(second), durationS: 2 }));

describe('what precedes an occurrence', () => {
  const faults = Array.from({ length: 12 }, (_, index) => 3000 + index * 6700);

  it('is found among kinds that come by chance', () => {
    const reading = logOf(
      [
        ...saying(
          faults.slice(0, 10).map((second) => second - 4),
          'tx0: hot plug detect low',
        ),
        ...saying(scattered(200, 3), 'rx1: video format changed'),
        ...saying(scattered(150, 4), 'tx0: EDID read'),
        ...saying(faults, 'rx1: sync lost'),
        ...saying(
          faults.map((second) => second + 2),
          'rx1: sync found',
        ),
      ],
      day,
    );
    const { kinds, occurrences, notes } = precursors(reading, occurrencesAt(faults));
    expect([occurrences, notes]).toEqual([12, []]);
    const [first, ...others] = kinds;
    expect(first).toMatchObject({ kind: 'hotPlugDown', preceded: 10, leadS: 4, regular: true });
    expect(first?.correctedP).toBeLessThan(0.005);
    expect(first?.sentence).toMatchObject({
      code: 'kindComesRegularlyBefore',
      values: { kind: kindWords('hotPlugDown'), within: 30, preceded: 10, of: 12, kindsTested: 3 },
    });
    expect(others.map(({ kind, regular }) => [kind, regular])).toEqual([
      [expect.any(String), false],
      [expect.any(String), false],
    ]);
    expect(new Set(others.map(({ kind }) => kind))).toEqual(new Set(['formatChange', 'edidRead']));
  });

  it('isn’t what always comes, such as a poll every twenty seconds', () => {
    const polls = Array.from({ length: 1800 }, (_, index) => index * 20 + 3);
    const soon = faults.map((second) => second / 3);
    const { kinds } = precursors(logOf(saying(polls, 'tx0: EDID read'), 36_000), occurrencesAt(soon));
    expect(kinds[0]).toMatchObject({ kind: 'edidRead', preceded: 12, pValue: 1, regular: false });
  });

  it('can’t be said of a kind that came too often for all to be kept', () => {
    const polls = Array.from({ length: 2500 }, (_, index) => index * 10 + 3);
    const { kinds, notes } = precursors(logOf(saying(polls, 'tx0: EDID read'), day), occurrencesAt(faults));
    expect(kinds).toEqual([]);
    expect(notes).toEqual([message('kindNotTested', { kind: kindWords('edidRead') })]);
  });

  it('isn’t what merely comes on the same evening', () => {
    const random = seededRandom(8);
    const evening = (): number => 18 * 3600 + random() * 4 * 3600;
    const changes = Array.from({ length: 400 }, evening);
    const reading = logOf(saying(changes, 'rx1: video format changed'), day);
    const { kinds } = precursors(reading, occurrencesAt(Array.from({ length: 12 }, evening)));
    expect(kinds[0]?.regular).toBe(false);
    expect(kinds[0]?.expected).toBeGreaterThan(3);
  });

  it('isn’t what an occurrence itself brought about, when the next follows soon', () => {
    const pairs = faults.flatMap((second) => [second, second + 50]);
    const reading = logOf(
      saying(
        pairs.map((second) => second + 25),
        'tx0: EDID read',
      ),
      day,
    );
    const { kinds, occurrences } = precursors(reading, occurrencesAt(pairs), { windowS: 30 });
    expect([kinds, occurrences]).toEqual([[], 24]);
  });

  it('leaves out, and says so, what the log doesn’t cover and what follows too closely', () => {
    const reading = logOf(saying(scattered(50, 5), 'tx0: EDID read'), day, [2900, 3100]);
    const { occurrences, notes } = precursors(reading, occurrencesAt([...faults, faults[4] ?? 0, day + 500]));
    expect(occurrences).toBe(11);
    expect(notes).toEqual([
      message('occurrencesOutsideLog', { outside: 2, of: 14 }),
      message('occurrencesWhileSettling', { occurrences: 1 }),
    ]);
  });

  it('isn’t told from fewer than three occurrences', () => {
    const reading = logOf(saying([2999, 9699], 'tx0: EDID read'), day);
    const { kinds, notes } = precursors(reading, occurrencesAt(faults.slice(0, 2)));
    expect(kinds).toEqual([]);
    expect(notes).toContainEqual(message('tooFewOccurrencesForHabit', { least: 3 }));
  });

  it('is the same for the same seed, and nearly so for another', () => {
    const reading = logOf(saying(scattered(300, 6), 'tx0: EDID read'), day);
    const withSeed = (seed: number) => precursors(reading, occurrencesAt(faults), { seed });
    expect(withSeed(7)).toEqual(withSeed(7));
    const [first, second] = [withSeed(7).kinds[0]?.pValue ?? 0, withSeed(8).kinds[0]?.pValue ?? 0];
    expect(Math.abs(first - second)).toBeLessThan(0.08);
  });
});

describe('the correction for the number of kinds', () => {
  const faults = Array.from({ length: 10 }, (_, index) => 2000 + index * 3400);
  const messages = [
    'tx0: EDID read',
    'rx1: video format changed',
    'tx0: HPD asserted',
    'cold boot',
    'rx1: sync found',
  ];

  it('costs nothing where kinds always come together, and no more than their number where they don’t', () => {
    const seconds = [...scattered(150, 2, 36_000), ...faults.slice(0, 3).map((second) => second - 9)];
    const together = logOf(
      messages.flatMap((message) => saying(seconds, message)),
      36_000,
    );
    for (const { pValue, correctedP } of precursors(together, occurrencesAt(faults)).kinds)
      expect(correctedP).toBe(pValue);
    const apart = logOf(
      messages.flatMap((message, index) =>
        saying([...scattered(150, index + 10, 36_000), 1990, 5391], message),
      ),
      36_000,
    );
    const { kinds } = precursors(apart, occurrencesAt(faults));
    expect(kinds).toHaveLength(messages.length);
    expect(kinds[0]?.correctedP).toBeGreaterThan(kinds[0]?.pValue ?? 1);
    // Bonferroni's bound, on shares of the same 2000 arrangements.
    for (const { pValue, correctedP } of kinds)
      expect(correctedP).toBeLessThanOrEqual(messages.length * pValue);
  });

  it('calls regular what comes by chance in at most one log in twenty', () => {
    const logs = 300;
    let wrong = 0;
    for (let seed = 1; seed <= logs; seed += 1) {
      const said = messages.flatMap((message, index) =>
        saying(scattered(40, seed * 10 + index, 8000), message),
      );
      const occurrences = occurrencesAt(scattered(8, seed * 10 + 9, 8000));
      const { kinds } = precursors(logOf(said, 8000), occurrences, { permutations: 199, seed });
      if (kinds.some(({ regular }) => regular)) wrong += 1;
    }
    // 5 % and three standard errors of 300 draws.
    expect(wrong / logs).toBeLessThan(0.05 + 3 * Math.sqrt((0.05 * 0.95) / logs));
    expect(wrong).toBeGreaterThan(0);
  });
});
