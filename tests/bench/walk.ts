import fc from 'fast-check';
import { Walk, type WalkEnd } from '../state-machines/triage/walk.ts';
import { walkChains } from '../state-machines/triage/walk-chains.ts';
import { Met } from '../state-machines/triage/walk-met.ts';
import { argument } from './argument.ts';
import type { BenchRow } from './bench-row.ts';

const walks = 10_000;
const quickWalks = 500;
/** Another one than the tests': what holds there was mended there. */
const chainSeed = 20_261_129;

const kinds = ['closed', 'escalated', 'waiting', 'stranded'] as const;

/**
 * Walks blindly by what the plan offers, ten thousand times; `--walks=…` says how many times. Says how it ended, in how
 * many steps, and what was met how often; a walk that is stranded is printed with its way.
 */
export function benchWalk(): BenchRow[] {
  const asked = argument('walks');
  const count = asked !== undefined ? Number(asked) : process.argv.includes('--quick') ? quickWalks : walks;
  const met = new Met();
  const ends: WalkEnd[] = [];
  for (const [at, chain] of fc.sample(walkChains, { seed: chainSeed, numRuns: count }).entries()) {
    const end = new Walk(chain, chainSeed + at, met).end();
    ends.push(end);
    if (end.kind === 'stranded') console.log([`walk ${at}: ${end.why}`, ...end.told].join('\n  '));
  }
  console.log([...met.lines(), `never met: ${met.missing().join(', ') || 'nothing'}`].join('\n'));
  return kinds.map((kind) => rowOf(kind, ends));
}

function rowOf(kind: WalkEnd['kind'], all: readonly WalkEnd[]): BenchRow {
  const ends = all.filter((end) => end.kind === kind);
  const middle = (of: (end: WalkEnd) => number, share: number): number => {
    const sorted = ends.map(of).toSorted((a, b) => a - b);
    return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
  };
  const steps = (share: number) => middle((end) => end.steps, share);
  const minutes = (share: number) => Math.round(middle((end) => end.minutes, share));
  return {
    name: kind,
    value: `${ends.length} of ${all.length}`,
    baseline: `steps ${steps(0.5)}, nine of ten within ${steps(0.9)}, all within ${steps(1)}`,
    ratio: `minutes ${minutes(0.5)}, nine of ten within ${minutes(0.9)}`,
  };
}
