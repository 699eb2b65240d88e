/** Whose work it is: turns go round among organisations, and within each among its members. */
export type Asker = { readonly orgId: string; readonly memberId: string };
export type Asked = Asker & {
  /** Aborted when nobody waits for the result any more. */
  readonly signal?: AbortSignal | undefined;
};

export type QueueLimits = {
  /** How many are worked on at a time. */
  readonly atOnce: number;
  readonly mostWaiting: number;
  /** From the asking to the result, in ms. */
  readonly deadlineMs: number;
};

/** The queue is too long, or was until the deadline. */
export class BusyError extends Error {
  override readonly name = 'BusyError';
  /** When it is worth asking again. */
  readonly retryAfterS: number;
  constructor(retryAfterS: number) {
    super('More is asked for than can be done now.');
    this.retryAfterS = retryAfterS;
  }
}

/** Whoever asked hung up. */
export class HungUpError extends Error {
  override readonly name = 'HungUpError';
}

type Waiting = Asker & { begin(): void; refuse(error: Error): void };

/** Assumed, until work was measured. */
const firstGuessMs = 500;
/** Assumed: how much the newest measurement counts. */
const newestCounts = 0.2;

/**
 * Lets a few works run at a time, in turn by organisation and then by member. Where too many wait, the newest of whoever
 * has most waiting is turned away, so that nobody can fill the queue against the others.
 */
export class FairQueue {
  readonly #limits: QueueLimits;
  /** By organisation and member, each in the order of their turns. */
  readonly #waiting = new Map<string, Map<string, Waiting[]>>();
  #count = 0;
  #running = 0;
  #usualMs = firstGuessMs;

  constructor(limits: QueueLimits) {
    this.#limits = limits;
  }

  /** How much is asked for and not done yet. */
  get length(): number {
    return this.#count + this.#running;
  }

  /**
   * Runs work when its turn comes. Its signal is aborted at the deadline and when the asker hangs up; work that can't be
   * stopped keeps its place until it ends.
   * @throws BusyError where the queue is too long, or the result not there by the deadline
   * @throws HungUpError where the asker's signal was aborted
   */
  run<Result>(
    { orgId, memberId, signal }: Asked,
    work: (signal: AbortSignal) => Promise<Result>,
  ): Promise<Result> {
    return new Promise((resolve, reject) => {
      const stop = new AbortController();
      const end = (error: Error): void => {
        settled();
        stop.abort();
        reject(error);
      };
      const waiting: Waiting = {
        orgId,
        memberId,
        refuse: end,
        begin: () => {
          this.#work(() => work(stop.signal)).then(
            (result) => {
              settled();
              resolve(result);
            },
            (error: unknown) => {
              settled();
              reject(error);
            },
          );
        },
      };
      const late = setTimeout(() => this.#giveUp(waiting, this.#busy()), this.#limits.deadlineMs);
      const hungUp = (): void => this.#giveUp(waiting, new HungUpError('The caller hung up.'));
      const settled = (): void => {
        clearTimeout(late);
        signal?.removeEventListener('abort', hungUp);
      };
      if (signal?.aborted) return hungUp();
      signal?.addEventListener('abort', hungUp, { once: true });
      this.#add(waiting);
      if (this.#count > this.#limits.mostWaiting) this.#turnOneAway();
      this.#next();
    });
  }

  #busy(): BusyError {
    const untilFreeMs = (this.#usualMs * this.length) / this.#limits.atOnce;
    return new BusyError(Math.max(1, Math.ceil(untilFreeMs / 1000)));
  }

  #giveUp(waiting: Waiting, error: Error): void {
    this.#remove(waiting);
    waiting.refuse(error);
  }

  #add(waiting: Waiting): void {
    const members = this.#waiting.get(waiting.orgId) ?? new Map<string, Waiting[]>();
    this.#waiting.set(waiting.orgId, members);
    members.set(waiting.memberId, [...(members.get(waiting.memberId) ?? []), waiting]);
    this.#count += 1;
  }

  /** Takes it out wherever it stands; nothing where it runs already. */
  #remove(waiting: Waiting): void {
    const members = this.#waiting.get(waiting.orgId);
    const own = members?.get(waiting.memberId);
    if (members === undefined || own === undefined || !own.includes(waiting)) return;
    const left = own.filter((each) => each !== waiting);
    if (left.length > 0) members.set(waiting.memberId, left);
    else members.delete(waiting.memberId);
    if (members.size === 0) this.#waiting.delete(waiting.orgId);
    this.#count -= 1;
  }

  #turnOneAway(): void {
    const most = longest([...this.#waiting.values()], (members) => countOf(members));
    const own = longest([...(most?.values() ?? [])], (each) => each.length);
    const newest = own?.at(-1);
    if (newest !== undefined) this.#giveUp(newest, this.#busy());
  }

  #next(): void {
    while (this.#running < this.#limits.atOnce) {
      const [org] = this.#waiting;
      if (org === undefined) return;
      const [orgId, members] = org;
      const [[memberId, [first]] = ['', []]] = members;
      if (first === undefined) throw new Error('a member without work stands in the queue');
      this.#remove(first);
      // Whoever had their turn stands behind the others.
      moveToEnd(members, memberId);
      moveToEnd(this.#waiting, orgId);
      first.begin();
    }
  }

  async #work<Result>(work: () => Promise<Result>): Promise<Result> {
    this.#running += 1;
    const begun = performance.now();
    try {
      return await work();
    } finally {
      this.#running -= 1;
      this.#usualMs += newestCounts * (performance.now() - begun - this.#usualMs);
      this.#next();
    }
  }
}

const countOf = (members: ReadonlyMap<string, readonly unknown[]>): number =>
  [...members.values()].reduce((sum, own) => sum + own.length, 0);

const longest = <Item>(items: readonly Item[], lengthOf: (item: Item) => number): Item | undefined =>
  items.toSorted((one, other) => lengthOf(other) - lengthOf(one))[0];

function moveToEnd<Value>(map: Map<string, Value>, key: string): void {
  const value = map.get(key);
  if (value === undefined) return;
  map.delete(key);
  map.set(key, value);
}
