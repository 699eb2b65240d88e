import { randomUUID } from 'node:crypto';
import type { Server } from 'node:https';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import type { FastifyInstance } from 'fastify';
import { createApp } from './app.ts';
import type { Config } from './config.ts';
import { openDatabase } from './database/index.ts';
import { openEvidenceStore } from './evidence-store/index.ts';
import { keepAnchors, keepSnapshotsCurrent } from './features/ticket-record/index.ts';
import { openHeavyWork } from './heavy-work/index.ts';
import { createLogger } from './http/logging.ts';
import { followTlsFiles } from './http/tls.ts';
import { createMetrics, listenForMetrics } from './metrics.ts';
import { keepRetention } from './retention.ts';
import type { Services } from './services.ts';

export type RunningServer = {
  readonly address: string;
  readonly services: Services;
  /** Goes over to the log level `debug`, and back to the one that was set. @returns the one it is now */
  switchDebug(): string;
  stop(): Promise<void>;
};

export type StartOptions = {
  /** Runs before the server listens, e.g. to fill in a demo. */
  prepare?: (app: FastifyInstance, services: Services) => Promise<void>;
  /** The server's clock. */
  now?: () => Date;
  /** How often it is looked whether the certificate was renewed. */
  certificateLookEveryMs?: number;
};

/**
 * Opens the database (applying migrations) and the evidence store, and listens.
 * `stop` says that it isn't ready, waits for proxies to notice where that is set, takes no new requests, lets running ones
 * finish, then closes the database.
 */
export async function startServer(config: Config, options: StartOptions = {}): Promise<RunningServer> {
  const logger = createLogger(config.logLevel);
  const database = await openDatabase({ databaseUrl: config.databaseUrl, dataFolder: config.dataFolder });
  const evidenceStore = await openEvidenceStore({ folder: join(config.dataFolder, 'evidence') });
  const heavyWork = openHeavyWork();
  let stopping = false;
  const services: Services = {
    config,
    database,
    evidenceStore,
    heavyWork,
    now: options.now ?? (() => new Date()),
    isStopping: () => stopping,
    newId: randomUUID,
  };
  const metrics = config.metrics === null ? null : createMetrics(services);
  const app = await createApp(services, logger, metrics);
  let toldAt: { stop(): void } | undefined;
  const listen = async (): Promise<string> => {
    await options.prepare?.(app, services);
    if (metrics !== null && config.metrics !== null) toldAt = await listenForMetrics(metrics, config.metrics);
    return app.listen({ host: config.host, port: config.port });
  };
  const address = await listen().catch(async (error: unknown) => {
    toldAt?.stop();
    await app.close();
    await heavyWork.close();
    await database.close();
    throw error;
  });
  const tls =
    config.tls === null
      ? null
      : followTlsFiles(app.server as unknown as Server, config.tls, {
          logger,
          everyMs: options.certificateLookEveryMs,
        });
  const jobs = [
    keepSnapshotsCurrent(database, logger),
    keepAnchors(services, logger),
    keepRetention(services, logger),
  ];
  return {
    address,
    services,
    switchDebug: () => {
      logger.level = logger.level === 'debug' ? config.logLevel : 'debug';
      return logger.level;
    },
    stop: async () => {
      stopping = true;
      await setTimeout(config.drainS * 1000);
      tls?.stop();
      toldAt?.stop();
      await app.close();
      await heavyWork.close();
      for (const job of jobs) await job.stop();
      await database.close();
    },
  };
}
