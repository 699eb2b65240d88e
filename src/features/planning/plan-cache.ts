import { LRUCache } from 'lru-cache';
import { HungUpError } from '../../heavy-work/index.ts';
import type { SpokenReply } from '../../replies/spoken.ts';

/** Assumed: some hundred plans of the largest chain, or thousands of usual ones; in characters of their JSON. */
const mostCharacters = 64_000_000;

/**
 * Plans by all that went into them, the ones asked for last. A plan that is being made is waited for by everybody who asks
 * for the same.
 */
export class PlanCache {
  readonly #kept = new LRUCache<string, SpokenReply>({
    maxSize: mostCharacters,
    sizeCalculation: ({ text }) => text.length,
  });
  readonly #underWay = new Map<string, Promise<SpokenReply>>();

  get(key: string): SpokenReply | undefined {
    return this.#kept.get(key);
  }

  /** @throws what making it throws; where only the one who asked first hung up, it is made anew */
  async make(key: string, make: () => Promise<SpokenReply>): Promise<SpokenReply> {
    const others = this.#underWay.get(key);
    if (others !== undefined) {
      const made = await others.catch((error: unknown) => {
        if (error instanceof HungUpError) return null;
        throw error;
      });
      return made ?? this.make(key, make);
    }
    const own = make().finally(() => this.#underWay.delete(key));
    this.#underWay.set(key, own);
    const plan = await own;
    this.#kept.set(key, plan);
    return plan;
  }
}
