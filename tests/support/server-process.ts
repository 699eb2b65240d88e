import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';

/**
 * Starts one of our programs, as it is written or bundled to a .js, as a process of its own and waits until its server is
 * ready, three minutes at the most.
 */
export async function startProgram(
  program: string,
  env: NodeJS.ProcessEnv,
  base: string,
): Promise<ChildProcess> {
  const how = program.endsWith('.js') ? '--enable-source-maps' : '--import=tsx';
  const child = spawn(process.execPath, [how, program], {
    env,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  await untilReady(child, base);
  return child;
}

/** Waits until the server that a process runs answers as ready, three minutes at the most. @throws when the process ends. */
export async function untilReady(program: ChildProcess, base: string): Promise<void> {
  const name = program.spawnargs.join(' ');
  for (let attempt = 0; attempt < 1800; attempt += 1) {
    if (program.exitCode !== null) throw new Error(`${name} ended with ${program.exitCode}`);
    // One that gets no answer while the server starts must not keep the others from being asked.
    const ready = await fetch(`${base}/readyz`, { signal: AbortSignal.timeout(2_000) }).then(
      (answer) => answer.status === 200,
      () => false,
    );
    if (ready) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`${name} was not ready in three minutes`);
}

/** Ends one of our programs the way whoever runs it would. */
export async function stopProgram(program: ChildProcess): Promise<void> {
  const ended = once(program, 'exit');
  program.kill('SIGTERM');
  await ended;
}

/** A port on this machine that nobody listens on. */
export async function freePort(): Promise<number> {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const address = probe.address();
  probe.close();
  if (address === null || typeof address === 'string') throw new Error('no port');
  return address.port;
}
