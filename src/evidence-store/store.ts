import type { Readable } from 'node:stream';

/** SHA-256 in lower-case hexadecimal and the size in bytes: what a file is known by. */
export type Content = { readonly sha256: string; readonly sizeBytes: number };

/** A whole file on local disk that is not yet under its content address. */
export type ReceivedFile = Content & { readonly path: string };

/** The source went on after `maxBytes`; nothing was kept of it. */
export type TooLarge = { readonly ok: false; readonly reason: 'tooLarge'; readonly maxBytes: number };
export type Received = { readonly ok: true; readonly file: ReceivedFile };

/** Both ends count, first byte is 0 (as in RFC 9110, section 14.1.2). */
export type ByteRange = { readonly start: number; readonly end: number };

export type StoredContent = { readonly orgId: string; readonly sha256: string };

/**
 * What became of a file since it was kept: its bytes have its hash still, others lie in their place (a disk, a restore or
 * somebody changed them), or there are none.
 */
export type Condition = 'whole' | 'damaged' | 'missing';

/**
 * Files by content, walled per organisation: the same content twice is one file, nothing is ever overwritten, and
 * a file is put under its address whole or not at all. `orgId` is a UUID and `sha256` 64 hexadecimal digits;
 * anything else throws, for no request may form them.
 */
export interface EvidenceStore {
  /** A local folder for files that others write, such as uploads that resume; see `inspect`. */
  readonly stagingFolder: string;
  /** Streams `source` to a temporary file, hashing on the way. The caller keeps or discards what comes back. */
  receive(source: Readable, limits: { readonly maxBytes: number }): Promise<Received | TooLarge>;
  /** Takes a finished file in the staging folder as received: hashes it by streaming and makes it durable. */
  inspect(path: string): Promise<ReceivedFile>;
  /**
   * Moves a received file under its content address, durably and without a copy, before it returns. What lies there
   * stays if it is whole; if it is damaged, this heals it.
   */
  keep(orgId: string, file: ReceivedFile): Promise<Content>;
  /** Removes a received file that is not wanted; a file that is gone already is no error. */
  discard(file: Pick<ReceivedFile, 'path'>): Promise<void>;
  /** `receive` and `keep` in one. */
  put(
    orgId: string,
    source: Readable,
    limits: { readonly maxBytes: number },
  ): Promise<(Content & { readonly ok: true }) | TooLarge>;
  /**
   * The bytes as they lie there: `check` says whether they are the right ones.
   * @throws when the store has no such content, which means that the database and the store disagree
   */
  get(orgId: string, sha256: string, range?: ByteRange): Promise<Readable>;
  /** Reads all of it to see whether its bytes are still those that its address names. */
  check(orgId: string, sha256: string): Promise<Condition>;
  /** Size in bytes, or null where there is no such content. */
  size(orgId: string, sha256: string): Promise<number | null>;
  has(orgId: string, sha256: string): Promise<boolean>;
  /** Everything that is kept, by organisation and hash, in no order that means anything. */
  contents(): AsyncIterable<StoredContent>;
  /**
   * Removes what a crash left half received. Files younger than `idleForS` seconds stay: another server on the
   * same folder may be writing them. An hour is longer than a request may take.
   */
  removeTemporary(idleForS?: number): Promise<void>;
}
