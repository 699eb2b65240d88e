import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestApp, type TestApp, type TestReply } from '../support/test-app.ts';
import { databaseKinds } from '../support/test-database.ts';
import { bringToSubstitute, openTestTicket, send, temporaryCable } from '../support/tickets.ts';

/** What is aimed at, in ways to the database and back. */
const mostForCommand = 8;
const mostForPage = 3;

/** What goes out while an answer is awaited on that connection is no way of its own. News are told apart from requests. */
function countRoundTrips(): { read(): number; stop(): void } {
  let trips = 0;
  const unanswered = new WeakMap<pg.Client, number>();
  const ask = pg.Client.prototype.query;
  const counting = function query(this: pg.Client, ...asked: unknown[]): unknown {
    const answer = Reflect.apply(ask, this, asked) as unknown;
    if (!(answer instanceof Promise) || JSON.stringify(asked[0]).includes('pg_notify')) return answer;
    const waiting = unanswered.get(this) ?? 0;
    if (waiting === 0) trips += 1;
    unanswered.set(this, waiting + 1);
    const answered = (): void => {
      unanswered.set(this, (unanswered.get(this) ?? 1) - 1);
    };
    answer.then(answered, answered);
    return answer;
  };
  pg.Client.prototype.query = counting as typeof ask;
  return {
    read: () => {
      const read = trips;
      trips = 0;
      return read;
    },
    stop: () => {
      pg.Client.prototype.query = ask;
    },
  };
}

// The embedded database is in the process: there is no way to go.
describe.runIf(databaseKinds().includes('server'))('ways to the database and back', () => {
  const counter = countRoundTrips();
  let test: TestApp;
  let ticketId: string;

  beforeAll(async () => {
    test = await openTestApp('server');
    ({ ticketId } = await openTestTicket(test));
  });
  afterAll(async () => {
    counter.stop();
    await test.close();
  });

  const taken = async (asking: Promise<TestReply>): Promise<number> => {
    counter.read();
    expect((await asking).status).toBe(200);
    return counter.read();
  };

  it(`are at most ${mostForCommand} for a step of a case`, async () => {
    const { technician } = test.home;
    const tripsOf: Record<string, number> = {};
    const counted = {
      ...technician,
      post: async (path: string, sent?: Parameters<typeof technician.post>[1]) => {
        counter.read();
        const reply = await technician.post(path, sent);
        const { type } = (sent?.body ?? {}) as { type: string };
        tripsOf[type] = Math.max(tripsOf[type] ?? 0, counter.read());
        return reply;
      },
    };
    await bringToSubstitute(counted, ticketId);
    for (const command of [
      { type: 'note', text: 'Hums.' },
      temporaryCable,
      { type: 'applyChange' },
      { type: 'restoreChange' },
      { type: 'waitFor', kind: 'part', what: 'A cable', by: '2099-01-01' },
    ])
      await send(counted, ticketId, command);
    expect(Object.keys(tripsOf).length).toBeGreaterThan(12);
    expect(Object.entries(tripsOf).filter(([, trips]) => trips > mostForCommand)).toEqual([]);
    expect(tripsOf.note).toBeGreaterThan(2);
  });

  it(`are at most ${mostForPage} for a ticket's page`, async () => {
    expect(await taken(test.home.technician.get(`/tickets/${ticketId}`))).toBeLessThanOrEqual(mostForPage);
  });
});
