/**
 * Loads once. What can't be had now (no connection, and never read before) is tried again by the next call.
 *
 * @returns resolves when it is there or can't be had; never rejects
 */
export function loadingOnce(load: () => Promise<void>): () => Promise<void> {
  let running: Promise<void> | null = null;
  return () => {
    running ??= load().catch(() => {
      running = null;
    });
    return running;
  };
}
