import fc from 'fast-check';
import { expect, it } from 'vitest';
import { mostSteps, Walk } from './walk.ts';
import { walkChains } from './walk-chains.ts';
import { mostNotToMeet, notToMeet } from './walk-exceptions.ts';
import { Met } from './walk-met.ts';

/** So few in one test that whoever waits for it hears of it in time. */
const walksATest = 100;

/**
 * Five hundred walks. A failing one is printed with its way, and with the seed and the path that it comes again by;
 * nothing is shrunk, since another chain is another way.
 *
 * @param firstSeed `WALK_SEED=…` walks elsewhere
 */
export function walkFrom(firstSeed: number): void {
  const seed = Number(process.env.WALK_SEED ?? firstSeed);
  const met = new Met();
  it.each([0, 1, 2, 3, 4].map((at) => seed + at))(
    'never stands without a way on: each offer is taken as offered, none comes again for the same record, and it ends (%i)',
    (eachSeed) => {
      fc.assert(
        fc.property(walkChains, fc.nat(), (chain, number) => {
          const { kind, why, steps, told } = new Walk(chain, number, met).end();
          expect(kind, [why, ...told].join('\n')).not.toBe('stranded');
          expect(steps).toBeLessThanOrEqual(mostSteps);
        }),
        { seed: eachSeed, numRuns: walksATest, endOnFailure: true },
      );
    },
    300_000,
  );

  it('meets all that the contract has a name for', () => {
    expect(met.missing().filter((each) => !notToMeet.includes(each))).toEqual([]);
    expect(notToMeet.length).toBeLessThanOrEqual(mostNotToMeet);
  });
}
