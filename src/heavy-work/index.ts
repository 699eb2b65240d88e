import { type Asked, FairQueue } from './fair-queue.ts';
import { type Lane, lanes } from './lanes.ts';
import type { HeavyTask } from './task.ts';
import { type Executor, workerThreads } from './worker-pool.ts';

export { type Asked, BusyError, HungUpError } from './fair-queue.ts';
export { type HeavyTask, heavyTask, type Order, type ReplyTask, replyTask } from './task.ts';
export { type Executor, TooMuchMemoryError } from './worker-pool.ts';

/**
 * The door to everything that would keep the event loop, or a processor, from the others: in queues that are fair by
 * organisation and member, with a deadline. Both ways throw BusyError (503 with Retry-After) where the queue is too long
 * and HungUpError where the asker's signal was aborted.
 */
export type HeavyWork = {
  /**
   * Has a task done by a worker thread, which is ended at the deadline, or when the asker hangs up.
   * @throws TooMuchMemoryError; and whatever the task throws, with its message
   */
  compute<Input, Output>(task: HeavyTask<Input, Output>, input: Input, asked: Asked): Promise<Output>;
  /** Lets native work, which is off the event loop by itself, have its turn. */
  inTurn<Result>(lane: Lane, asked: Asked, work: (signal: AbortSignal) => Promise<Result>): Promise<Result>;
  /** How much is asked for and not done yet, by queue. */
  lengths(): Readonly<Record<Lane, number>>;
  close(): Promise<void>;
};

/** @param executorOf what does the tasks of a lane, of so many at a time; worker threads where nothing is said */
export function openHeavyWork(
  executorOf: (threads: number) => Executor = (threads) => workerThreads(threads),
): HeavyWork {
  const queues = new Map<Lane, FairQueue>();
  const executors = new Map<Lane, Executor>();
  const queueOf = (lane: Lane): FairQueue => {
    const queue = queues.get(lane) ?? new FairQueue(lanes[lane]);
    queues.set(lane, queue);
    return queue;
  };
  const executorIn = (lane: Lane): Executor => {
    const executor = executors.get(lane) ?? executorOf(lanes[lane].atOnce);
    executors.set(lane, executor);
    return executor;
  };
  return {
    compute: async (task, input, asked) => {
      const output = await queueOf(task.lane).run(asked, (signal) =>
        executorIn(task.lane).execute({ name: task.name, input: JSON.stringify(input) }, signal),
      );
      return JSON.parse(output);
    },
    inTurn: (lane, asked, work) => queueOf(lane).run(asked, work),
    lengths: () =>
      Object.fromEntries(
        Object.keys(lanes).map((lane) => [lane, queues.get(lane as Lane)?.length ?? 0]),
      ) as Record<Lane, number>,
    close: async () => {
      await Promise.all([...executors.values()].map((executor) => executor.close()));
    },
  };
}
