import { setTimeout } from 'node:timers/promises';
import type pg from 'pg';
import { WrongSettingError } from '../wrong-setting.ts';
import { retriedWhenContended } from './contention.ts';
import { readTables, type TablesAtOneMoment } from './copy-tables.ts';
import { migrate } from './migrate.ts';
import type { Listen } from './notifications.ts';
import { type Connections, connectTo, type DatabasePlace, waitForConnectionMs } from './pools.ts';
import { someLost } from './tell-in-batches.ts';
import { BusyError, runTransaction, type TenantTransaction } from './transaction.ts';

export { ContendedError } from './contention.ts';
export type { TableCopy, TablesAtOneMoment } from './copy-tables.ts';
export { FolderInUseError } from './folder-lock.ts';
export { Prisma } from './generated/client.ts';
export { MigrationError } from './migrate.ts';
export type { DatabasePlace } from './pools.ts';
export { NotRestorableError, restoreTables } from './restore-tables.ts';
export { RolledBackError } from './rolled-back.ts';
export { sqlState } from './statements.ts';
export { newsChannel } from './tell-in-batches.ts';
export { BusyError, type TenantTransaction } from './transaction.ts';
export { NewerDataError, UnreadableDataError } from './unreadable-data.ts';

/** Whose transaction it is. Both are UUIDs; `memberId` is null before somebody has signed in. */
export type Tenant = { orgId: string; memberId: string | null };

/**
 * The one door to the database. Each method runs `work` in one transaction (read committed): committed when `work`
 * returns, rolled back when it throws. An error of the database fails the whole transaction: work that catches one and
 * goes on needs a savepoint around the statement, or the commit is refused with RolledBackError. A transaction that
 * gets no connection within 30 s or runs for over 30 s fails with BusyError. One that meets others in a deadlock is
 * run again, `work` and all, a few times; then it fails with ContendedError.
 */
export type Database = {
  readonly kind: 'embedded' | 'server';
  /** As the request's role, which sees and writes the tenant's rows only (and reads packets granted to the member). */
  inTenant<T>(tenant: Tenant, work: (tx: TenantTransaction) => Promise<T>): Promise<T>;
  /**
   * As the look-up role, which reads across tenants, and only these columns, so a query needs a `select`:
   * organisation: orgId, handle, name; member: orgId, id, email, name, role, active, passwordHash. It also writes who
   * tried to sign in (sign_in_try), which belongs to no tenant yet.
   */
  lookUp<T>(work: (tx: TenantTransaction) => Promise<T>): Promise<T>;
  /** As the role that adds organisations and members to any; for the command line and the seed, never for a route. */
  provision<T>(work: (tx: TenantTransaction) => Promise<T>): Promise<T>;
  /** Every table as it is at one moment, of all tenants: for backups, never for a route. */
  readTables<T>(work: (tables: TablesAtOneMoment) => Promise<T>): Promise<T>;
  /** Hears what any process's transactions on this database told after they had committed. */
  listen: Listen;
  /** Connections in use and idle, how many wait for one, and how late news are. */
  load(): {
    readonly inUse: number;
    readonly idle: number;
    readonly waiting: number;
    readonly newsLagMs: number;
  };
  /** Whether the database answers within 3 s. */
  isReady(): Promise<boolean>;
  /** Waits for running transactions, then lets go of the database. */
  close(): Promise<void>;
};

/**
 * Opens the server at `databaseUrl`, or the embedded database in `${dataFolder}/postgres` (in memory where `dataFolder`
 * is `memory://`), and applies the migrations it lacks.
 * @throws MigrationError, FolderInUseError, or WrongSettingError when the server can't be reached.
 */
export async function openDatabase(where: DatabasePlace): Promise<Database> {
  return databaseOver(await connectTo(where));
}

/** Migrates the database behind `connections`, and puts the door in front of it. */
export async function databaseOver(connections: Connections): Promise<Database> {
  const { kind, pool } = connections;
  try {
    await migrateOver(connections);
  } catch (error) {
    await connections.close();
    throw error;
  }
  const running = new Set<Promise<unknown>>();
  const inRole = <T>(role: Role, tenant: Tenant | null, work: (tx: TenantTransaction) => Promise<T>) => {
    const entry = { settings: settingsOf(role, { tenant, kind }), limitMs: transactionMs };
    const result = retriedWhenContended(async () => {
      const client = await connectionOf(pool);
      try {
        const { result: done, news } = await runTransaction(client, entry, work);
        client.release();
        connections.tell(news);
        return done;
      } catch (error) {
        // What of the work still runs finds its door shut, for good.
        client.release(true);
        throw error;
      }
    });
    running.add(result);
    const over = () => running.delete(result);
    result.then(over, over);
    return result;
  };
  const readAll = async <T>(work: (tables: TablesAtOneMoment) => Promise<T>): Promise<T> => {
    const client = await pool.connect();
    try {
      return await readTables(client, work);
    } finally {
      client.release();
    }
  };
  // A process before this one may have ended between a commit and its news.
  connections.tell([someLost]);
  let closing: Promise<void> | undefined;
  return {
    kind,
    inTenant: (tenant, work) => inRole('halfsplit_request', tenant, work),
    lookUp: (work) => inRole('halfsplit_lookup', null, work),
    provision: (work) => inRole('halfsplit_provision', null, work),
    readTables: readAll,
    listen: connections.listen,
    load: () => ({
      inUse: pool.totalCount - pool.idleCount,
      idle: pool.idleCount,
      waiting: pool.waitingCount,
      newsLagMs: connections.newsLagMs(),
    }),
    isReady: () => Promise.race([answers(pool), setTimeout(3_000, false, { ref: false })]),
    close: () => {
      closing ??= Promise.allSettled(running).then(() => connections.close());
      return closing;
    },
  };
}

/** Applies the migrations that the database lacks. @returns their names. */
export async function migrateOver({ pool }: Connections): Promise<string[]> {
  const client = await pool.connect().catch((error: unknown) => {
    throw new WrongSettingError('DATABASE_URL', `no connection to the database: ${reasonOf(error)}`, {
      cause: error,
    });
  });
  try {
    return await migrate(client);
  } finally {
    client.release();
  }
}

/** A name that stands for several addresses fails with an error for each, and no words of its own. */
function reasonOf(error: unknown): string {
  if (error instanceof AggregateError) return reasonOf(error.errors[0]);
  return error instanceof Error ? error.message : String(error);
}

type Role = 'halfsplit_request' | 'halfsplit_lookup' | 'halfsplit_provision';

/** Assumed: longer than any request's work should take, short enough that a stuck one gives its locks back. */
const transactionMs = 30_000;

/**
 * All of it ends with the transaction. The time zone is what Prisma's driver adapter takes for granted, the time limits free
 * locks that a vanished client holds (PGlite has no clients that vanish, and no timers).
 */
function settingsOf(
  role: Role,
  { tenant, kind }: { tenant: Tenant | null; kind: Database['kind'] },
): Record<string, string> {
  const limitMs = kind === 'server' ? String(transactionMs) : '0';
  return {
    'app.org': tenant?.orgId ?? '',
    'app.member': tenant?.memberId ?? '',
    TimeZone: 'UTC',
    statement_timeout: limitMs,
    idle_in_transaction_session_timeout: limitMs,
    role,
  };
}

/** @throws BusyError when none is free in time */
async function connectionOf(pool: pg.Pool): Promise<pg.PoolClient> {
  const connecting = pool.connect();
  const waiting = new AbortController();
  const late = setTimeout(waitForConnectionMs, 'late' as const, { signal: waiting.signal }).catch(
    () => 'late' as const,
  );
  try {
    const first = await Promise.race([connecting, late]);
    if (first !== 'late') return first;
    connecting.then((client) => client.release()).catch(() => undefined);
    throw new BusyError('No connection to the database was free in time.');
  } finally {
    waiting.abort();
  }
}

const answers = (pool: Connections['pool']): Promise<boolean> =>
  pool.query('select 1').then(
    () => true,
    () => false,
  );
