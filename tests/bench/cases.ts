import type { PlayedCase } from '../played/cases.ts';
import { keptApartCases } from '../played/kept-apart.ts';
import { openCasesApp, playCase } from '../played/play.ts';
import { tunedCases } from '../played/tuned.ts';
import type { BenchRow } from './bench-row.ts';

/** Each played case over HTTP with its steps and minutes; with `--kept-apart` those that nothing is tuned to. */
export async function benchCases(): Promise<BenchRow[]> {
  const cases: readonly PlayedCase[] = process.argv.includes('--kept-apart') ? keptApartCases : tunedCases;
  const test = await openCasesApp();
  const rows: BenchRow[] = [];
  for (const played of cases) {
    const { name, end, what, steps, minutes } = await playCase(test, played);
    rows.push({
      name,
      value: `${end}: ${what}`,
      baseline: `${steps} steps`,
      ratio: `${Math.round(minutes)} min`,
    });
  }
  await test.close();
  const held = rows.filter(({ value }) => /^(truth|handOver)/.test(value)).length;
  return [...rows, { name: 'held', value: `${held} of ${rows.length}`, baseline: '', ratio: '' }];
}
