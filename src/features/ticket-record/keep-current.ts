import type { Logger } from 'pino';
import type { BackgroundJob } from '../../background-job.ts';
import type { Database } from '../../database/index.ts';
import { rebuildTickets } from './rebuild.ts';

/**
 * Stores anew, beside the server's work, every snapshot that an older version of the program left. Until a ticket's
 * turn comes, its readers rebuild it in memory.
 */
export function keepSnapshotsCurrent(database: Database, logger: Logger): BackgroundJob {
  let isStopping = false;
  const run = async (): Promise<void> => {
    for await (const { organisation, done, total, tickets } of rebuildTickets(database, 'older')) {
      const failed = tickets.filter((ticket) => ticket.kind === 'failed');
      for (const { number, because } of failed) {
        logger.error({ organisation: organisation.handle, number, because }, 'a ticket could not be rebuilt');
      }
      logger.info({ organisation: organisation.handle, done, total }, 'rebuilt tickets of an older version');
      if (isStopping) return;
    }
  };
  const running = run().catch((error: unknown) =>
    logger.error({ err: error }, 'tickets of an older version could not all be rebuilt'),
  );
  return {
    stop: async () => {
      isStopping = true;
      await running;
    },
  };
}
