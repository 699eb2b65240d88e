import { type DBSchema, deleteDB, type IDBPDatabase, openDB } from 'idb';
import { session } from '../api/session.ts';
import type { KeptDocument } from './kept-document.ts';
import type { OutboxEntry } from './outbox-entry.ts';
import { dropAllTyped } from './typed-last.ts';

export interface MemberSchema extends DBSchema {
  documents: { key: string; value: KeptDocument };
  /** `order` counts up over all of a member's entries; what belongs to one ticket is sent by it. */
  outbox: { key: number; value: OutboxEntry };
  /** Files that wait for their upload, by the id of their entry. */
  files: { key: string; value: Blob };
  /** What screens keep over a reload, such as a form half filled in. */
  drafts: { key: string; value: unknown };
}
export type MemberDatabase = IDBPDatabase<MemberSchema>;

const nameOf = (memberId: string): string => `halfsplit-member-${memberId}`;
let opened: { memberId: string; database: Promise<MemberDatabase> } | null = null;

/** The database of whoever is signed in on this device: nobody else's data is ever in it. Null when nobody is. */
export async function memberDatabase(): Promise<MemberDatabase | null> {
  const memberId = session.peek()?.member.id;
  if (memberId === undefined) return null;
  if (opened?.memberId !== memberId) {
    const before = opened;
    opened = { memberId, database: openFor(memberId) };
    if (before !== null) (await before.database).close();
  }
  return opened.database;
}

const openFor = (memberId: string): Promise<MemberDatabase> =>
  openDB<MemberSchema>(nameOf(memberId), 1, {
    upgrade: (database) => {
      database.createObjectStore('documents', { keyPath: 'path' });
      database.createObjectStore('outbox', { keyPath: 'order', autoIncrement: true });
      database.createObjectStore('files');
      database.createObjectStore('drafts');
    },
    blocking: (_current, _blocked, event) => {
      (event.target as IDBDatabase).close();
      opened = null;
    },
  });

/** Takes everything that a member has on this device away, what waits in the outbox too. */
export async function forgetMember(memberId: string): Promise<void> {
  dropAllTyped(memberId);
  if (opened?.memberId === memberId) {
    (await opened.database).close();
    opened = null;
  }
  await deleteDB(nameOf(memberId));
}

/** Asks the browser to keep this site's data when space gets short. */
export const askToKeepData = async (): Promise<void> => {
  await navigator.storage?.persist?.().catch(() => false);
};
