/** A document of the API as it was read last. */
export type KeptDocument = {
  path: string;
  body: unknown;
  etag: string | null;
  /** By this device's clock, ISO 8601. */
  readAt: string;
  /** Of its form; version 1 wrote none. */
  version?: number;
};

/** Goes up whenever documents change their form. One without a version is of version 1. */
export const documentVersion = 2;
/** A document that the server gave, as it goes into the store. */
export const asKept = (given: KeptDocument): KeptDocument => ({ ...given, version: documentVersion });

/**
 * A document that this device has kept, in today's form; null where it is to be read anew: a newer version of this
 * program kept it, or an older one in a form that is not brought up to date. One that is has no ETag: it stands for as
 * long as there is no connection, and then the server is to send it whole.
 */
export async function keptAsToday(kept: KeptDocument): Promise<KeptDocument | null> {
  const { version = 1, path, body } = kept;
  if (version === documentVersion) return kept;
  if (version > documentVersion) return null;
  const { bodyAsToday } = await import('./older-documents.ts');
  const today = bodyAsToday(path, body);
  return today === null ? null : { ...kept, body: today, etag: null, version: documentVersion };
}
