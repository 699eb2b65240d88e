import { type Signal, signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Problem } from '../../../shared/contract/problem.ts';
import { read } from '../api/client.ts';
import type { DocumentPath } from '../api/paths.ts';
import { session } from '../api/session.ts';
import { onTabMessage, tellTabs } from './channel.ts';
import { asKept, type KeptDocument, keptAsToday } from './kept-document.ts';
import { memberDatabase } from './member-database.ts';

/**
 * A document as a screen sees it. `body` is what was read last, also without a connection; null when it never was.
 * `refused` where the server will not give it; `isOld` when something may have changed since it was read.
 */
export type DocumentState<Body> = {
  readonly body: Body | null;
  readonly etag: string | null;
  readonly readAt: string | null;
  readonly refused: Problem | null;
  readonly isLoading: boolean;
  readonly isOld: boolean;
};
/** Whether a document will not come of itself any more: it is here, or refused, or out of reach. */
export const isSettled = ({ body, refused, isLoading }: DocumentState<unknown>): boolean =>
  body !== null || refused !== null || !isLoading;

const nothingYet: DocumentState<never> = {
  body: null,
  etag: null,
  readAt: null,
  refused: null,
  isLoading: true,
  isOld: true,
};

type Held = {
  state: Signal<DocumentState<unknown>>;
  watchers: number;
  reading: Promise<void> | null;
  again: boolean;
  /** Reads in a row that got no answer. */
  failures: number;
};
const held = new Map<string, Held>();
let heldFor: string | null = null;

/** Runs before a document is read anew, so that a reply never overtakes what this device has yet to say. */
let beforeRead: (path: string) => Promise<boolean> = async () => true;
export function sendBeforeReading(flush: (path: string) => Promise<boolean>): void {
  beforeRead = flush;
}

function holdOf(path: string): Held {
  const memberId = session.peek()?.member.id ?? null;
  if (memberId !== heldFor) {
    held.clear();
    heldFor = memberId;
  }
  const known = held.get(path);
  if (known !== undefined) return known;
  const fresh: Held = { state: signal(nothingYet), watchers: 0, reading: null, again: false, failures: 0 };
  held.set(path, fresh);
  return fresh;
}

const change = (hold: Held, part: Partial<DocumentState<unknown>>): void => {
  hold.state.value = { ...hold.state.peek(), ...part };
};

async function keptAt(path: string): Promise<KeptDocument | null> {
  const kept = await (await memberDatabase())?.get('documents', path);
  return kept === undefined ? null : keptAsToday(kept);
}

async function takeKept(path: string, hold: Held): Promise<void> {
  const kept = await keptAt(path);
  if (kept === null) return;
  change(hold, { body: kept.body, etag: kept.etag, readAt: kept.readAt });
}

/** Reads a document from the server into the store; several calls at once are one. */
export function refresh(path: string): Promise<void> {
  const hold = holdOf(path);
  if (hold.reading !== null) {
    hold.again = true;
    return hold.reading;
  }
  hold.reading = readNow(path, hold).finally(() => {
    hold.reading = null;
    if (!hold.again) return;
    hold.again = false;
    void refresh(path);
  });
  return hold.reading;
}

async function readNow(path: string, hold: Held): Promise<void> {
  if (hold.state.peek().body === null) await takeKept(path, hold);
  change(hold, { isLoading: true });
  if (!(await beforeRead(path))) return change(hold, { isLoading: false });
  const answer = await read<unknown>(path as DocumentPath<unknown>, hold.state.peek().etag);
  const readAt = new Date().toISOString();
  if (answer.kind === 'ok') await keepDocument({ path, body: answer.body, etag: answer.etag, readAt });
  if (answer.kind === 'unchanged') change(hold, { readAt, isOld: false, refused: null });
  if (answer.kind === 'refused') change(hold, { refused: answer.problem, isOld: false });
  change(hold, { isLoading: false });
  if (answer.kind === 'unreachable') tryLater(path, hold, answer.retryAfterS);
  else hold.failures = 0;
}

/** Seconds until a read without an answer is tried again; assumed. */
const waitS = [2, 5, 15, 30] as const;

/**
 * News comes once: a document on a screen whose read then got no answer would stay old. Without a connection nothing
 * is tried; when there is one again everything is read again.
 */
function tryLater(path: string, hold: Held, retryAfterS: number | null): void {
  const seconds = retryAfterS ?? waitS[Math.min(hold.failures, waitS.length - 1)] ?? 30;
  hold.failures += 1;
  setTimeout(() => {
    const isWanted = held.get(path) === hold && hold.watchers > 0 && hold.state.peek().isOld;
    if (isWanted && navigator.onLine) void refresh(path);
  }, seconds * 1000);
}

const sequenceOf = (body: unknown): number | null =>
  typeof body === 'object' && body !== null && 'sequence' in body && typeof body.sequence === 'number'
    ? body.sequence
    : null;

/** Whether a document that the server gave is not older than the one that is here. */
export function isNewest(document: KeptDocument): boolean {
  const [here, given] = [sequenceOf(holdOf(document.path).state.peek().body), sequenceOf(document.body)];
  return here === null || given === null || here <= given;
}

/** Puts a document that the server gave into the store, unless a newer one is there already. */
export async function keepDocument(document: KeptDocument): Promise<void> {
  if (!isNewest(document)) return;
  showDocument(document);
  await (await memberDatabase())?.put('documents', asKept(document));
  tellDocument(document.path);
}

/** Shows a document that was put into this device's store already, unless a newer one is shown. */
export function showDocument(document: KeptDocument): void {
  if (isNewest(document)) change(holdOf(document.path), { ...document, refused: null, isOld: false });
}

/** Has the other tabs take a document out of this device's store. */
export const tellDocument = (path: string): void => {
  const memberId = session.peek()?.member.id;
  if (memberId !== undefined) tellTabs({ kind: 'document', memberId, path });
};
onTabMessage((message) => {
  if (message.kind !== 'document' || message.memberId !== session.peek()?.member.id) return;
  const hold = held.get(message.path);
  if (hold !== undefined) void takeKept(message.path, hold);
});

/** Says that documents may have changed: those on a screen are read again now, the others when they come onto one. */
export function markOld(isConcerned: (path: string) => boolean): void {
  for (const [path, hold] of held) {
    if (!isConcerned(path)) continue;
    change(hold, { isOld: true });
    if (hold.watchers > 0) void refresh(path);
  }
}

/**
 * The document at a path, live: at once what this device has, then what the server has, and again whenever that
 * changes. Null reads nothing, for a path that is not known yet.
 */
export function useDocument<Body>(path: DocumentPath<Body> | null): DocumentState<Body> {
  const hold = path === null ? null : holdOf(path);
  useEffect(() => {
    if (hold === null || path === null) return undefined;
    hold.watchers += 1;
    if (hold.state.peek().isOld) void refresh(path);
    return () => {
      hold.watchers -= 1;
    };
  }, [path, hold]);
  return (hold === null ? nothingYet : hold.state.value) as DocumentState<Body>;
}

/** Reads documents ahead, so that their screens work without a connection later. */
export const readAhead = async (wanted: readonly string[]): Promise<void> => {
  for (const path of wanted) await refresh(path);
};

/** Brings what this device has of documents into memory, so that their screens stand at once. */
export const bringIn = async (wanted: readonly string[]): Promise<void> => {
  for (const path of wanted) {
    const hold = holdOf(path);
    if (hold.state.peek().body === null) await takeKept(path, hold);
  }
};

/** What this device has of a document, without asking the server. */
export async function keptBody<Body>(path: DocumentPath<Body>): Promise<Body | null> {
  return ((await keptAt(path))?.body ?? null) as Body | null;
}
