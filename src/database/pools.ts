import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import { createPgConfig } from '@electric-sql/pglite/node-postgres';
import pg from 'pg';
import { lockFolder } from './folder-lock.ts';
import { type Listen, listenOnServer, listenThrough } from './notifications.ts';
import { sendOneAtATime } from './one-at-a-time.ts';
import { refuseSilentRollback } from './silent-rollback.ts';

/** Connections to a database, how to hear its notifications, and how to let go of it. */
export type Connections = {
  kind: 'embedded' | 'server';
  pool: pg.Pool;
  listen: Listen;
  close(): Promise<void>;
};

/** A server, or where there is none the data folder that the embedded database lies in. */
export type DatabasePlace = { readonly databaseUrl?: string | undefined; readonly dataFolder: string };

/** @throws FolderInUseError when another process has the folder open */
export const connectTo = async ({ databaseUrl, dataFolder }: DatabasePlace): Promise<Connections> =>
  databaseUrl === undefined ? openEmbedded(dataFolder) : openServer(databaseUrl);

/** Assumed: enough to keep a small server busy, few enough for a default PostgreSQL (100) with several of us on it. */
const serverConnections = 10;
/** Assumed: how long a request may wait for a connection before it is told that the database is busy. */
export const waitForConnectionMs = 30_000;

/** Connects to a PostgreSQL server (15 or later); nothing is sent before the first query. */
export function openServer(databaseUrl: string): Connections {
  const pool = watched(
    new pg.Pool({
      connectionString: databaseUrl,
      max: serverConnections,
      // Later than Prisma's own limit, so that waiting too long is told in one way on either database.
      connectionTimeoutMillis: waitForConnectionMs + 5_000,
      application_name: 'halfsplit',
    }),
  );
  return { kind: 'server', pool, listen: listenOnServer(databaseUrl), close: () => pool.end() };
}

/**
 * Opens PGlite in `${dataFolder}/postgres`, or in memory where `dataFolder` is `memory://`.
 * @throws FolderInUseError when another process has the folder open.
 */
export async function openEmbedded(dataFolder: string): Promise<Connections> {
  if (dataFolder === 'memory://') return embeddedOver(await PGlite.create(dataFolder));
  await mkdir(dataFolder, { recursive: true, mode: 0o700 });
  const unlock = await lockFolder(join(dataFolder, 'postgres.lock'));
  try {
    const pglite = await PGlite.create(join(dataFolder, 'postgres'), { relaxedDurability: false });
    return embeddedOver(pglite, unlock);
  } catch (error) {
    await unlock();
    throw error;
  }
}

/**
 * PGlite has one session, so its pool has one connection: transactions wait in line for it, and all that is built on
 * top is the same as with a server.
 */
export function embeddedOver(
  pglite: PGlite,
  closed: () => Promise<void> = async () => undefined,
): Connections {
  const pool = watched(new pg.Pool({ Client: clientOf(pglite), max: 1, idleTimeoutMillis: 0 }));
  const close = async () => {
    await pool.end();
    await pglite.close();
    await closed();
  };
  return { kind: 'embedded', pool, listen: listenThrough(pool), close };
}

/** A client for each connection the pool makes: a PGlite connection can't be used again once its client is gone. */
const clientOf = (pglite: PGlite) =>
  class extends pg.Client {
    constructor() {
      const config = createPgConfig(pglite);
      const { connection } = config;
      const parse = connection.parse.bind(connection);
      // A query's `types` are the client's own parsers of results. node-postgres's protocol passes them by since they are
      // no list of parameter types; PGlite's copy of it fails on them.
      connection.parse = (query: object) => parse({ ...query, types: undefined });
      super(config as pg.ClientConfig);
    }
  };

/** A connection that breaks fails the query that runs on it; without a listener it would end the process as well. */
function watched(pool: pg.Pool): pg.Pool {
  pool.on('error', () => undefined);
  pool.on('connect', (client) => {
    client.on('error', () => undefined);
    sendOneAtATime(client);
    refuseSilentRollback(client);
  });
  return pool;
}
