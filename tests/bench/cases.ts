import type { PlayedCase } from '../played/cases.ts';
import { drawnCase } from '../played/drawn.ts';
import { keptApartCases } from '../played/kept-apart.ts';
import { openCasesApp, playCase } from '../played/play.ts';
import { tunedCases } from '../played/tuned.ts';
import { argument } from './argument.ts';
import type { BenchRow } from './bench-row.ts';

/** With `--drawn=N` as many that nobody chose, from seed `--from=`; `--kept-apart`: those that nothing is tuned to. */
function casesAsked(): readonly PlayedCase[] {
  const drawn = Number(argument('drawn') ?? 0);
  const from = Number(argument('from') ?? 1);
  if (drawn > 0) return Array.from({ length: drawn }, (_, at) => drawnCase(from + at));
  return process.argv.includes('--kept-apart') ? keptApartCases : tunedCases;
}

/** Each played case over HTTP with its steps and minutes. */
export async function benchCases(): Promise<BenchRow[]> {
  const test = await openCasesApp();
  const rows: BenchRow[] = [];
  for (const played of casesAsked()) {
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
