import { availableParallelism } from 'node:os';
import type { QueueLimits } from './fair-queue.ts';

/** A processor is left to the event loop where there is more than one. */
const spare = Math.max(1, availableParallelism() - 1);

/**
 * The queues, each with what it allows; all of it assumed. What takes long stands apart from what somebody waits for with
 * a phone in the hand, and a sign-in waits for neither.
 */
export const lanes = {
  /** Plans, and the texts of packets: up to some hundred milliseconds each. */
  plans: { atOnce: spare, mostWaiting: 64, deadlineMs: 20_000 },
  /** Logs, of any length that an upload may have. */
  logs: { atOnce: 1, mostWaiting: 16, deadlineMs: 300_000 },
  /** One photo at a time: a decoded one can take hundreds of megabytes. */
  photos: { atOnce: 1, mostWaiting: 16, deadlineMs: 180_000 },
  /** Password hashes; each takes 19 MiB and one of libuv's four threads, which files are read on, too. */
  passwords: { atOnce: Math.min(2, spare), mostWaiting: 128, deadlineMs: 20_000 },
} as const satisfies Record<string, QueueLimits>;

export type Lane = keyof typeof lanes;
