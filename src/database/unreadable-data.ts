import type { UnreadKind } from '../../shared/contract/ticket.ts';

/**
 * Something stored that this program can't read. Thrown and not returned: nothing about the request is wrong, so no
 * reply may be kept under its key, and whoever reads the row has nothing better to do than to pass it on.
 */
export abstract class UnreadableDataError extends Error {
  abstract readonly kind: UnreadKind;
}

/** A newer version of this program wrote it, as happens while servers are replaced one by one. */
export class NewerDataError extends UnreadableDataError {
  override readonly name = 'NewerDataError';
  readonly kind = 'newer-data';
  readonly versions: { readonly found: number; readonly known: number };

  /** @param what was to be read, as an operator knows it; its version, and the highest that can be read here */
  constructor(what: string, versions: { readonly found: number; readonly known: number }) {
    super(
      `A newer server wrote ${what}: it is of version ${versions.found}, and this server reads up to ${versions.known}.`,
    );
    this.versions = versions;
  }
}
