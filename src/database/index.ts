import { setTimeout } from 'node:timers/promises';
import { PrismaPg } from '@prisma/adapter-pg';
import { WrongSettingError } from '../wrong-setting.ts';
import { retriedWhenContended } from './contention.ts';
import { readTables, type TablesAtOneMoment } from './copy-tables.ts';
import { type Prisma, PrismaClient } from './generated/client.ts';
import { migrate } from './migrate.ts';
import type { Listen } from './notifications.ts';
import { type Connections, connectTo, type DatabasePlace, waitForConnectionMs } from './pools.ts';

export { ContendedError } from './contention.ts';
export type { TableCopy, TablesAtOneMoment } from './copy-tables.ts';
export { FolderInUseError } from './folder-lock.ts';
export { Prisma } from './generated/client.ts';
export { MigrationError } from './migrate.ts';
export type { DatabasePlace } from './pools.ts';
export { NotRestorableError, restoreTables } from './restore-tables.ts';
export { RolledBackError } from './silent-rollback.ts';
export { NewerDataError, UnreadableDataError } from './unreadable-data.ts';

/** Queries of one transaction. Its role and tenant are set; it is of no use once `work` has returned. */
export type TenantTransaction = Prisma.TransactionClient;

/** Whose transaction it is. Both are UUIDs; `memberId` is null before somebody has signed in. */
export type Tenant = { orgId: string; memberId: string | null };

/**
 * The one door to the database. Each method runs `work` in one transaction (read committed): committed when `work`
 * returns, rolled back when it throws. An error of the database fails the whole transaction: work that catches one and
 * goes on needs a savepoint around the statement, or the commit is refused with RolledBackError. A transaction that
 * gets no connection within 30 s or runs for over 30 s fails with Prisma's P2028. One that meets others in a deadlock is
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
  /** Hears what any process's transactions on this database tell with NOTIFY, from the moment they commit. */
  listen: Listen;
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
  const prisma = new PrismaClient({ adapter: new PrismaPg(pool) });
  const running = new Set<Promise<unknown>>();
  const inRole = <T>(role: Role, tenant: Tenant | null, work: (tx: TenantTransaction) => Promise<T>) => {
    const transaction = () =>
      prisma.$transaction(
        async (tx) => {
          await enterRole(tx, role, { tenant, kind });
          return work(tx);
        },
        { maxWait: waitForConnectionMs, timeout: transactionMs },
      );
    const result = retriedWhenContended(transaction);
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
  let closing: Promise<void> | undefined;
  return {
    kind,
    inTenant: (tenant, work) => inRole('halfsplit_request', tenant, work),
    lookUp: (work) => inRole('halfsplit_lookup', null, work),
    provision: (work) => inRole('halfsplit_provision', null, work),
    readTables: readAll,
    listen: connections.listen,
    isReady: () => Promise.race([answers(pool), setTimeout(3_000, false, { ref: false })]),
    close: () => {
      // Prisma's own disconnect would roll running transactions back.
      closing ??= Promise.allSettled(running)
        .then(() => prisma.$disconnect())
        .then(() => connections.close());
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
 * One statement; all of it ends with the transaction. The time zone is what Prisma's driver adapter takes for granted,
 * the time limits free locks that a vanished client holds (PGlite has no clients that vanish, and no timers).
 */
async function enterRole(
  tx: TenantTransaction,
  role: Role,
  { tenant, kind }: { tenant: Tenant | null; kind: Database['kind'] },
): Promise<void> {
  const limitMs = kind === 'server' ? String(transactionMs) : '0';
  await tx.$queryRaw`
    select set_config('app.org', ${tenant?.orgId ?? ''}, true), set_config('app.member', ${tenant?.memberId ?? ''}, true),
      set_config('TimeZone', 'UTC', true), set_config('statement_timeout', ${limitMs}, true),
      set_config('idle_in_transaction_session_timeout', ${limitMs}, true), set_config('role', ${role}, true)`;
}

const answers = (pool: Connections['pool']): Promise<boolean> =>
  pool.query('select 1').then(
    () => true,
    () => false,
  );
