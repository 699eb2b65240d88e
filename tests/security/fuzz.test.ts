import { randomUUID } from 'node:crypto';
import type { Readable } from 'node:stream';
import { setTimeout } from 'node:timers/promises';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestApp, type TestApp, type TestMember } from '../support/test-app.ts';
import { databaseKinds } from '../support/test-database.ts';
import { faultOf, type Reply } from './judge.ts';
import {
  type Document,
  nameOf,
  type Operation,
  operationsOf,
  type Request,
  requestOf,
} from './operations.ts';
import { reachEveryRoute } from './reach.ts';

/** Of all databases together. */
const requests = Number(process.env.FUZZ_REQUESTS ?? 20_000);
/** Assumed: longer than any request takes on a busy machine, unless it never ends. */
const patienceMs = 30_000;
/** What costs a hundred times as much as any other route is asked a tenth as often. */
const dear = /plan$|\/export$|sign-in$|\/password$|download$|\/auth\/|second-factors/;

const kinds = databaseKinds();

describe.each(kinds)('the API as it is described, on the %s database', (kind) => {
  let test: TestApp;
  let operations: Operation[];
  let ids: Record<string, readonly string[]>;
  /** Statuses by operation. */
  const seen = new Map<string, Map<number, number>>();
  const count = (line: string, status: number): void => {
    const counts = seen.get(line) ?? new Map<number, number>();
    seen.set(line, counts.set(status, (counts.get(status) ?? 0) + 1));
  };
  const faults: string[] = [];

  beforeAll(async () => {
    test = await openTestApp(kind, { maxUploadBytes: 1024 * 1024 });
    operations = operationsOf(test.app.swagger() as unknown as Document);
    const byName = new Map(operations.map((operation) => [nameOf(operation), operation]));
    const made = await reachEveryRoute(test, (line, reply) => {
      const operation = byName.get(line);
      if (operation === undefined) throw new Error(`${line} is not in the document`);
      count(line, reply.status);
      const { status, headers, text = '' } = reply;
      const fault = faultOf(operation, { status, headers, payload: text });
      if (fault !== null) faults.push(fault);
      else if (status >= 400) faults.push(`${line} answered ${status}: ${text}`);
    });
    ids = Object.fromEntries(Object.entries(made).map(([name, id]) => [name, [id]]));
  }, 600_000);
  afterAll(() => test.close());

  it('answers every route with a described success', async () => {
    const events = operations.find(({ path }) => path === '/events') as Operation;
    const url = '/events';
    const reply = await ask({ operation: events, url, headers: {}, payload: null }, test.home.admin);
    count(nameOf(events), reply.status);
    expect(faultOf(events, reply)).toBeNull();
    expect(faults).toEqual([]);
    const reached = [...seen].filter(([, counts]) => [...counts.keys()].some((status) => status < 300));
    expect(reached.map(([line]) => line).toSorted()).toEqual(operations.map(nameOf).toSorted());
  });

  it(`takes ${requests / kinds.length} requests without a fault of its own, a reply that is not described, or a hang`, async () => {
    const { admin, dispatcher, technician, support } = test.home;
    const uuids = [...Object.values(ids).flat(), technician.id, test.other.technician.id];
    const words = ['overwell', 'Mill', '1', 'P-1', 'input', 'a', '1.8', 'quellor'];
    const asked = fc.oneof(
      ...operations.map((operation) => ({
        weight: dear.test(operation.path) ? 1 : 10,
        arbitrary: requestOf(operation, { ids, uuids, words }),
      })),
    );
    const callers = fc.oneof(
      { weight: 6, arbitrary: fc.constantFrom(admin, technician) },
      fc.constantFrom(dispatcher, support, test.other.admin, null),
    );
    await fc.assert(
      fc.asyncProperty(asked, callers, async (request, caller) => {
        const reply = await ask(harmless(request), caller);
        count(nameOf(request.operation), reply.status);
        const fault = faultOf(request.operation, reply);
        if (fault !== null) throw new Error(fault);
      }),
      { numRuns: Math.ceil(requests / kinds.length), endOnFailure: true },
    );
    process.stdout.write(`${kind}: ${summary()}\n`);
  }, 1_200_000);

  async function ask(
    { operation, url, headers, payload }: Request,
    caller: TestMember | null,
  ): Promise<Reply> {
    const late = new AbortController();
    const asking = test.app.inject({
      method: operation.method.toUpperCase() as 'GET',
      url,
      headers: {
        ...(caller === null ? {} : { authorization: `Bearer ${caller.accessToken}` }),
        ...headers,
      },
      ...(payload === null ? {} : { payload }),
      payloadAsStream: true,
    });
    const reply = await Promise.race([asking, setTimeout(patienceMs, null, { signal: late.signal })]);
    if (reply === null) throw new Error(`${nameOf(operation)} ${url}: no reply`);
    late.abort();
    const stream = reply.stream();
    const isEndless = String(reply.headers['content-type']).startsWith('text/event-stream');
    const body = isEndless ? '' : await textOf(stream);
    stream.destroy();
    return { status: reply.statusCode, headers: reply.headers, payload: isEndless ? 'endless' : body };
  }

  async function textOf(stream: Readable): Promise<string> {
    const chunks: Buffer[] = [];
    for await (const chunk of stream) chunks.push(Buffer.from(chunk as Buffer));
    return Buffer.concat(chunks).toString('utf8');
  }

  /** An admin without a second factor would be let in nowhere else. */
  const harmless = (request: Request): Request => ({
    ...request,
    payload:
      request.payload?.replaceAll('"adminsNeedSecondFactor":true', '"adminsNeedSecondFactor":false') ?? null,
    // A key is good for one request.
    headers:
      request.headers['idempotency-key']?.length === 36
        ? { ...request.headers, 'idempotency-key': randomUUID() }
        : request.headers,
  });

  function summary(): string {
    const statuses = new Map<string, number>();
    for (const counts of seen.values())
      for (const [status, times] of counts) {
        const kindOf = `${Math.floor(status / 100)}xx`;
        statuses.set(kindOf, (statuses.get(kindOf) ?? 0) + times);
      }
    return [...statuses]
      .toSorted()
      .map(([name, times]) => `${times} × ${name}`)
      .join(', ');
  }
});
