import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Piscina } from 'piscina';
import { programFolder } from '../program-folder.ts';
import type { Order } from './task.ts';

/** Does an order, and gives its output as JSON; stopped where the signal is aborted. */
export type Executor = {
  execute(order: Order, signal: AbortSignal): Promise<string>;
  close(): Promise<void>;
};

/** What was asked for takes more memory than one work may. */
export class TooMuchMemoryError extends Error {
  override readonly name = 'TooMuchMemoryError';
}

/** Assumed: some times what a plan of the largest chain takes. */
const usualMemoryMiB = 512;
/** Assumed: how long a thread without work is kept, since starting one takes a second. */
const idleMs = 300_000;
/** Behind the event loop, so that it gets a processor at once (nice(2)). */
const niceIncrement = 10;

const isFromSources = import.meta.url.endsWith('.ts');

/** The worker of all tasks: as `npm run build` leaves it, or its source. */
const worker = pathToFileURL(
  join(programFolder, isFromSources ? 'src/heavy-worker.ts' : 'dist/server/heavy-worker.js'),
);

/** What a thread needs to load sources: the loader that this program itself runs by. */
const loader = (): string[] => [
  '--import',
  pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href,
];

/** Threads that start with the first work; one that is stopped is replaced by the next. */
export function workerThreads(
  threads: number,
  { file = worker, memoryMiB = usualMemoryMiB }: { file?: URL; memoryMiB?: number } = {},
): Executor {
  const pool = new Piscina({
    filename: file.href,
    ...(isFromSources ? { execArgv: loader() } : {}),
    name: 'run',
    minThreads: 0,
    maxThreads: threads,
    idleTimeout: idleMs,
    resourceLimits: { maxOldGenerationSizeMb: memoryMiB },
    niceIncrement,
  });
  pool.on('error', () => undefined);
  return {
    execute: async (order, signal) => {
      try {
        return await pool.run(order, { signal });
      } catch (error) {
        if (isOutOfMemory(error))
          throw new TooMuchMemoryError(`${order.name} took more than ${memoryMiB} MiB.`, { cause: error });
        throw error;
      }
    },
    close: () => pool.destroy(),
  };
}

const isOutOfMemory = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY';
