import type { Chain } from '../../shared/contract/chain.ts';
import { formatNeed } from '../../shared/signal/format/index.ts';
import { candidateFormats } from '../../shared/signal/link-budget/candidates.ts';
import { chainBudget } from '../../shared/signal/link-budget/index.ts';
import {
  cable,
  chainOf,
  display,
  matrixSwitch,
  opticalCable,
  processor,
  receiver,
  source,
  splitter,
} from '../chain/build-chain.ts';
import { edid18, edid48, withEdid } from '../signal/link-budget/chains.ts';
import type { BenchRow } from './bench-row.ts';

/** Four sources, switch, receiver, processor and splitter, four displays with an EDID each. */
function twelveDevices(): Chain {
  const chain = chainOf(
    [
      ...['s1', 's2', 's3', 's4'].map((id) => source(id)),
      matrixSwitch('sw'),
      receiver('r'),
      processor('p'),
      splitter('sp'),
      ...['d1', 'd2', 'd3', 'd4'].map((id) => display(id)),
    ],
    [
      cable('s1.out1', 'sw.in1'),
      cable('s2.out1', 'sw.in2'),
      cable('s3.out1', 'sw.in3'),
      cable('s4.out1', 'r.in2'),
      cable('sw.out1', 'r.in1'),
      cable('r.out1', 'p.in1'),
      cable('r.out2', 'd4.in1', { category: 'unknown', certified: false }),
      opticalCable('p.out1', 'sp.in1'),
      cable('sp.out1', 'd1.in1'),
      cable('sp.out2', 'd2.in1'),
      cable('sp.out3', 'd3.in1', { category: 'highSpeed', lengthM: 12 }),
    ],
  );
  return ['d1', 'd2', 'd3', 'd4'].reduce(
    (all, id, at) => withEdid(all, id, 'in1', at % 2 === 0 ? edid18 : edid48),
    chain,
  );
}

const rounds = 200;

/** Median milliseconds of one run, after some to warm up. */
function medianMs(work: () => void): number {
  for (let round = 0; round < 20; round += 1) work();
  const times = Array.from({ length: rounds }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[rounds / 2] ?? 0;
}

/**
 * A whole budget of a chain of 12 devices for 40 formats, beside the floor: what the 40 formats need, once for each of
 * the 11 links, without looking at a chain.
 */
export async function benchBudget(): Promise<BenchRow[]> {
  const chain = twelveDevices();
  const formats = candidateFormats.slice(0, 40).map((format) => ({ ...format }));
  const row = (name: string, budgetMs: number, floorMs: number): BenchRow => ({
    name,
    value: `${budgetMs.toFixed(2)} ms`,
    baseline: `${floorMs.toFixed(2)} ms for the needs alone`,
    ratio: `${(budgetMs / floorMs).toFixed(1)} times`,
  });
  const floorMs = medianMs(() => {
    for (const _ of chain.links) for (const format of formats) formatNeed(format);
  });
  return [
    row(
      'budget of 12 devices for 40 formats',
      medianMs(() => chainBudget(chain, formats)),
      floorMs,
    ),
    row(
      'the same without its processor',
      medianMs(() => chainBudget(chain, formats, { without: 'p' })),
      floorMs,
    ),
  ];
}
