/** A transaction was to be committed, but a statement in it had failed, so the database undid it all. */
export class RolledBackError extends Error {
  override readonly name = 'RolledBackError';
}
