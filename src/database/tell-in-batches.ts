import type pg from 'pg';

/** The channel that news are told on. */
export const newsChannel = 'halfsplit_news';
/** What is told in the place of news that may have been lost: whoever hears it reads again what they show. */
export const someLost = JSON.stringify({ kind: 'lost' });

/** Assumed: a person sees no difference, and what is written meanwhile is told together. */
const batchMs = 5;
/** Assumed: with more than this to tell, somebody who listens had better read everything again. */
const mostWaiting = 10_000;
/** Assumed: how long to wait for a database that could not be told. */
const retryMs = 1_000;

export type Teller = {
  tell(news: readonly string[]): void;
  /** For how long the oldest of what is not told yet has waited. */
  lagMs(): number;
  close(): Promise<void>;
};

/**
 * Tells what was committed with NOTIFY, one statement at a time with all that waits: within the transactions it would make
 * each commit wait for the others. What could not be told is told later. A process that ended before it had told
 * everything says so when it starts again.
 */
export function tellInBatches(pool: pg.Pool): Teller {
  let waiting: string[] = [];
  let since = 0;
  let timer: NodeJS.Timeout | null = null;
  let telling: Promise<void> = Promise.resolve();
  const tellAll = async (): Promise<void> => {
    timer = null;
    const batch = waiting.length > mostWaiting ? [someLost] : waiting;
    waiting = [];
    if (batch.length === 0) return;
    try {
      await pool.query(`select pg_notify('${newsChannel}', news) from unnest($1::text[]) as news`, [batch]);
    } catch {
      waiting = [...batch, ...waiting];
      plan(retryMs);
    }
  };
  const plan = (afterMs: number): void => {
    timer ??= setTimeout(() => {
      telling = telling.then(tellAll);
    }, afterMs);
  };
  return {
    tell: (news) => {
      if (news.length === 0) return;
      if (waiting.length === 0) since = performance.now();
      waiting.push(...news);
      plan(batchMs);
    },
    lagMs: () => (waiting.length === 0 ? 0 : performance.now() - since),
    close: async () => {
      if (timer !== null) clearTimeout(timer);
      await telling.then(tellAll);
      if (timer !== null) clearTimeout(timer);
    },
  };
}
