import { isDeepStrictEqual } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import type { LogFinding } from '../../../shared/contract/log-findings.ts';
import type { TimelineEntry } from '../../../shared/contract/ticket.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import {
  accepted,
  bodyOf,
  bringToReproduce,
  openTestTicket,
  send,
  type TestTicket,
} from '../../support/tickets.ts';
import { postForm } from '../evidence/form-client.ts';

const minute = (from: number, minutes: number): string => new Date(from + minutes * 60_000).toISOString();

/** A line a minute, and sync lost at these minutes, each after errors that rise two seconds before. */
function logOf(from: number, lengthMin: number, lostAtMin: readonly number[]): Buffer {
  const line = (at: number, text: string) =>
    `<13>1 ${new Date(at).toISOString()} processor video 1 - - ${text}`;
  const beats = Array.from({ length: lengthMin + 1 }, (_, at) => [
    from + at * 60_000,
    'output A: temperature 41 C',
  ]);
  const losses = lostAtMin.flatMap((at) => {
    const ms = from + at * 60_000;
    return [
      [ms - 2000, 'output A: authentication failed'],
      [ms, 'output A: sync lost'],
      [ms + 3000, 'output A: sync found'],
    ];
  });
  const lines = ([...beats, ...losses] as [number, string][]).sort((a, b) => a[0] - b[0]);
  return Buffer.from(`${lines.map(([at, text]) => line(at, text)).join('\n')}\n`);
}

describe.each(databaseKinds())('what the logs of a ticket say, on the %s database', (kind) => {
  let test: TestApp;
  let ticket: TestTicket;
  let from: number;
  let log: EvidenceItem;
  beforeAll(async () => {
    test = await openTestApp(kind);
    ticket = await openTestTicket(test);
    from = Date.now() - 600 * 60_000;
    const { technician } = test.home;
    await bringToReproduce(technician, ticket.ticketId);
    await accepted(technician, ticket.ticketId, { type: 'startWatch', happenedAt: minute(from, 0) });
    for (const at of [11, 29, 52]) {
      await accepted(technician, ticket.ticketId, { type: 'recordOccurrence', happenedAt: minute(from, at) });
    }
    await accepted(technician, ticket.ticketId, { type: 'endWatch', happenedAt: minute(from, 60) });
    const file = logOf(from, 70, [11, 29, 40, 52]);
    const about = { kind: 'log', tie: { deviceId: 'processor' } };
    log = bodyOf(await postForm(test, technician, ticket.ticketId, { about, file, name: 'day.log' }), 201);
  });
  afterAll(() => test.close());

  const findings = async (): Promise<LogFinding[]> =>
    bodyOf<{ items: LogFinding[] }>(
      await test.home.technician.get(`/tickets/${ticket.ticketId}/log-findings`),
      200,
    ).items;

  it('covers the occurrences on record, and shows something at each', async () => {
    const [finding] = await findings();
    expect(finding).toMatchObject({ evidenceId: log.id, deviceId: 'processor', fileName: 'day.log' });
    expect(finding?.coverage).toMatchObject({ complete: true, covered: 3, of: 3 });
    expect(finding?.coverage.occurrences.map(({ shows }) => shows?.kind)).toEqual([
      'syncLost',
      'syncLost',
      'syncLost',
    ]);
  });

  it('proposes the one that nobody saw, and knows the ones on record', async () => {
    const [finding] = await findings();
    const proposed = finding?.watches[0]?.proposed ?? [];
    expect(proposed).toHaveLength(4);
    const [unseen, ...more] = proposed.filter(({ recordedAs }) => recordedAs === null);
    expect(more).toEqual([]);
    expect(Math.abs(Date.parse(unseen?.at ?? '') - Date.parse(minute(from, 40)))).toBeLessThan(5000);
  });

  it('names what regularly comes before, with its chance', async () => {
    const [finding] = await findings();
    const before = finding?.precursors.find(({ kind: each }) => each === 'authenticationFailed');
    expect(before).toMatchObject({ preceded: 3, regular: true });
    expect(before?.correctedP).toBeLessThanOrEqual(0.05);
  });

  it('is on the timeline, line by line', async () => {
    const { items } = bodyOf<{ items: TimelineEntry[] }>(
      await test.home.technician.get(`/tickets/${ticket.ticketId}/timeline`),
      200,
    );
    const logged = items.filter((entry) => entry.kind === 'log').map(({ text }) => text);
    const syncLost = { code: 'logEventKind', values: { kind: 'syncLost' } };
    expect(logged.filter(({ values }) => isDeepStrictEqual(values.kind, syncLost))).toHaveLength(4);
    expect(logged[0]).toMatchObject({ code: 'logLine', values: { fileName: 'day.log' } });
  });

  it('lets whoever watched confirm it, once', async () => {
    const [finding] = await findings();
    const unseen = finding?.watches[0]?.proposed.find(({ recordedAs }) => recordedAs === null);
    const command = {
      type: 'confirmOccurrence',
      watchId: finding?.watches[0]?.watchId,
      occurredAt: unseen?.at,
      durationS: unseen?.durationS,
      description: unseen?.excerpt,
      evidenceId: log.id,
    };
    const { triage } = await accepted(test.home.technician, ticket.ticketId, command);
    expect(triage.watches[0]?.occurrences).toHaveLength(4);
    expect((await send(test.home.technician, ticket.ticketId, command)).status).toBe(409);
    const [after] = await findings();
    expect(after?.watches[0]?.proposed.every(({ recordedAs }) => recordedAs !== null)).toBe(true);
    expect(after?.coverage).toMatchObject({ covered: 4, of: 4 });
  });

  it('is not there for another organisation, nor for a ticket that is not', async () => {
    const path = `/tickets/${ticket.ticketId}/log-findings`;
    expect((await test.other.technician.get(path)).status).toBe(404);
  });
});
