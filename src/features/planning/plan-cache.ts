import { LRUCache } from 'lru-cache';
import { HungUpError } from '../../heavy-work/index.ts';

/** Assumed: some hundred plans of the largest chain, or thousands of usual ones; in characters of their JSON. */
const mostCharacters = 64_000_000;

/**
 * Plans by all that went into them, the ones asked for last. A plan that is being made is waited for by everybody who asks
 * for the same. Plans have no language: their sentences are put in when they leave.
 */
export class PlanCache<Plan extends object> {
  readonly #kept = new LRUCache<string, Plan>({
    maxSize: mostCharacters,
    sizeCalculation: (plan) => JSON.stringify(plan).length,
  });
  readonly #underWay = new Map<string, Promise<Plan>>();

  get(key: string): Plan | undefined {
    return this.#kept.get(key);
  }

  /** @throws what making it throws; where only the one who asked first hung up, it is made anew */
  async make(key: string, make: () => Promise<Plan>): Promise<Plan> {
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
