import { isEmpty, type TablesAtOneMoment, writeTables } from './copy-tables.ts';
import { migrate, migrationNames } from './migrate.ts';
import { connectTo, type DatabasePlace } from './pools.ts';

/** Nothing was restored; the message is a line that says why. */
export class NotRestorableError extends Error {
  override readonly name = 'NotRestorableError';
}

export type RestoredTables = TablesAtOneMoment & {
  /** Done once the database was found empty, before it has a row. */
  readonly beforeRows: () => Promise<void>;
};

/**
 * Puts all tables as they were copied into a database in which nobody has anything yet, and then brings it up to this
 * program's migrations. All rows come in or none.
 * @throws NotRestorableError, FolderInUseError, MigrationError
 */
export async function restoreTables(where: DatabasePlace, copy: RestoredTables): Promise<void> {
  const known = new Set(await migrationNames());
  const unknown = copy.migrations.filter((name) => !known.has(name));
  if (unknown.length > 0)
    throw new NotRestorableError(
      `The backup is of a newer program: here is no migration ${unknown.join(', ')}.`,
    );
  const connections = await connectTo(where);
  try {
    const client = await connections.pool.connect();
    try {
      if (!(await isEmpty(client)))
        throw new NotRestorableError('The database has rows in it; restore into an empty one.');
      await migrate(client, undefined, new Set(copy.migrations));
      await copy.beforeRows();
      await writeTables(client, copy.tables);
      await migrate(client);
    } finally {
      client.release();
    }
  } finally {
    await connections.close();
  }
}
