/** What a server does beside answering, until it is stopped. */
export type BackgroundJob = { stop(): Promise<void> };

/**
 * Does work now and again every so often, one time after the other. A time that fails is told, and the next one tries again.
 * `stop` waits for one that is under way, which is told by `isStopping`.
 */
export function repeatedly(
  work: (isStopping: () => boolean) => Promise<void>,
  { everyMs, onError }: { readonly everyMs: number; readonly onError: (error: unknown) => void },
): BackgroundJob {
  let isStopping = false;
  let running: Promise<void> = Promise.resolve();
  const look = (): void => {
    running = running.then(() => work(() => isStopping)).catch(onError);
  };
  look();
  const timer = setInterval(look, everyMs);
  timer.unref();
  return {
    stop: async () => {
      isStopping = true;
      clearInterval(timer);
      await running;
    },
  };
}
