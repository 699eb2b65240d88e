import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';

// What the machine's version 1 stored, as it stored it: see 1/README.md. The types are those of version 1 and stand
// here on their own, so that nothing which changes later changes what these files mean.

/** A snapshot of version 1. `context` is the triage record of that version. */
export type FrozenSnapshot = {
  readonly machineVersion: 1;
  readonly value: string | Readonly<Record<string, string>>;
  readonly context: Readonly<Record<string, unknown>>;
};

/** One event of a ticket's log as the database kept it; `hash` is over all the rest and the ticket's id. */
export type FrozenEvent = {
  readonly sequence: number;
  /** `open`, `assign`, `takeOver` and `update` are facts that the machine does not see; all others are for it. */
  readonly type: string;
  readonly payload: Readonly<Record<string, unknown>>;
  readonly actorId: string;
  /** UTC, ISO 8601, milliseconds. */
  readonly at: string;
  readonly machineVersion: 1;
  readonly previousHash: string;
  readonly hash: string;
};

/** What version 1 opened a ticket's triage with. */
export type FrozenOpening = {
  readonly ticketId: string;
  readonly settings: { readonly risk: number; readonly reopenDays: number };
  readonly symptom: {
    readonly kind: string;
    readonly perHour: number | null;
    readonly lastsS: number | null;
  };
  readonly whatChanged: readonly {
    readonly kind: string;
    readonly text: string;
    readonly when: string | null;
  }[];
  readonly at: string;
  readonly by: string;
};

/** A ticket's whole log, with the snapshot that version 1 held after every event of it. */
export type FrozenLog = {
  readonly name: string;
  readonly about: string;
  readonly opening: FrozenOpening;
  readonly events: readonly FrozenEvent[];
  /** One an event, in the same order. */
  readonly snapshots: readonly FrozenSnapshot[];
};

/**
 * The files of logs: `explored` covers the machine step by step, `scenarios` were written by hand, `walks` by chance;
 * the others were read out of the databases: `demo-case` and `server-tickets` are those of the database `database`.
 */
export const frozenLogFiles = [
  'explored',
  'scenarios',
  'walks',
  'demo-case',
  'demo-tickets',
  'server-tickets',
] as const;
export type FrozenLogFile = (typeof frozenLogFiles)[number];

const folder = new URL('./1/', import.meta.url);
const read = (path: string): Buffer => readFileSync(new URL(path, folder));
const unzipped = (path: string): string => gunzipSync(read(path)).toString('utf8');

/** As stored: the first snapshot whole, of each later one only those parts of the context that differ. */
type ShortSnapshot =
  | FrozenSnapshot
  | (Omit<FrozenSnapshot, 'context'> & { readonly changed: FrozenSnapshot['context'] });
type ShortLog = Omit<FrozenLog, 'snapshots'> & { readonly snapshots: readonly ShortSnapshot[] };

/** @returns every log of a file, each with its snapshots whole */
export function readFrozenLogs(file: FrozenLogFile): FrozenLog[] {
  return unzipped(`logs/${file}.jsonl.gz`)
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => withWholeSnapshots(JSON.parse(line) as ShortLog));
}

/** @returns the logs of all files */
export const readAllFrozenLogs = (): FrozenLog[] => frozenLogFiles.flatMap(readFrozenLogs);

function withWholeSnapshots(log: ShortLog): FrozenLog {
  let context: FrozenSnapshot['context'] = {};
  const snapshots = log.snapshots.map((short): FrozenSnapshot => {
    context = 'context' in short ? short.context : { ...context, ...short.changed };
    return { machineVersion: short.machineVersion, value: short.value, context };
  });
  return { ...log, snapshots };
}

/** One kind of step that version 1 took, and how often the logs hold it. */
export type FrozenStep = {
  readonly state: string;
  readonly type: string;
  /** The rule of version 1 that allowed it. */
  readonly rule: string;
  readonly next: string;
  readonly times: number;
};

/** What the logs hold of what version 1 could do, as it was counted when they were written. */
export type FrozenCoverage = {
  readonly machineVersion: 1;
  readonly logs: number;
  readonly events: number;
  /** State by name, and how many snapshots are in it. */
  readonly states: Readonly<Record<string, number>>;
  readonly eventTypes: Readonly<Record<string, number>>;
  readonly roles: Readonly<Record<string, number>>;
  /** Events with a `happenedAt` earlier than `at`. */
  readonly happenedEarlier: number;
  readonly steps: readonly FrozenStep[];
  /** What the machine of version 1 lists and its rules never accept there, with the reason. */
  readonly never: readonly {
    readonly state: string;
    readonly type: string;
    readonly rule: string;
    readonly because: string;
  }[];
  readonly judgements: readonly {
    readonly computed: string;
    /** Of the retest's watches: `time`, `trigger`, or both. */
    readonly mode: string;
    /** The verdict given by hand; `none` where the computed one stood. */
    readonly override: string;
    readonly times: number;
  }[];
  /** Kind and last status of a change, such as `reseat kept`. */
  readonly changeKinds: Readonly<Record<string, number>>;
  readonly escalationOutcomes: Readonly<Record<string, number>>;
  readonly setAside: Readonly<Record<string, number>>;
  readonly rounds: Readonly<Record<string, number>>;
  readonly devicesInChain: Readonly<Record<string, number>>;
  readonly notAttributable: number;
  readonly withWarnings: number;
  readonly withdrawnOccurrences: number;
};

/** @returns the table of what the logs hold */
export const readFrozenCoverage = (): FrozenCoverage =>
  JSON.parse(read('coverage.json').toString('utf8')) as FrozenCoverage;

/** The name of a snapshot's state, parts joined by dots. */
export const frozenStateName = ({ value }: Pick<FrozenSnapshot, 'value'>): string =>
  typeof value === 'string'
    ? value
    : Object.entries(value)
        .map(([outer, inner]) => `${outer}.${inner}`)
        .join();

/** A table's rows as the database of version 1 held them; tables come before those that refer to them. */
export type FrozenTable = {
  readonly name: string;
  /** `type` is PostgreSQL's own name for it, such as `jsonb` or `timestamptz`. */
  readonly columns: readonly { readonly name: string; readonly type: string; readonly nullable: boolean }[];
  /** In the order of the columns: JSON columns as they are, times in UTC, ISO 8601, all else as text. */
  readonly rows: readonly (readonly unknown[])[];
};
export type FrozenDatabase = { readonly tables: readonly FrozenTable[] };
/** The table in which the migrations that were applied are written down. */
const bookkeeping = '_prisma_migrations';

/** @returns every row of a database of version 1: after the demo's case and more, or as the demo plants it */
export const readFrozenDatabase = (name: 'database' | 'database-planted' = 'database'): FrozenDatabase =>
  JSON.parse(unzipped(`${name}.json.gz`)) as FrozenDatabase;

/**
 * @returns the rows of a table by column, as stored
 * @throws when the database had no such table
 */
export function frozenRows({ tables }: FrozenDatabase, name: string): Record<string, unknown>[] {
  const table = tables.find((each) => each.name === name);
  if (table === undefined) throw new Error(`version 1 had no table ${name}`);
  return table.rows.map((row) =>
    Object.fromEntries(table.columns.map((column, at) => [column.name, row[at]])),
  );
}

/** @returns the names of the migrations that the database of version 1 had, in order */
export const frozenMigrations = (database: FrozenDatabase): string[] =>
  frozenRows(database, bookkeeping)
    .map((row) => String(row.migration_name))
    .sort();

/**
 * The rows as statements to run one after the other, as the database's owner, on a database that has exactly the
 * migrations of version 1 and no rows. What says which migrations were applied is left out.
 */
export const frozenInserts = ({ tables }: FrozenDatabase): { sql: string; values: unknown[] }[] =>
  tables
    .filter(({ name }) => name !== bookkeeping)
    .flatMap(({ name, columns, rows }) => {
      const places = columns.map(({ type }, at) => `$${at + 1}::${type}`);
      const sql = `insert into "${name}" (${columns.map((column) => `"${column.name}"`)}) values (${places})`;
      return rows.map((row) => ({ sql, values: row.map((value, at) => written(value, columns[at]?.type)) }));
    });

const written = (value: unknown, type: string | undefined): unknown =>
  type === 'jsonb' && value !== null ? JSON.stringify(value) : value;

/** @returns the files of the evidence store that belongs to `database`, those of its packets too */
export const readFrozenEvidence = (): { orgId: string; sha256: string; bytes: Buffer }[] =>
  unzipped('evidence-store.jsonl.gz')
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as { orgId: string; sha256: string; base64: string })
    .map(({ orgId, sha256, base64 }) => ({ orgId, sha256, bytes: Buffer.from(base64, 'base64') }));

/** @returns the second packet of the demo's case, as version 1 sent it for download: a bag in a zip */
export const readFrozenPacket = (): Buffer => read('packet.zip');

/** A file as the phone keeps it; in the browser's store it is a Blob of that type. */
export type FrozenBlob = { readonly blob: { readonly type: string; readonly base64: string } };
/** A phone's IndexedDB, database by database. The values of the store `files` are `FrozenBlob`. */
export type FrozenPhone = {
  readonly frozenAt: string;
  /** Whose phone it is: a technician of the demo's firm, in the database `database`. */
  readonly memberId: string;
  /**
   * Tickets with something in the outbox. `visit`: in the middle of triage, much waits. `arrived`: the first command
   * was sent and the database has it, but no reply came. `conflicting`, `refused`: the outbox has stopped there.
   */
  readonly tickets: Readonly<Record<'visit' | 'arrived' | 'conflicting' | 'refused', string>>;
  /** What the phone of version 1 showed of `visit`, with all that waits: so many entries, that state and record. */
  readonly projected: {
    readonly ahead: number;
    readonly state: string;
    readonly triage: Readonly<Record<string, unknown>>;
  };
  /** `visit` and `arrived` as the server of version 1 gave them once it had got all that waits for them. */
  readonly afterSending: readonly Readonly<Record<string, unknown>>[];
  readonly databases: readonly {
    readonly name: string;
    readonly version: number;
    readonly stores: readonly {
      readonly name: string;
      readonly keyPath: string | null;
      readonly autoIncrement: boolean;
      readonly entries: readonly { readonly key: string | number; readonly value: unknown }[];
    }[];
  }[];
};

/** @returns what a phone of version 1 held */
export const readFrozenPhone = (): FrozenPhone => JSON.parse(unzipped('phone.json.gz')) as FrozenPhone;

/**
 * @returns the entries of a store of the member's own database, in order of their keys
 * @throws when there is no such store
 */
export function frozenStore(
  { databases, memberId }: FrozenPhone,
  store: 'documents' | 'outbox' | 'files' | 'drafts',
): readonly { readonly key: string | number; readonly value: unknown }[] {
  const own = databases.find(({ name }) => name.endsWith(memberId));
  const found = own?.stores.find(({ name }) => name === store);
  if (found === undefined) throw new Error(`the phone had no store ${store}`);
  return found.entries;
}
