import type { Ticket } from '../../shared/contract/ticket.ts';
import { homeCinema } from '../chain/build-chain.ts';
import type { TestApp, TestMember, TestOrganisation, TestReply } from './test-app.ts';

export type TestTicket = { siteId: string; chainId: string; ticketId: string };

/** The body of a reply that has to have that status. */
export function bodyOf<Body>(reply: TestReply, status: number): Body {
  if (reply.status !== status) throw new Error(`expected ${status}, got ${reply.status}: ${reply.text}`);
  return reply.body as Body;
}

/** A site with a home cinema, and a ticket about drop-outs there that is with the technician. */
export async function openTestTicket(test: TestApp, org: TestOrganisation = test.home): Promise<TestTicket> {
  const { dispatcher, technician } = org;
  // Long enough ago for hours of watching to fit between then and now.
  test.setNow(new Date(Date.now() - 12 * 3_600_000));
  const site = { client: 'Family Overwell', address: '1 Mill Lane', contact: { phone: '+44 1632 960 143' } };
  const { id: siteId } = bodyOf<{ id: string }>(await dispatcher.post('/sites', { body: site }), 201);
  const chain = await dispatcher.post(`/sites/${siteId}/chains`, { body: homeCinema() });
  const { id: chainId } = bodyOf<{ id: string }>(chain, 201);
  const ticket = await dispatcher.post('/tickets', {
    body: {
      siteId,
      chainId,
      assigneeId: technician.id,
      intake: { symptom: { kind: 'dropOuts', perHour: 3 } },
    },
  });
  test.setNow(null);
  return { siteId, chainId, ticketId: bodyOf<Ticket>(ticket, 201).id };
}

export type Command = { type: string } & Record<string, unknown>;

export const send = (member: TestMember, ticketId: string, command: Command): Promise<TestReply> =>
  member.post(`/tickets/${ticketId}/commands`, { body: command });

/** Sends a command that has to be accepted. */
export async function accepted(member: TestMember, ticketId: string, command: Command): Promise<Ticket> {
  return bodyOf<Ticket>(await send(member, ticketId, command), 200);
}

const minutesAgo = (minutes: number): string => new Date(Date.now() - minutes * 60_000).toISOString();

export async function bringToReproduce(technician: TestMember, ticketId: string): Promise<void> {
  await accepted(technician, ticketId, { type: 'reviewAudit', chainVersion: 1 });
  await accepted(technician, ticketId, { type: 'answerWhatChanged', answers: [{ kind: 'nothing' }] });
  await accepted(technician, ticketId, { type: 'recordAsFound', chainVersion: 1 });
}

/** Through an hour with three occurrences, and a device's menu that vanished: the side is `output`. */
export async function bringToSubstitute(
  technician: TestMember,
  ticketId: string,
  deviceId = 'processor',
): Promise<void> {
  await bringToReproduce(technician, ticketId);
  await accepted(technician, ticketId, { type: 'startWatch', happenedAt: minutesAgo(600) });
  for (const at of [590, 570, 550]) {
    await accepted(technician, ticketId, { type: 'recordOccurrence', happenedAt: minutesAgo(at) });
  }
  await accepted(technician, ticketId, { type: 'endWatch', happenedAt: minutesAgo(540) });
  await accepted(technician, ticketId, { type: 'acceptReproduction' });
  await accepted(technician, ticketId, {
    type: 'startWatch',
    menuDeviceId: deviceId,
    happenedAt: minutesAgo(500),
  });
  await accepted(technician, ticketId, {
    type: 'recordOccurrence',
    menu: 'vanished',
    happenedAt: minutesAgo(490),
  });
  await accepted(technician, ticketId, { type: 'endWatch', happenedAt: minutesAgo(480) });
  await accepted(technician, ticketId, { type: 'concludeSide', deviceId });
  await accepted(technician, ticketId, { type: 'beginSubstitution' });
}

/** A change that applies to the home cinema once the side is `output`. */
export const temporaryCable = {
  type: 'declareChange',
  kind: 'temporaryCable',
  target: { kind: 'link', linkId: 'L4' },
  expected: 'No drop-out in two hours if the cable is the cause.',
};
