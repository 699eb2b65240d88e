import type { Ticket } from '../../shared/contract/ticket.ts';
import type { Ids } from './routes.ts';
import type { TestApp } from './test-app.ts';
import { bodyOf, openTestTicket } from './tickets.ts';

/** One of everything in the first organisation. */
export async function everythingIn(test: TestApp): Promise<Ids> {
  const { admin, technician, support } = test.home;
  const { siteId, chainId, ticketId } = await openTestTicket(test);
  const level = await admin.post('/firmware-levels', { body: { model: 'Quellor R-9', minimum: '1.8' } });
  const note = await technician.post(`/tickets/${ticketId}/readings`, {
    body: { reading: { kind: 'note', text: 'Hums.' } },
  });
  const { missing } = (await technician.get(`/tickets/${ticketId}`)).body as Ticket;
  const waivers = [...new Set(missing.map((one) => one.item))].map((item) => ({
    item,
    reason: 'Not for this test.',
  }));
  const escalate = { type: 'escalate', question: 'What is this?', waivers };
  bodyOf(await technician.post(`/tickets/${ticketId}/commands`, { body: escalate }), 200);
  const packets = await support.get(`/tickets/${ticketId}/packets`);
  const packetId = packets.body.items[0].id as string;
  const reader = await openReader(test);
  const diary = await technician.post(`/tickets/${ticketId}/diaries`, { body: { days: 7 } });
  const grant = await support.post(`/packets/${packetId}/grants`, { body: { memberAddress: reader } });
  return {
    members: technician.id,
    'firmware-levels': bodyOf<{ id: string }>(level, 201).id,
    sites: siteId,
    chains: chainId,
    tickets: ticketId,
    evidence: bodyOf<{ id: string }>(note, 201).id,
    packets: packetId,
    grants: bodyOf<{ id: string }>(grant, 201).id,
    diaries: bodyOf<{ id: string }>(diary, 201).id,
  };
}

/** A support member of the other organisation who was granted the packet, and whom no test signs in as. */
async function openReader(test: TestApp): Promise<string> {
  const body = {
    name: 'Reader',
    email: 'reader@other-firm.example',
    role: 'support',
    password: 'a password for tests',
  };
  return bodyOf<{ id: string }>(await test.other.admin.post('/members', { body }), 201).id;
}
