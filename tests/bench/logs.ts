import { execFile } from 'node:child_process';
import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import type { BenchRow } from './bench-row.ts';
import { writeMixedLog } from './log-file.ts';

const run = promisify(execFile);
const logBytes = 100e6;
const rounds = 3;
const allowedGrowthMB = 100;
/** One word, and one for each of the things that we look for. */
const greps = [
  { name: 'one word', args: ['-c', 'sync lost'] },
  {
    name: 'nine words, any case',
    args: ['-ciE', 'sync|hot plug|hpd|edid|training|protection|format|reboot|firmware'],
  },
];

type Taken = {
  seconds: number;
  rssGrowthMB: number;
  bytes: number;
  lines: number;
  unparsed: number;
  events: number;
};

/** 100 MB of mixed logs read in one pass, beside `grep -c` on the same file, in turns; the best of each counts. */
export async function benchLogs(): Promise<BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'bench-logs-'));
  try {
    const file = join(folder, 'mixed.log');
    await writeMixedLog(file, logBytes);
    const { size } = await stat(file);
    const reads: Taken[] = [];
    const grepSeconds: number[][] = greps.map(() => []);
    for (let round = 0; round < rounds; round += 1) {
      reads.push(await readInOwnProcess(file, size));
      for (const [index, { args }] of greps.entries()) grepSeconds[index]?.push(await secondsOf(args, file));
    }
    return rowsOf(reads, grepSeconds, size / 1e6);
  } finally {
    await rm(folder, { recursive: true });
  }
}

async function readInOwnProcess(file: string, size: number): Promise<Taken> {
  const reader = fileURLToPath(new URL('read-log-file.ts', import.meta.url));
  const { stdout } = await run(process.execPath, ['--import', 'tsx', reader, file]);
  const taken: Taken = JSON.parse(stdout);
  if (taken.bytes !== size || taken.unparsed > 0) throw new Error(`Not all was read: ${stdout}`);
  return taken;
}

async function secondsOf(args: readonly string[], file: string): Promise<number> {
  const begun = performance.now();
  await run('grep', [...args, file], { env: { ...process.env, LC_ALL: 'C' } });
  return (performance.now() - begun) / 1000;
}

function rowsOf(reads: readonly Taken[], grepSeconds: readonly number[][], sizeMB: number): BenchRow[] {
  const best = Math.min(...reads.map(({ seconds }) => seconds));
  const growthMB = Math.max(...reads.map(({ rssGrowthMB }) => rssGrowthMB));
  const { lines = 0, events = 0 } = reads[0] ?? {};
  const speeds = greps.map(({ name }, index): BenchRow => {
    const grepBest = Math.min(...(grepSeconds[index] ?? []));
    return {
      name: `${sizeMB.toFixed(0)} MB, ${lines} lines, ${events} events: speed`,
      value: `${(sizeMB / best).toFixed(0)} MB/s`,
      baseline: `grep -c, ${name}: ${(sizeMB / grepBest).toFixed(0)} MB/s`,
      ratio: (grepBest / best).toFixed(3),
    };
  });
  return [
    ...speeds,
    {
      name: 'the same: most memory growth of any round',
      value: `${growthMB.toFixed(0)} MB`,
      baseline: `${allowedGrowthMB} MB allowed`,
      ratio: (growthMB / allowedGrowthMB).toFixed(2),
    },
  ];
}
