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

/** The files of logs: `explored` covers the machine step by step, `scenarios` were written by hand, `walks` by chance. */
export const frozenLogFiles = ['explored', 'scenarios', 'walks'] as const;
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
