import { batch, computed, signal } from '@preact/signals';
import type { TicketCommand } from '../../../shared/contract/commands.ts';
import type { FileEvidenceAbout, Reading } from '../../../shared/contract/evidence.ts';
import { withIds } from '../../../state-machines/triage/command-ids.ts';
import { session } from '../api/session.ts';
import { onTabMessage, tellTabs } from './channel.ts';
import { isNewest, showDocument, tellDocument } from './documents.ts';
import { asKept, type KeptDocument } from './kept-document.ts';
import { memberDatabase } from './member-database.ts';
import type { CommandEntry, NewEntry, OutboxEntry, ReadingEntry, UploadEntry } from './outbox-entry.ts';
import { isStopped, outboxVersion } from './outbox-entry.ts';

/** What this member did on this device and the server has not confirmed yet, in order. */
export const outbox = signal<readonly OutboxEntry[]>([]);
/** Whether `outbox` was read from the device's store: before that nobody knows that nothing waits. */
export const isOutboxRead = signal(false);
export const outboxOf = (ticketId: string) =>
  computed(() => outbox.value.filter((entry) => entry.ticketId === ticketId));
export const stoppedEntries = computed(() => outbox.value.filter(isStopped));

/** Set by the sender: called when there is something to send. */
let kick: () => void = () => undefined;
export function onNewEntry(send: () => void): void {
  kick = send;
}

/** Reads the outbox from the device's store. */
export async function loadOutbox(): Promise<readonly OutboxEntry[]> {
  outbox.value = (await (await memberDatabase())?.getAll('outbox')) ?? [];
  isOutboxRead.value = true;
  return outbox.value;
}
onTabMessage((message) => {
  if (message.kind === 'outbox' && message.memberId === session.peek()?.member.id) void loadOutbox();
});

async function changed(): Promise<void> {
  await loadOutbox();
  const memberId = session.peek()?.member.id;
  if (memberId !== undefined) tellTabs({ kind: 'outbox', memberId });
}

async function add(entry: NewEntry, file: Blob | null = null): Promise<void> {
  const database = await memberDatabase();
  if (database === null) throw new Error('nobody is signed in');
  // Strict: the entry is on the disk before the screen says so, whatever happens to the phone next.
  const transaction = database.transaction(['outbox', 'files'], 'readwrite', { durability: 'strict' });
  // The key is the database's to give.
  await transaction.objectStore('outbox').add(entry as OutboxEntry);
  if (file !== null) await transaction.objectStore('files').put(file, entry.id);
  await transaction.done;
  await changed();
  kick();
}

const fresh = (ticketId: string, basedOn: number) => ({
  version: outboxVersion,
  id: crypto.randomUUID(),
  ticketId,
  basedOn,
  state: 'waiting' as const,
  problem: null,
  mayHaveArrived: false,
  madeAt: new Date().toISOString(),
});

/** Commands that need all evidence before them to be at the server. */
const needsEvidence: ReadonlySet<TicketCommand['type']> = new Set([
  'escalate',
  'resubmit',
  'answerRequest',
  'judgeRetest',
]);

/**
 * Writes a step of a ticket down, to be sent in order. Resolves once it is safe on this device; the ticket on the
 * screen shows it from then on (triage/). `happenedAt` and the ids that the phone may give are filled in.
 */
export async function putCommand(
  ticket: { id: string; sequence: number },
  command: TicketCommand,
): Promise<void> {
  const base = fresh(ticket.id, ticket.sequence);
  await add({
    ...base,
    kind: 'command',
    command: withIds({ ...command, happenedAt: command.happenedAt ?? base.madeAt }, () =>
      crypto.randomUUID(),
    ),
    afterUploads: needsEvidence.has(command.type),
  });
}

/** Writes a reading (firmware, settings, note) down, to be sent in order with the ticket's steps. */
export async function putReading(
  ticket: { id: string; sequence: number },
  reading: Reading,
  tie: Partial<FileEvidenceAbout['tie']> = {},
  description = '',
): Promise<void> {
  const base = fresh(ticket.id, ticket.sequence);
  const takenAt = base.madeAt;
  await add({ ...base, kind: 'reading', reading: { tie, description, reading, takenAt } });
}

/** Keeps a file on this device until it is uploaded, after the steps that were done before it. */
export async function putFile(
  ticket: { id: string; sequence: number },
  file: Blob,
  about: FileEvidenceAbout,
  fileName: string,
): Promise<void> {
  const base = fresh(ticket.id, ticket.sequence);
  await add(
    {
      ...base,
      kind: 'upload',
      about: { ...about, takenAt: about.takenAt ?? base.madeAt },
      fileName,
      sizeBytes: file.size,
      sentBytes: 0,
      uploadUrl: null,
    },
    file,
  );
}

export async function changeEntry(
  order: number,
  part: Partial<CommandEntry> | Partial<ReadingEntry> | Partial<UploadEntry>,
): Promise<void> {
  const database = await memberDatabase();
  const transaction = database?.transaction('outbox', 'readwrite');
  const entry = await transaction?.store.get(order);
  if (entry !== undefined) await transaction?.store.put({ ...entry, ...part } as OutboxEntry);
  await transaction?.done;
  await changed();
}

/**
 * Takes entries out: the server has them, or the member does not want them any more.
 * @param holding the ticket that holds them now. It comes into the store and onto the screen in the same moment, or a
 *   step would show twice in between, and after a kill there.
 */
export async function removeEntries(
  entries: readonly OutboxEntry[],
  holding: KeptDocument | null = null,
): Promise<void> {
  const database = await memberDatabase();
  if (database === null) return;
  const transaction = database.transaction(['outbox', 'files', 'documents'], 'readwrite', {
    durability: 'strict',
  });
  for (const { order, id } of entries) {
    await transaction.objectStore('outbox').delete(order);
    await transaction.objectStore('files').delete(id);
  }
  if (holding !== null && isNewest(holding)) await transaction.objectStore('documents').put(asKept(holding));
  await transaction.done;
  const gone = new Set(entries.map(({ order }) => order));
  batch(() => {
    outbox.value = outbox.peek().filter(({ order }) => !gone.has(order));
    if (holding !== null) showDocument(holding);
  });
  await changed();
  if (holding !== null) tellDocument(holding.path);
}

/**
 * Sends a stopped entry once more, as it is given here, and as a new request: under the old key the server would repeat
 * its refusal.
 */
export async function sendAgain(entry: OutboxEntry): Promise<void> {
  const id = crypto.randomUUID();
  const database = await memberDatabase();
  if (database === null) return;
  const transaction = database.transaction(['outbox', 'files'], 'readwrite', { durability: 'strict' });
  const file = await transaction.objectStore('files').get(entry.id);
  if (file !== undefined) {
    await transaction.objectStore('files').put(file, id);
    await transaction.objectStore('files').delete(entry.id);
  }
  const again = { ...entry, id, state: 'waiting' as const, problem: null, mayHaveArrived: false };
  await transaction
    .objectStore('outbox')
    .put(again.kind === 'upload' ? { ...again, uploadUrl: null, sentBytes: 0 } : again);
  await transaction.done;
  await changed();
  kick();
}

/** Gives a stopped entry up. With `andAfter`, all of its ticket that came after it too, since that was built on it. */
export async function giveUp(entry: OutboxEntry, andAfter: boolean): Promise<void> {
  const gone = outbox
    .peek()
    .filter(
      (other) =>
        other.order === entry.order ||
        (andAfter && other.ticketId === entry.ticketId && other.order > entry.order),
    );
  await removeEntries(gone);
  kick();
}
