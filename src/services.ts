import type { Config } from './config.ts';
import type { Database } from './database/index.ts';
import type { EvidenceStore } from './evidence-store/index.ts';
import type { HeavyWork } from './heavy-work/index.ts';

/** What features need of the outside world. Tests pass their own. */
export type Services = {
  readonly config: Config;
  readonly database: Database;
  readonly evidenceStore: EvidenceStore;
  readonly heavyWork: HeavyWork;
  readonly now: () => Date;
  /** Whether the process is about to end: what comes now had better go to another. */
  readonly isStopping: () => boolean;
  /** A random UUID. */
  readonly newId: () => string;
};

/** What a program on the command line has of it: nobody waits for a reply, and it ends by itself. */
export type CommandLineServices = Omit<Services, 'heavyWork' | 'isStopping'>;
