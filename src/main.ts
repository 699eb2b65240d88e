import { readConfig } from './config.ts';
import { startServer } from './start.ts';
import { startedOrTold } from './start-fault.ts';

const running = await startedOrTold(() => startServer(readConfig(process.env)));

for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.once(signal, () => {
    running.stop().then(
      () => process.exit(0),
      () => process.exit(1),
    );
  });
}
