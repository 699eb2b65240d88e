import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import type { Problem } from '../../../shared/contract/problem.ts';
import { kindOfType } from '../../../shared/contract/problem-type.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import type { Answer } from '../api/answer.ts';
import { write } from '../api/client.ts';
import { paths } from '../api/paths.ts';
import { session, sessionState } from '../api/session.ts';
import { markOld, refresh, sendBeforeReading } from './documents.ts';
import { changeEntry, loadOutbox, onNewEntry, outbox, removeEntries } from './outbox.ts';
import {
  type CommandEntry,
  isStopped,
  nextToSend,
  type OutboxEntry,
  type ReadingEntry,
} from './outbox-entry.ts';

/** Seconds between tries without an answer; assumed. A connection that comes back is used at once. */
const waitS = [1, 2, 5, 10, 20, 30] as const;
let failures = 0;
let timer: ReturnType<typeof setTimeout> | undefined;

/** Sends what can be sent, after every start, entry and reconnection. */
export function startSender(): void {
  onNewEntry(() => void sendAll());
  sendBeforeReading(flushFor);
  addEventListener('online', () => void sendNow());
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') void sendNow();
  });
  void loadOutbox().then(() => sendAll());
}

/** Sends without waiting for the next try's time: there is reason to believe that the server can be reached again. */
export function sendNow(): Promise<void> {
  failures = 0;
  return sendAll();
}

/** One tab at a time sends, so that everything keeps its order. */
export async function sendAll(): Promise<void> {
  clearTimeout(timer);
  const memberId = session.peek()?.member.id;
  if (memberId === undefined || sessionState.peek().kind !== 'signedIn') return;
  await navigator.locks.request(`halfsplit-send-${memberId}`, sendWrites);
  void sendUploads(memberId);
}

async function sendWrites(): Promise<void> {
  for (;;) {
    const { writes } = nextToSend(await loadOutbox());
    if (writes.length === 0) return;
    for (const entry of writes) if (!(await sendWrite(entry))) return later();
  }
}

async function sendUploads(memberId: string): Promise<void> {
  if (nextToSend(outbox.peek()).uploads.length === 0) return;
  const { uploadEntry } = await import('./uploads.ts');
  await navigator.locks.request(`halfsplit-upload-${memberId}`, async () => {
    for (;;) {
      const [entry] = nextToSend(await loadOutbox()).uploads;
      if (entry === undefined) return;
      const result = await uploadEntry(entry);
      if (result.kind === 'unreachable') {
        await changeEntry(entry.order, { state: 'waiting' });
        // A link that breaks and lets a part through each time is used as much as it can be.
        if (result.gotFurther) failures = 0;
        return later();
      }
      if (result.kind === 'refused') await stop(entry, result.problem);
      else await removeEntries([entry]);
      failures = 0;
      markOld((path) => path.startsWith(addressOf(addresses.ticket, { id: entry.ticketId })));
    }
  });
  // An escalation may have waited for these.
  if (nextToSend(outbox.peek()).writes.length > 0) void sendAll();
}

function later(): void {
  const seconds = waitS[Math.min(failures, waitS.length - 1)] ?? 30;
  failures += 1;
  clearTimeout(timer);
  timer = setTimeout(() => void sendAll(), seconds * 1000);
}

/** @returns whether there was an answer */
async function sendWrite(entry: CommandEntry | ReadingEntry): Promise<boolean> {
  await changeEntry(entry.order, { state: 'sending', mayHaveArrived: true });
  const answer = await requestOf(entry);
  if (answer.kind === 'ok') {
    failures = 0;
    await confirmed(entry, answer);
    return true;
  }
  if (answer.kind === 'refused') {
    failures = 0;
    await stop(entry, answer.problem);
    return true;
  }
  await changeEntry(entry.order, { state: 'waiting' });
  return false;
}

const requestOf = (entry: CommandEntry | ReadingEntry): Promise<Answer<unknown>> =>
  entry.kind === 'command'
    ? write('POST', addressOf(addresses.commands, { id: entry.ticketId }), {
        body: entry.command,
        key: entry.id,
      })
    : write('POST', addressOf(addresses.readings, { id: entry.ticketId }), {
        body: entry.reading,
        key: entry.id,
      });

async function confirmed(
  entry: CommandEntry | ReadingEntry,
  { body, etag, replayed }: Extract<Answer<unknown>, { kind: 'ok' }>,
): Promise<void> {
  const path = paths.ticket(entry.ticketId);
  // The reply to a repeated command is the ticket of then, not of now.
  const holding = { path, body: body as Ticket, etag, readAt: new Date().toISOString() };
  await removeEntries([entry], entry.kind === 'command' && !replayed ? holding : null);
  if (entry.kind === 'reading' || replayed) void refresh(path);
  markOld((other) => other.startsWith(`${path}/`));
}

/** It was allowed by what this device knew, so something else happened to the ticket: both sides are to be shown. */
const conflictStatuses: ReadonlySet<number> = new Set([404, 409, 412]);

async function stop(entry: OutboxEntry, problem: Problem): Promise<void> {
  const state =
    conflictStatuses.has(problem.status) || kindOfType(problem.type) === 'role-not-allowed'
      ? 'conflict'
      : 'refused';
  await changeEntry(entry.order, { state, problem });
  void refresh(paths.ticket(entry.ticketId));
}

/**
 * Sends what is waiting for a ticket before the ticket is read: otherwise a reply could already hold a step that the
 * device would then show twice. @returns false where a step may have arrived and is not confirmed yet
 */
async function flushFor(path: string): Promise<boolean> {
  const [, ticketId] = /^\/tickets\/([0-9a-f-]{36})$/.exec(path) ?? [];
  const waits = () =>
    outbox.peek().some((entry) => entry.ticketId === ticketId && entry.mayHaveArrived && !isStopped(entry));
  if (ticketId === undefined || !waits()) return true;
  await sendAll();
  return !waits();
}
