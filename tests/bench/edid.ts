import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { decodeEdid, encodeEdid, readEdidInput, summarise } from '../../shared/signal/edid/index.ts';
import { referenceEdid } from '../signal/edid/arbitrary-edid.ts';
import type { BenchRow } from './bench-row.ts';

const fileCount = 200;
const seed = 2026;
/** Each round measures all three beside each other; the best round of each counts. */
const rounds = 5;
/** Passes over all files in one round, so that the quick ones run long enough to be measured. */
const passes = { decode: 10, sum: 50, reference: 1 } as const;

type Work = keyof typeof passes;

const work: Record<Work, (file: string) => unknown> = {
  decode: (file) =>
    JSON.stringify({ file, ...summarise(decodeEdid(readEdidInput(readFileSync(file)).bytes)) }),
  sum: (file) => sumOfBytes(readFileSync(file)),
  reference: decodeByReference,
};

/** The floor: every byte has to be looked at once to check the sums. */
function sumOfBytes(bytes: Uint8Array): number {
  let sum = 0;
  for (const value of bytes) sum += value;
  return sum;
}

function decodeByReference(file: string): void {
  const run = spawnSync('edid-decode', ['--skip-hex-dump', file], { stdio: ['ignore', 'pipe', 'pipe'] });
  if (run.error) throw new Error('edid-decode is not installed; this benchmark stands beside it.');
}

/** Files a second over all files. */
function rateOf(name: Work, files: readonly string[]): number {
  const from = performance.now();
  for (let pass = 0; pass < passes[name]; pass += 1) for (const file of files) work[name](file);
  return (files.length * passes[name] * 1000) / (performance.now() - from);
}

function writeFiles(folder: string): string[] {
  return fc.sample(referenceEdid, { numRuns: fileCount, seed }).map((tree, i) => {
    const file = join(folder, `${i}.bin`);
    writeFileSync(file, encodeEdid(tree));
    return file;
  });
}

const rate = (filesASecond: number): string => `${Math.round(filesASecond).toLocaleString('en')} files/s`;

/**
 * EDIDs read from disk, decoded and written as JSON in one process on one core, beside edid-decode started once a file
 * and beside adding up the bytes of the same files.
 */
export async function benchEdid(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-edid-'));
  try {
    const files = writeFiles(folder);
    const best = { decode: 0, sum: 0, reference: 0 };
    for (let round = 0; round < rounds; round += 1)
      for (const name of ['decode', 'sum', 'reference'] as const)
        best[name] = Math.max(best[name], rateOf(name, files));
    return [
      {
        name: 'EDIDs decoded, against edid-decode started once a file',
        value: rate(best.decode),
        baseline: rate(best.reference),
        ratio: `${(best.decode / best.reference).toFixed(1)} times as fast`,
      },
      {
        name: 'EDIDs decoded, against adding up the bytes of each file',
        value: rate(best.decode),
        baseline: rate(best.sum),
        ratio: `${((100 * best.decode) / best.sum).toFixed(1)} % of its speed`,
      },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
