import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { freePort, startProgram, stopProgram } from '../support/server-process.ts';
import { demoEnvironment, plantedFolderName } from './stage.ts';

/** Plants the demo once for all browser tests of a run: every stage begins with a copy of it. */
export async function setup(): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'halfsplit-planted-'));
  const port = await freePort();
  const base = `http://127.0.0.1:${port}`;
  await stopProgram(await startProgram('seed/run-demo.ts', demoEnvironment(folder, port), base));
  process.env[plantedFolderName] = folder;
}

export async function teardown(): Promise<void> {
  await rm(process.env[plantedFolderName] ?? '', { recursive: true, force: true });
}
