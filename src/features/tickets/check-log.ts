import { erasureOf } from '../../../shared/contract/erased-text.ts';
import type { LogCheck } from '../../../shared/contract/log-check.ts';
import { message } from '../../../shared/message/index.ts';
import { MACHINE_VERSION } from '../../../state-machines/index.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import {
  digestOf,
  hashedForm,
  hashOf,
  LogDoesNotReplayError,
  type LoggedEvent,
  loggedEventsOf,
  noPreviousHash,
  noTicket,
  type RowToCheck,
  replayLog,
  rowToCheck,
  type Tenancy,
  type TextOfEvent,
} from '../ticket-record/index.ts';
import { jsonDifferences } from './json-differences.ts';

/** Assumed: enough to see what kind of damage it is. */
const mostDifferences = 100;

export async function checkLog(context: Context, ticketId: string): Promise<Outcome<LogCheck>> {
  const check = await logCheckOf(context, ticketId);
  return check === null ? noTicket : found(check);
}

/**
 * Reads a ticket's log as an auditor would: the numbers without a gap, every hash anew, the record by replay. Null where
 * there is no such ticket.
 *
 * @throws NewerDataError
 */
export async function logCheckOf(tenancy: Tenancy, ticketId: string): Promise<LogCheck | null> {
  const row = await rowToCheck(tenancy, ticketId);
  if (row === null) return null;
  const log = await loggedEventsOf(tenancy, ticketId);
  const numbers = checkNumbers(log, row);
  const hashes = checkHashes(log);
  const texts = checkTexts(log);
  const snapshot = checkSnapshot(log, row);
  return {
    isClean:
      numbers.firstWrong === null &&
      hashes.broken.length === 0 &&
      texts.wrong.length === 0 &&
      isSnapshotRight(snapshot),
    events: log.length,
    versions: {
      program: MACHINE_VERSION,
      snapshot: row.machineVersion,
      events: versionsIn(log),
    },
    numbers,
    hashes,
    texts,
    snapshot,
  };
}

type Log = readonly LoggedEvent[];

function versionsIn(log: Log): LogCheck['versions']['events'] {
  const counted = new Map<number, number>();
  for (const { machineVersion } of log) counted.set(machineVersion, (counted.get(machineVersion) ?? 0) + 1);
  return [...counted].map(([version, events]) => ({ version, events }));
}

function checkNumbers(log: Log, { sequence: last }: RowToCheck): LogCheck['numbers'] {
  const expected = Array.from({ length: Math.max(last, log.length) }, (_, index) =>
    index < last ? index + 1 : null,
  );
  const pairs = expected.map((number, index) => ({ expected: number, found: log[index]?.sequence ?? null }));
  return {
    compared: message('logNumbersCompared', { events: log.length }),
    firstWrong: pairs.find((pair) => pair.expected !== pair.found) ?? null,
  };
}

function checkHashes(log: Log): LogCheck['hashes'] {
  const broken = log.flatMap((event, index): LogCheck['hashes']['broken'] => {
    const { sequence } = event;
    const follows = event.previousHash === (log[index - 1]?.hash ?? noPreviousHash);
    return [
      ...(hashOf(hashedForm(event)) === event.hash ? [] : [{ sequence, because: 'content' as const }]),
      ...(follows ? [] : [{ sequence, because: 'predecessor' as const }]),
    ];
  });
  return { compared: message('logHashesCompared', { events: log.length }), broken };
}

function checkTexts(log: Log): LogCheck['texts'] {
  const texts = log.flatMap(({ sequence, texts }) => texts.map((text) => ({ ...text, sequence })));
  const erased = texts.filter(({ text }) => erasureOf(text) !== null);
  const wrong = texts.flatMap((text): LogCheck['texts']['wrong'] => {
    const because = whatIsWrongWith(text);
    return because === null ? [] : [{ sequence: text.sequence, pointer: text.pointer, because }];
  });
  const compared = message('logTextsCompared', { texts: texts.length, erased: erased.length });
  return { compared, erased: erased.length, wrong };
}

function whatIsWrongWith({ salt, text, sha256 }: TextOfEvent): 'content' | 'missing' | null {
  if (salt !== null) return digestOf(salt, text) === sha256 ? null : 'content';
  return erasureOf(text) === null ? 'missing' : null;
}

function checkSnapshot(log: Log, row: RowToCheck): LogCheck['snapshot'] {
  const events = log.length;
  const replayed = replayedOrWhyNot(log);
  if (replayed instanceof LogDoesNotReplayError) {
    const because = replayed.message;
    return { kind: 'doesNotReplay', compared: message('logDoesNotReplay', { events }), because };
  }
  if (row.snapshot === null) {
    const versions = { snapshot: row.machineVersion, program: MACHINE_VERSION };
    return { kind: 'notInUse', compared: message('snapshotNotInUse', { events, ...versions }) };
  }
  const differences = jsonDifferences(row.snapshot, asStored(replayed));
  return {
    kind: 'compared',
    compared: message('snapshotCompared', { events, version: row.machineVersion }),
    differences: differences.slice(0, mostDifferences),
    more: Math.max(0, differences.length - mostDifferences),
  };
}

export const isSnapshotRight = (snapshot: LogCheck['snapshot']): boolean =>
  snapshot.kind === 'notInUse' || (snapshot.kind === 'compared' && snapshot.differences.length === 0);

/** Through JSON, as a column of the database would give it back. */
const asStored = (snapshot: unknown): unknown => JSON.parse(JSON.stringify(snapshot));

/** A log that was tampered with may not replay at all; that is a finding, not a fault of ours. */
function replayedOrWhyNot(log: Log): unknown {
  try {
    return replayLog(log);
  } catch (error) {
    if (error instanceof LogDoesNotReplayError) return error;
    throw error;
  }
}
