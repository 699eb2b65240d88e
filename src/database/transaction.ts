import { PrismaPg } from '@prisma/adapter-pg';
import pg from 'pg';
import { type Prisma, PrismaClient } from './generated/client.ts';
import { RolledBackError } from './rolled-back.ts';
import { type Sql, statementName } from './statements.ts';

/**
 * Queries of one transaction. Its role and tenant are set; it is of no use once `work` has returned. Statements that are
 * asked for side by side travel together, where the database is a server.
 */
export type TenantTransaction = Prisma.TransactionClient & {
  /** Runs a statement by itself, prepared. Its rows are as the driver reads them: moments are dates, JSON is read. */
  readonly sql: Sql;
};

/** A transaction got no connection in time, or took too long: nothing of it is left. */
export class BusyError extends Error {
  override readonly name = 'BusyError';
  readonly code = 'DATABASE_BUSY';
}

/** What a transaction is run with. */
export type Entry = {
  /** Settings of the transaction, by name. The values are ours or UUIDs, and are escaped all the same. */
  readonly settings: Readonly<Record<string, string>>;
  readonly limitMs: number;
};
/** What came of it, and the news that its triggers noted, each as JSON. */
export type Committed<T> = { readonly result: T; readonly news: readonly string[] };

/**
 * Runs `work` in a transaction of its own on a connection: committed when it returns, rolled back when it throws.
 * @throws BusyError when it ran for longer than its limit; RolledBackError when an error of the database was swallowed
 */
export async function runTransaction<T>(
  client: pg.PoolClient,
  { settings, limitMs }: Entry,
  work: (tx: TenantTransaction) => Promise<T>,
): Promise<Committed<T>> {
  const set = Object.entries(settings).map(
    ([name, value]) => `set_config(${pg.escapeLiteral(name)}, ${pg.escapeLiteral(value)}, true)`,
  );
  const door = doorTo(client);
  // One message; what work asks first may go along with it. Where this fails, all of that does.
  const begun = client.query(`begin; select ${set.join(', ')}`);
  begun.catch(() => undefined);
  door.isOpen = true;
  let timer: NodeJS.Timeout | undefined;
  const tooLong = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new BusyError('The transaction took too long.')), limitMs);
  });
  try {
    const result = await Promise.race([work(door.tx), tooLong]);
    await begun;
    return { result, news: await commit(client) };
  } catch (error) {
    door.isOpen = false;
    await client.query('rollback').catch(() => undefined);
    throw error;
  } finally {
    door.isOpen = false;
    clearTimeout(timer);
  }
}

/** The news are read in the message that commits. */
async function commit(client: pg.PoolClient): Promise<string[]> {
  const text = `select current_setting('app.news', true) as news; commit`;
  const answer = client.query(text) as unknown as Promise<[pg.QueryResult<{ news: string | null }>, unknown]>;
  const [{ rows }] = await answer.catch((error: unknown) => {
    if ((error as { code?: unknown }).code !== abortedTransaction) throw error;
    throw new RolledBackError(
      'The transaction was rolled back, since an error of the database in it was caught and not undone with a savepoint.',
    );
  });
  const noted = rows[0]?.news ?? '';
  return noted === '' ? [] : (JSON.parse(`[${noted}]`) as object[]).map((one) => JSON.stringify(one));
}

/** SQLSTATE in_failed_sql_transaction: a statement failed, and there is nothing to commit any more. */
const abortedTransaction = '25P02';

/** A connection's way for statements, which is shut while no transaction is open on it. */
type Door = { isOpen: boolean; readonly tx: TenantTransaction };
const doors = new WeakMap<pg.PoolClient, Door>();

/** Prisma's client over one connection, which is in a transaction already: it opens none of its own. */
function doorTo(client: pg.PoolClient): Door {
  const known = doors.get(client);
  if (known !== undefined) return known;
  const ask = client.query.bind(client) as (asked: object) => Promise<pg.QueryResult>;
  const throughDoor = async (asked: object): Promise<pg.QueryResult> => {
    if (!made.isOpen) throw new Error('The transaction is over.');
    return ask(asked);
  };
  const sql: Sql = async (parts, ...values) => {
    const text = parts.reduce((before, part, at) => `${before}$${at}${part}`);
    const { rows } = await throughDoor({ text, values, name: statementName(text) });
    return rows;
  };
  // Not prepared: a list's plan hangs on what it is filtered by, and one for every filter reads all rows where nothing fits.
  const adapter = new PrismaPg(new OneConnection(throughDoor));
  const made: Door = { isOpen: false, tx: Object.assign(new PrismaClient({ adapter }), { sql }) };
  doors.set(client, made);
  return made;
}

/** What Prisma takes for a pool, and is one connection within a transaction. */
class OneConnection extends pg.Pool {
  override readonly query: pg.Pool['query'];
  override readonly connect: pg.Pool['connect'];

  constructor(ask: (asked: object) => Promise<pg.QueryResult>) {
    super({ max: 1 });
    this.query = ask as pg.Pool['query'];
    // What it does in several statements it does in a transaction that is there already.
    const within = {
      query: (asked: { text: string }) =>
        /^(begin|commit|rollback)$/i.test(asked.text)
          ? Promise.resolve({ rows: [], fields: [], rowCount: 0 })
          : ask(asked),
      on: () => within,
      removeListener: () => within,
      release: () => undefined,
    };
    this.connect = (async () => within) as unknown as pg.Pool['connect'];
  }
}
