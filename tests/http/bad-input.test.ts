import { randomUUID } from 'node:crypto';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ticketCommandTypes } from '../../shared/contract/commands.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import { bodyWith, guardedRoutes, type Ids, pathWith, type RouteRow } from '../support/routes.ts';
import { openTestApp, type TestApp } from '../support/test-app.ts';
import { databaseKinds } from '../support/test-database.ts';
import { openTestTicket } from '../support/tickets.ts';

/** Whatever a client may send: JSON of any shape, with the strings and numbers that break things more often. */
const nasty = fc.oneof(
  fc.constantFrom(
    '',
    ' ',
    '\u0000',
    '\ud800',
    '../../etc',
    "'; drop table site; --",
    '9'.repeat(400),
    '%',
    '{id}',
  ),
  fc.constantFrom(0, -1, 1.5, 2 ** 31, 2 ** 53, 1e308, -0),
  fc.constantFrom(null, true, [], {}),
  fc.constantFrom('0000-01-01T00:00:00Z', '2026-02-30T10:00:00Z', '9999-12-31T23:59:59Z', '2026-11-25'),
  fc.uuid(),
  fc.jsonValue({ maxDepth: 3 }),
);

/** As it would stand in an address. JSON, since an object with a member `toString` has no text of its own. */
const asWord = (value: unknown): string => (typeof value === 'string' ? value : JSON.stringify(value));

/** A fitting body with some of its values, at any depth, replaced by something nasty. */
function spoiled(body: unknown): fc.Arbitrary<unknown> {
  if (typeof body !== 'object' || body === null)
    return fc.oneof({ weight: 2, arbitrary: fc.constant(body) }, nasty);
  const entries = Object.entries(body);
  const inner = fc.tuple(
    ...entries.map(([, value]) => fc.oneof({ weight: 3, arbitrary: spoiled(value) }, nasty)),
  );
  return inner.map((values) =>
    Array.isArray(body) ? values : Object.fromEntries(entries.map(([key], at) => [key, values[at]])),
  );
}

const writes = guardedRoutes.filter((row) => row.method !== 'get');
const reads = guardedRoutes.filter((row) => row.method === 'get');

describe.each(databaseKinds())('bad input, on the %s database', (kind) => {
  let test: TestApp;
  let ids: Ids;
  beforeAll(async () => {
    test = await openTestApp(kind);
    const { siteId, chainId, ticketId } = await openTestTicket(test);
    const other = randomUUID();
    ids = {
      members: test.home.support.id,
      'firmware-levels': other,
      sites: siteId,
      chains: chainId,
      tickets: ticketId,
      evidence: other,
      packets: other,
      diaries: randomUUID(),
      grants: other,
    };
  });
  afterAll(() => test.close());

  const expectNoFault = async (row: RouteRow, path: string, body?: unknown) => {
    const answer = await test.app.inject({
      method: row.method,
      url: path,
      headers: {
        authorization: `Bearer ${test.home.admin.accessToken}`,
        'idempotency-key': randomUUID(),
        'if-match': '*',
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      },
      ...(body === undefined ? {} : { payload: JSON.stringify(body) }),
    });
    expect(
      answer.statusCode,
      `${row.method} ${path} ${JSON.stringify(body)}: ${answer.payload}`,
    ).toBeLessThan(500);
  };

  it('in the body of any write is never answered with a 5xx', async () => {
    const attempts = fc
      .constantFrom(...writes)
      .chain((row) =>
        fc.record({ row: fc.constant(row), body: fc.oneof(spoiled(bodyWith(row, ids) ?? {}), nasty) }),
      );
    await fc.assert(
      fc.asyncProperty(attempts, ({ row, body }) => expectNoFault(row, pathWith(row, ids), body)),
      { numRuns: 300 },
    );
  });

  it('in the commands of a ticket is never answered with a 5xx, and what was there is there', async () => {
    const row = writes.find((one) => one.path.endsWith('/commands')) as RouteRow;
    const commands = fc.record(
      {
        type: fc.constantFrom(...ticketCommandTypes),
        reason: nasty,
        text: nasty,
        happenedAt: nasty,
        chainVersion: nasty,
        deviceId: nasty,
        target: nasty,
        kind: nasty,
        answers: nasty,
        waivers: nasty,
      },
      { requiredKeys: ['type'] },
    );
    await fc.assert(
      fc.asyncProperty(commands, (body) => expectNoFault(row, pathWith(row, ids), body)),
      { numRuns: 300 },
    );
    const { body: check } = await test.home.admin.get(`/tickets/${ids.tickets}/log/check`);
    expect(check).toMatchObject({ isClean: true });
    expect(((await test.home.admin.get(`/tickets/${ids.tickets}`)).body as Ticket).number).toBe(1);
  });

  it('in addresses and queries is never answered with a 5xx', async () => {
    const text = fc
      .oneof(nasty.map(asWord), fc.string({ maxLength: 60 }))
      .filter((word) => word.isWellFormed());
    const queries = fc.dictionary(
      fc.constantFrom(
        'q',
        'cursor',
        'limit',
        'state',
        'assigneeId',
        'visitFrom',
        'version',
        'format',
        'after',
        'without',
      ),
      text,
      { maxKeys: 3 },
    );
    const attempts = fc.record({ row: fc.constantFrom(...reads), query: queries, word: fc.option(text) });
    await fc.assert(
      fc.asyncProperty(attempts, ({ row, query, word }) => {
        const path =
          word === null
            ? pathWith(row, ids)
            : row.path.replace(/\{[a-z]+\}/g, encodeURIComponent(word) || 'x');
        return expectNoFault(row, `${path}?${new URLSearchParams(query)}`);
      }),
      { numRuns: 300 },
    );
  });
});
