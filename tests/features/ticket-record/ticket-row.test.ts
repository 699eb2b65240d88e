import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ticketUpdate } from '../../../shared/contract/ticket.ts';
import { findTicket, withNames, withoutSearchText } from '../../../src/features/ticket-record/index.ts';
import type { Actor } from '../../../src/http/index.ts';
import { openTestApp, type TestApp } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { bodyOf, openTestTicket } from '../../support/tickets.ts';

describe.each(databaseKinds())("a ticket's row on the %s database", (kind) => {
  let test: TestApp;
  let ticketId: string;
  beforeAll(async () => {
    test = await openTestApp(kind);
    ({ ticketId } = await openTestTicket(test));
  });
  afterAll(() => test.close());

  it('is read by SQL with all the columns and names that the data model has', async () => {
    const { orgId, technician } = test.home;
    await test.services.database.inTenant({ orgId, memberId: technician.id }, async (tx) => {
      const where = { orgId_id: { orgId, id: ticketId } };
      const expected = await tx.ticket.findUniqueOrThrow({
        where,
        include: withNames,
        omit: withoutSearchText,
      });
      const actor = { orgId, memberId: technician.id } as Actor;
      expect(await findTicket({ tx, actor, services: test.services, language: 'en' }, ticketId)).toEqual(
        expected,
      );
    });
  });

  it('is written by SQL with all that an update can change', async () => {
    const { dispatcher, secondTechnician } = test.home;
    const { headers, body } = await dispatcher.get(`/tickets/${ticketId}`);
    const changed = {
      priority: 'urgent',
      assigneeId: secondTechnician.id,
      visitAt: '2099-01-01T08:00:00.000Z',
      visitMin: 45,
      intake: { ...body.intake, notes: 'The key is with the neighbour.' },
    };
    expect(Object.keys(changed).toSorted()).toEqual(Object.keys(ticketUpdate.shape).toSorted());
    const update = await dispatcher.put(`/tickets/${ticketId}`, {
      body: changed,
      ifMatch: String(headers.etag),
    });
    expect(bodyOf<object>(update, 200)).toMatchObject({
      ...changed,
      assigneeName: 'secondTechnician of home-firm',
    });
    expect((await dispatcher.get(`/tickets/${ticketId}`)).body).toEqual(update.body);
  });
});
