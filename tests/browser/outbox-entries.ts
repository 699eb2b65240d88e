import type { Page } from 'playwright-core';

/** An entry as store/outbox.ts writes it, for tests of what happens to it later. */
export const commandEntry = (ticketId: string, command: object): object => ({
  ...common(ticketId),
  kind: 'command',
  afterUploads: false,
  command: { ...command, happenedAt: new Date().toISOString() },
});

export const uploadEntry = (ticketId: string, fileName: string, sizeBytes: number): object => ({
  ...common(ticketId),
  kind: 'upload',
  about: {
    kind: 'log',
    tie: { deviceId: 'processor', portId: null, linkId: null, watchId: null, changeId: null, shows: null },
    description: fileName,
    span: null,
    clock: {},
    takenAt: new Date().toISOString(),
  },
  fileName,
  sizeBytes,
  sentBytes: 0,
  uploadUrl: null,
});

const common = (ticketId: string) => ({
  id: crypto.randomUUID(),
  ticketId,
  basedOn: 1,
  state: 'waiting',
  problem: null,
  mayHaveArrived: false,
  madeAt: new Date().toISOString(),
});

/**
 * Puts an entry where the screens put theirs: the outbox in the device's own store. With `fileText`, a file of that
 * text beside it. The page sends it when it next has a reason to, such as a connection that comes back.
 */
export async function putInOutbox(page: Page, entry: object, fileText: string | null = null): Promise<void> {
  await page.evaluate(
    async ({ entry, fileText }) => {
      const all = await indexedDB.databases();
      const name = all.map((one) => one.name ?? '').find((one) => one.startsWith('halfsplit-member-')) ?? '';
      const database = await new Promise<IDBDatabase>((resolve, reject) => {
        const opening = indexedDB.open(name);
        opening.onsuccess = () => resolve(opening.result);
        opening.onerror = () => reject(opening.error);
      });
      const transaction = database.transaction(['outbox', 'files'], 'readwrite');
      transaction.objectStore('outbox').add(entry);
      if (fileText !== null)
        transaction.objectStore('files').put(new Blob([fileText]), (entry as { id: string }).id);
      await new Promise((resolve) => {
        transaction.oncomplete = resolve;
      });
      database.close();
    },
    { entry, fileText },
  );
}
