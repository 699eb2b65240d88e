import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { freePort, stopProgram, untilReady } from '../../support/server-process.ts';
import { type TestApp, usualTestConfig } from '../../support/test-app.ts';

/** How late the event loop was, and what the process held at the end. */
export type LoopDelay = { p50Ms: number; p99Ms: number; maxMs: number; residentMB: number };

/** The server as it ships, in a process of its own, over what a test application prepared. */
export type MeasuredServer = {
  readonly base: string;
  /** Since it was asked last. */
  loopDelay(): Promise<LoopDelay>;
  stop(): Promise<void>;
};

export async function startMeasuredServer(test: TestApp): Promise<MeasuredServer> {
  const { dataFolder, databaseUrl } = await test.databaseElsewhere();
  const port = await freePort();
  const base = `http://127.0.0.1:${port}`;
  const program = fork(fileURLToPath(new URL('../../../dist/server/main.js', import.meta.url)), {
    execArgv: ['--import', new URL('./loop-monitor.js', import.meta.url).href],
    env: {
      ...process.env,
      DATABASE_URL: databaseUrl,
      HALFSPLIT_DATA: dataFolder,
      HALFSPLIT_TOKEN_SECRET: usualTestConfig.tokenSecrets[0],
      HALFSPLIT_REQUESTS_PER_MIN: '1000000',
      // Strangers come from addresses of their own, which the bench writes for them.
      HALFSPLIT_TRUST_PROXY: '1',
      LOG_LEVEL: 'error',
      PORT: String(port),
    },
  });
  await untilReady(program, base);
  return { base, loopDelay: () => ask(program), stop: () => stopProgram(program) };
}

async function ask(program: ChildProcess): Promise<LoopDelay> {
  const answer = once(program, 'message');
  program.send('how late');
  const [delay] = await answer;
  return delay;
}
