import type { KeyObject } from 'node:crypto';
import type { LogCheck } from '../../../shared/contract/log-check.ts';
import { UnreadableDataError } from '../../database/index.ts';
import { isSignedBy, signaturesOf, type Tenancy, ticketBatches } from '../ticket-record/index.ts';
import { isSnapshotRight, logCheckOf } from './check-log.ts';

/** Something that is not as this server wrote it, for whoever runs it. */
export type LogFault = { readonly ticket: number; readonly is: string };

/** Checks every log of a tenant, as one is checked that somebody asks for, and that this server signed its events. */
export async function* checkLogs(
  inTenant: <T>(work: (tenancy: Tenancy) => Promise<T>) => Promise<T>,
  key: KeyObject,
): AsyncGenerator<{ readonly tickets: number; readonly faults: LogFault[] }> {
  for await (const batch of ticketBatches(inTenant)) {
    const faults: LogFault[] = [];
    for (const { id, number } of batch)
      for (const is of await inTenant((tenancy) => faultsOf(tenancy, id, key)))
        faults.push({ ticket: number, is });
    yield { tickets: batch.length, faults };
  }
}

async function faultsOf(tenancy: Tenancy, ticketId: string, key: KeyObject): Promise<string[]> {
  try {
    const check = await logCheckOf(tenancy, ticketId);
    const signed = await signaturesOf(tenancy, ticketId);
    const nameOf = (sequence: number): string =>
      `event ${sequence} (${signed.find((event) => event.sequence === sequence)?.type})`;
    const faults = check === null ? [] : faultsIn(check, nameOf);
    for (const { sequence, hash, signature } of signed)
      if (signature === null) faults.push(`${nameOf(sequence)} is not signed`);
      else if (!isSignedBy(key, hash, signature))
        faults.push(`${nameOf(sequence)} was not signed by this server's key`);
    // What a log that was tampered with replays to says nothing more.
    const isElsewhere = check !== null && faults.length === 0 && !isSnapshotRight(check.snapshot);
    return isElsewhere ? ['the ticket does not stand where its log leads'] : faults;
  } catch (error) {
    if (error instanceof UnreadableDataError) return [error.message];
    throw error;
  }
}

const sayings = {
  content: 'is not what its hash was taken of',
  predecessor: 'does not follow the one before it',
};

function faultsIn({ numbers, hashes, texts }: LogCheck, nameOf: (sequence: number) => string): string[] {
  return [
    ...(numbers.firstWrong === null ? [] : [misplaced(numbers.firstWrong)]),
    ...hashes.broken.map(({ sequence, because }) => `${nameOf(sequence)} ${sayings[because]}`),
    ...texts.wrong.map(({ sequence, pointer, because }) =>
      because === 'content'
        ? `${nameOf(sequence)} has another text at ${pointer} than the one that was kept`
        : `${nameOf(sequence)} has lost its text at ${pointer}`,
    ),
  ];
}

function misplaced({ expected, found }: NonNullable<LogCheck['numbers']['firstWrong']>): string {
  if (found === null) return `event ${expected} is missing at the end of the log`;
  if (expected === null) return `event ${found} comes after the last one that the ticket knows of`;
  return `event ${found} stands where event ${expected} belongs`;
}
