import { useEffect, useState } from 'preact/hooks';
import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import { readFile } from '../api/client.ts';
import { memberDatabase } from './member-database.ts';

/** An address for a file in this page's memory, for as long as it is shown; null until it is there, or if it can't be. */
export function useBlobUrl(key: string | null, load: (key: string) => Promise<Blob | null>): string | null {
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    if (key === null) return undefined;
    let made: string | null = null;
    let isWanted = true;
    void load(key).then((blob) => {
      if (blob === null || !isWanted) return;
      made = URL.createObjectURL(blob);
      setUrl(made);
    });
    return () => {
      isWanted = false;
      setUrl(null);
      if (made !== null) URL.revokeObjectURL(made);
    };
  }, [key]);
  return url;
}

/** A thumbnail of evidence: from this device once it was read, so that it is there without a connection. */
export async function thumbnailOf(evidenceId: string): Promise<Blob | null> {
  const key = `thumbnail ${evidenceId}`;
  const database = await memberDatabase();
  const kept = await database?.get('drafts', key);
  if (kept instanceof Blob) return kept;
  const read = await readFile(addressOf(addresses.evidenceThumbnail, { id: evidenceId }));
  if (read !== null) await database?.put('drafts', read, key);
  return read;
}

/** A photo at its full size, from the server. */
export const contentOf = (evidenceId: string): Promise<Blob | null> =>
  readFile(addressOf(addresses.evidenceContent, { id: evidenceId }));

/** A file that waits for its upload on this device. */
export const waitingFile = async (entryId: string): Promise<Blob | null> =>
  (await (await memberDatabase())?.get('files', entryId)) ?? null;
