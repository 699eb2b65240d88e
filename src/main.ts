import { readConfig } from './config.ts';
import { startServer } from './start.ts';
import { startedOrTold } from './start-fault.ts';

const running = await startedOrTold(() => startServer(readConfig(process.env)));

// For looking into a server that runs: kill -USR2 PID. Windows has no such signal.
if (process.platform !== 'win32') process.on('SIGUSR2', () => running.switchDebug());

for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.once(signal, () => {
    running.stop().then(
      () => process.exit(0),
      () => process.exit(1),
    );
  });
}
