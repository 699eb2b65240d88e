import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { freePort, startProgram, stopProgram } from '../support/server-process.ts';
import { demoEnvironment, demoProgram, plantedFolderName } from './stage.ts';

/**
 * Bundles the demo and plants it once for all browser tests of a run: every stage begins with a copy of it, and none
 * waits until a thousand files are translated once more.
 */
export async function setup(): Promise<void> {
  await build({
    entryPoints: ['seed/run-demo.ts'],
    outfile: demoProgram,
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    target: 'node20.19',
    sourcemap: true,
    logLevel: 'warning',
  });
  const folder = await mkdtemp(join(tmpdir(), 'halfsplit-planted-'));
  const port = await freePort();
  const base = `http://127.0.0.1:${port}`;
  await stopProgram(await startProgram(demoProgram, demoEnvironment(folder, port), base));
  process.env[plantedFolderName] = folder;
}

export async function teardown(): Promise<void> {
  await rm(process.env[plantedFolderName] ?? '', { recursive: true, force: true });
}
