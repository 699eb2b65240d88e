/**
 * A newer version of this program wrote what was to be read, as happens while servers are replaced one by one. Thrown
 * and not returned: nothing about the request is wrong, so no reply may be kept under its key, and whoever reads the
 * row has nothing better to do than to pass it on.
 */
export class NewerDataError extends Error {
  override readonly name = 'NewerDataError';

  /** @param what was to be read, as an operator knows it; its version, and the highest that can be read here */
  constructor(what: string, versions: { readonly found: number; readonly known: number }) {
    super(
      `A newer server wrote ${what}: it is of version ${versions.found}, and this server reads up to ${versions.known}.`,
    );
  }
}
