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
/** Each round measures all beside each other; the best round of each counts. */
const rounds = 15;

type File = { path: string; bytes: Uint8Array };
/** `passes` over all files in one round, so that the quick ones run long enough to be measured. */
type Work = { passes: number; once: (file: File) => unknown };

/** From the disk to JSON and to the sum of a file's bytes; and the same with the bytes at hand. */
const work = {
  decode: {
    passes: 10,
    once: ({ path }) =>
      JSON.stringify({ path, ...summarise(decodeEdid(readEdidInput(readFileSync(path)).bytes)) }),
  },
  sum: { passes: 50, once: ({ path }) => sumOfBytes(readFileSync(path)) },
  reference: { passes: 1, once: ({ path }) => decodeByReference(path) },
  decodeHeld: { passes: 15, once: ({ bytes }) => decodeEdid(bytes) },
  summariseHeld: { passes: 15, once: ({ bytes }) => summarise(decodeEdid(bytes)) },
  sumHeld: { passes: 200, once: ({ bytes }) => sumOfBytes(bytes) },
} as const satisfies Record<string, Work>;

type Name = keyof typeof work;
const names = Object.keys(work) as Name[];

/** The floor: every byte has to be looked at once to check the sums. */
function sumOfBytes(bytes: Uint8Array): number {
  let sum = 0;
  for (let i = 0; i < bytes.length; i++) sum += bytes[i] ?? 0;
  return sum;
}

function decodeByReference(file: string): void {
  const run = spawnSync('edid-decode', ['--skip-hex-dump', file], { stdio: ['ignore', 'pipe', 'pipe'] });
  if (run.error) throw new Error('edid-decode is not installed; this benchmark stands beside it.');
}

/** Files a second over all files. */
function rateOf({ passes, once }: Work, files: readonly File[]): number {
  const from = performance.now();
  for (let pass = 0; pass < passes; pass += 1) for (const file of files) once(file);
  return (files.length * passes * 1000) / (performance.now() - from);
}

function writeFiles(folder: string): File[] {
  return fc.sample(referenceEdid, { numRuns: fileCount, seed }).map((tree, i) => {
    const file = { path: join(folder, `${i}.bin`), bytes: encodeEdid(tree) };
    writeFileSync(file.path, file.bytes);
    return file;
  });
}

const rate = (filesASecond: number): string => `${Math.round(filesASecond).toLocaleString('en')} files/s`;

const againstHeldSum = (done: string, did: number, sum: number): BenchRow => ({
  name: `EDIDs ${done} in memory, against adding up their bytes there`,
  value: rate(did),
  baseline: rate(sum),
  ratio: `${(sum / did).toFixed(1)} times as long`,
});

/**
 * EDIDs read from disk, decoded and written as JSON in one process on one core, beside edid-decode started once a file
 * and beside adding up the bytes of the same files; and the last two without the disk.
 */
export async function benchEdid(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-edid-'));
  try {
    const files = writeFiles(folder);
    const best = Object.fromEntries(names.map((name) => [name, 0])) as Record<Name, number>;
    for (let round = 0; round < rounds; round += 1)
      for (const name of names) best[name] = Math.max(best[name], rateOf(work[name], files));
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
      againstHeldSum('decoded', best.decodeHeld, best.sumHeld),
      againstHeldSum('decoded and summed up', best.summariseHeld, best.sumHeld),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
