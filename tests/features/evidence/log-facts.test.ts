import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { bodyOf, openTestTicket, type TestTicket } from '../../support/tickets.ts';
import { type Form, postForm } from './form-client.ts';

/** In the form of RFC 5424, section 6.5; the device's clock is an hour ahead of the true time. */
const syslog = Buffer.from(
  [
    '<13>1 2026-03-02T19:00:00+00:00 processor input 1 - - input 1: hot plug down',
    '<13>1 2026-03-02T19:00:01+00:00 processor input 1 - - input 1: sync lost',
    '<13>1 2026-03-02T19:00:04+00:00 processor input 1 - - input 1: sync found',
    '',
  ].join('\n'),
);

describe.each(databaseKinds())('a log on arrival, on the %s database', (kind) => {
  let test: TestApp;
  let ticket: TestTicket;
  beforeAll(async () => {
    test = await openTestApp(kind);
    ticket = await openTestTicket(test);
  });
  afterAll(() => test.close());

  const post = (form: Form) => postForm(test, test.home.technician, ticket.ticketId, form);
  const detailOf = async (form: Form): Promise<EvidenceItem & { facts: Record<string, unknown> }> => {
    const { id } = bodyOf<EvidenceItem>(await post(form), 201);
    return bodyOf(await test.home.technician.get(`/evidence/${id}`), 200);
  };
  const span = { from: '2026-03-02T19:00:00.000Z', to: '2026-03-02T19:00:04.000Z' };

  it('is read: what happened, and from when to when', async () => {
    const { facts, span: covered } = await detailOf({ about: { kind: 'log' }, file: syslog, name: 'a.log' });
    expect(covered).toEqual(span);
    expect(facts).toMatchObject({
      log: { events: [{ kind: 'hotPlugDown' }, { kind: 'syncLost' }, { kind: 'syncFound' }] },
    });
  });

  it('is read when it is compressed', async () => {
    const form = { about: { kind: 'log' }, file: gzipSync(syslog), name: 'a.log.gz' };
    expect((await detailOf(form)).span).toEqual(span);
  });

  it('is moved to the true time by a moment that is known', async () => {
    const knownMoments = [{ logTime: '2026-03-02T19:00:00+00:00', trueTime: '2026-03-02T18:00:00Z' }];
    const { span: covered } = await detailOf({
      about: { kind: 'log', clock: { knownMoments } },
      file: syslog,
    });
    expect(covered).toEqual({ from: '2026-03-02T18:00:00.000Z', to: '2026-03-02T18:00:04.000Z' });
  });

  it('keeps the span that the sender gives', async () => {
    const given = { from: '2026-03-02T10:00:00.000Z', to: '2026-03-02T12:00:00.000Z' };
    expect((await detailOf({ about: { kind: 'log', span: given }, file: syslog })).span).toEqual(given);
  });

  it('is refused with a clock that makes no sense, and says where', async () => {
    const reply = await post({ about: { kind: 'log', clock: { zone: 'Nowhere/Atall' } }, file: syslog });
    expect(reply.status).toBe(400);
    expect(reply.body.errors).toMatchObject([{ pointer: '/clock' }]);
  });
});
