import { readConfig } from '../config.ts';
import { openDatabase } from '../database/index.ts';
import { rebuildTickets } from '../features/ticket-record/index.ts';
import { startFault } from '../start-fault.ts';

/**
 * `npm run tickets:rebuild`: replays the log of every ticket of every organisation and stores what it leads to where
 * the row holds anything else. Ends with exit code 1 where a log does not replay.
 */
async function run(): Promise<void> {
  const { databaseUrl, dataFolder } = readConfig(process.env);
  const database = await openDatabase({ databaseUrl, dataFolder });
  const count = { kept: 0, rebuilt: 0, failed: 0 };
  try {
    for await (const { organisation, done, total, tickets } of rebuildTickets(database, 'all')) {
      for (const ticket of tickets) {
        count[ticket.kind] += 1;
        if (ticket.kind === 'failed')
          console.error(`${organisation.handle}, ticket no. ${ticket.number}: ${ticket.because}`);
      }
      console.log(`${organisation.handle}: ${done} of ${total} tickets`);
    }
  } finally {
    await database.close();
  }
  console.log(`${count.kept} as they were, ${count.rebuilt} rebuilt, ${count.failed} not.`);
  if (count.failed > 0) process.exitCode = 1;
}

try {
  await run();
} catch (error) {
  console.error(startFault(error));
  process.exitCode = 1;
}
