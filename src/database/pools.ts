import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { PGlite, type PGliteOptions } from '@electric-sql/pglite';
import { btree_gin } from '@electric-sql/pglite/contrib/btree_gin';
import { pg_trgm } from '@electric-sql/pglite/contrib/pg_trgm';
import { createPgConfig } from '@electric-sql/pglite/node-postgres';
import pg from 'pg';
import { lockFolder } from './folder-lock.ts';
import { type Listen, listenHere, listenOnServer } from './notifications.ts';
import { sendOneAtATime } from './one-at-a-time.ts';
import { tellInBatches } from './tell-in-batches.ts';

/** Connections to a database, how to hear its notifications, and how to let go of it. */
export type Connections = {
  kind: 'embedded' | 'server';
  pool: pg.Pool;
  listen: Listen;
  /** Tells news, once they are committed, to whoever listens on this database, in this process and in others. */
  tell(news: readonly string[]): void;
  /** For how long the oldest news have waited to be told. */
  newsLagMs(): number;
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
      // What is asked for side by side goes out at once, and is answered in order.
      pipeline: true,
      // Later than Prisma's own limit, so that waiting too long is told in one way on either database.
      connectionTimeoutMillis: waitForConnectionMs + 5_000,
      application_name: 'halfsplit',
    }),
  );
  const teller = tellInBatches(pool);
  return {
    kind: 'server',
    pool,
    listen: listenOnServer(databaseUrl),
    tell: teller.tell,
    newsLagMs: teller.lagMs,
    close: () => teller.close().then(() => pool.end()),
  };
}

/** What searches need; a folder that was once opened with them needs them for good. */
export const extensions = { btree_gin, pg_trgm } satisfies PGliteOptions['extensions'];

/**
 * Opens PGlite in `${dataFolder}/postgres`, or in memory where `dataFolder` is `memory://`.
 * @throws FolderInUseError when another process has the folder open.
 */
export async function openEmbedded(dataFolder: string): Promise<Connections> {
  if (dataFolder === 'memory://') return embeddedOver(await PGlite.create(dataFolder, { extensions }));
  await mkdir(dataFolder, { recursive: true, mode: 0o700 });
  const unlock = await lockFolder(join(dataFolder, 'postgres.lock'));
  try {
    const pglite = await PGlite.create(join(dataFolder, 'postgres'), {
      extensions,
      relaxedDurability: false,
    });
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
  pool.on('connect', (client) => {
    sendOneAtATime(client);
    // The one session outlives its clients, and so would what they prepared.
    client.query('deallocate all').catch(() => undefined);
  });
  const { listen, tell } = listenHere();
  const close = async () => {
    await pool.end();
    await pglite.close();
    await closed();
  };
  return { kind: 'embedded', pool, listen, tell, newsLagMs: () => 0, close };
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
  });
  return pool;
}
