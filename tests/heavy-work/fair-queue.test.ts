import { setTimeout } from 'node:timers/promises';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BusyError, FairQueue, HungUpError } from '../../src/heavy-work/fair-queue.ts';

const queueOf = (limits: Partial<ConstructorParameters<typeof FairQueue>[0]> = {}) =>
  new FairQueue({ atOnce: 1, mostWaiting: 100, deadlineMs: 60_000, ...limits });

/** A work that ends when it is told to. */
function work() {
  let done = (): void => undefined;
  const ended = new Promise<void>((resolve) => {
    done = resolve;
  });
  return { done: () => done(), run: () => ended };
}

describe('a fair queue', () => {
  it('lets organisations have turns, and members within them, whoever asked for more and earlier', async () => {
    const queue = queueOf();
    const order: string[] = [];
    const asks = ['a1', 'a1', 'a1', 'a2', 'b1', 'b1', 'c1'];
    await Promise.all(
      asks.map((asker, at) =>
        queue.run({ orgId: asker.slice(0, 1), memberId: asker }, async () => {
          order.push(`${asker}#${at}`);
        }),
      ),
    );
    expect(order).toEqual(['a1#0', 'a1#1', 'b1#4', 'c1#6', 'a2#3', 'b1#5', 'a1#2']);
  });

  it('turns away the newest of whoever has most waiting, so that others find room', async () => {
    const queue = queueOf({ mostWaiting: 4 });
    const first = work();
    const running = queue.run({ orgId: 'a', memberId: 'a1' }, first.run);
    const ends = ['a', 'a', 'a', 'a', 'b', 'b'].map((orgId) =>
      queue.run({ orgId, memberId: orgId }, async () => 'done').catch((error: unknown) => error),
    );
    first.done();
    await running;
    const results = await Promise.all(ends);
    expect(results.map((result) => (result instanceof BusyError ? 'busy' : result))).toEqual([
      'done',
      'done',
      'busy',
      'busy',
      'done',
      'done',
    ]);
    expect(results.filter((result) => result instanceof BusyError)).toSatisfy((busy: BusyError[]) =>
      busy.every(({ retryAfterS }) => retryAfterS >= 1),
    );
  });

  it('gives up at the deadline what waits and what runs, and tells the work so', async () => {
    const queue = queueOf({ deadlineMs: 30 });
    const told: boolean[] = [];
    const running = queue.run({ orgId: 'a', memberId: 'a' }, async (signal) => {
      await setTimeout(60);
      told.push(signal.aborted);
    });
    const waiting = queue.run({ orgId: 'b', memberId: 'b' }, async () => told.push(false));
    const ends = await Promise.allSettled([running, waiting]);
    expect(ends.map((end) => end.status === 'rejected' && end.reason instanceof BusyError)).toEqual([
      true,
      true,
    ]);
    await setTimeout(60);
    expect(told).toEqual([true]);
    expect(queue.length).toBe(0);
  });

  it('forgets what nobody waits for any more', async () => {
    const queue = queueOf();
    const first = work();
    const running = queue.run({ orgId: 'a', memberId: 'a' }, first.run);
    const hangUp = new AbortController();
    let begun = false;
    const waiting = queue.run({ orgId: 'b', memberId: 'b', signal: hangUp.signal }, async () => {
      begun = true;
    });
    hangUp.abort();
    await expect(waiting).rejects.toBeInstanceOf(HungUpError);
    first.done();
    await running;
    await expect(
      queue.run({ orgId: 'b', memberId: 'b', signal: AbortSignal.abort() }, first.run),
    ).rejects.toBeInstanceOf(HungUpError);
    expect([begun, queue.length]).toEqual([false, 0]);
  });

  it('does all that it takes, never more at once than it may, and goes on after work that fails', async () => {
    const asks = fc.array(fc.record({ orgId: fc.constantFrom('a', 'b', 'c'), fails: fc.boolean() }), {
      maxLength: 40,
    });
    await fc.assert(
      fc.asyncProperty(asks, fc.integer({ min: 1, max: 3 }), async (asked, atOnce) => {
        const queue = queueOf({ atOnce });
        let [running, most] = [0, 0];
        const ends = await Promise.allSettled(
          asked.map(({ orgId, fails }, at) =>
            queue.run({ orgId, memberId: `${at % 2}` }, async () => {
              running += 1;
              most = Math.max(most, running);
              await setTimeout(0);
              running -= 1;
              if (fails) throw new Error('failed');
            }),
          ),
        );
        expect(ends.map(({ status }) => status === 'rejected')).toEqual(asked.map(({ fails }) => fails));
        expect(most).toBeLessThanOrEqual(atOnce);
        expect([running, queue.length]).toEqual([0, 0]);
      }),
      { numRuns: 20 },
    );
  });
});
