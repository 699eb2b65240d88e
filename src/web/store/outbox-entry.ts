import type { TicketCommand } from '../../../shared/contract/commands.ts';
import type { FileEvidenceAbout, Reading } from '../../../shared/contract/evidence.ts';
import type { Problem } from '../../../shared/contract/problem.ts';

/**
 * `waiting` for its turn or a connection; `sending` now (after a kill: it may have arrived, and is sent again under
 * the same key); `refused` for what it says; `conflict`: it was right when it was written down, and something else
 * happened to the ticket in between.
 */
export type EntryState = 'waiting' | 'sending' | 'refused' | 'conflict';

/** Goes up whenever entries change their form. One without a version is of version 1, whose form is today's. */
export const outboxVersion = 2;
/** A newer version of this program wrote it, in another tab or before it was taken back: only that one may send it. */
const isOfNewerVersion = ({ version = 1 }: OutboxEntry): boolean => version > outboxVersion;

type Common = {
  version?: number;
  /** Given by the database; what belongs to a ticket is sent by it. */
  order: number;
  /** Of a write: its Idempotency-Key. */
  id: string;
  ticketId: string;
  state: EntryState;
  problem: Problem | null;
  /** It was sent and no answer came: the server may have it. */
  mayHaveArrived: boolean;
  /** When it was written down, by this device's clock; UTC, ISO 8601. */
  madeAt: string;
  /** The ticket's sequence that the member saw when they did it. */
  basedOn: number;
};
/** One step of a ticket. */
export type CommandEntry = Common & {
  kind: 'command';
  command: TicketCommand;
  /** Waits for the uploads before it: an escalation needs its evidence to be there. */
  afterUploads: boolean;
};
/** A reading without a file. */
export type ReadingEntry = Common & {
  kind: 'reading';
  reading: { tie: object; description: string; reading: Reading; takenAt: string };
};
/** A file for the evidence store. */
export type UploadEntry = Common & {
  kind: 'upload';
  about: FileEvidenceAbout;
  fileName: string;
  sizeBytes: number;
  sentBytes: number;
  /** Where the upload goes on, once it was begun (tus). */
  uploadUrl: string | null;
};
export type OutboxEntry = CommandEntry | ReadingEntry | UploadEntry;
type Unnumbered<Entry> = Entry extends OutboxEntry ? Omit<Entry, 'order'> : never;
export type NewEntry = Unnumbered<OutboxEntry>;

export const isStopped = ({ state }: OutboxEntry): boolean => state === 'refused' || state === 'conflict';
const isUpload = ({ kind }: OutboxEntry): boolean => kind === 'upload';

/**
 * The entries that may be sent now: of every ticket the first write, and the first upload whose writes before it are
 * through. A refused entry holds back everything of its ticket after it, since that was done in the belief it counted;
 * so does one of a newer version.
 *
 * @param entries in order
 */
export function nextToSend(entries: readonly OutboxEntry[]): {
  writes: (CommandEntry | ReadingEntry)[];
  uploads: UploadEntry[];
} {
  const writes: (CommandEntry | ReadingEntry)[] = [];
  const uploads: UploadEntry[] = [];
  for (const ticketId of new Set(entries.map((entry) => entry.ticketId))) {
    const ofTicket = entries.filter((entry) => entry.ticketId === ticketId);
    const stop = ofTicket.findIndex((entry) => isStopped(entry) || isOfNewerVersion(entry));
    const open = stop === -1 ? ofTicket : ofTicket.slice(0, stop);
    const write = open.find((entry) => entry.kind !== 'upload');
    const upload = open.find((entry) => entry.kind === 'upload');
    const before = (entry: OutboxEntry) => open.slice(0, open.indexOf(entry));
    if (write !== undefined && !(isHeldByUploads(write) && before(write).some(isUpload))) writes.push(write);
    if (upload !== undefined && before(upload).every(isUpload)) uploads.push(upload);
  }
  return { writes, uploads };
}

const isHeldByUploads = (entry: OutboxEntry): boolean => entry.kind === 'command' && entry.afterUploads;
