import { randomUUID } from 'node:crypto';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type News, news } from '../../../shared/contract/news.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { createApp } from '../../../src/app.ts';
import { openDatabase } from '../../../src/database/index.ts';
import { createLogger } from '../../../src/http/logging.ts';
import { openTestApp, type TestApp, type TestMember } from '../../support/test-app.ts';
import { databaseKinds } from '../../support/test-database.ts';
import { accepted, openTestTicket } from '../../support/tickets.ts';
import { type EventReader, followEvents } from './event-reader.ts';

describe.each(databaseKinds())('news of changes, on the %s database', (kind) => {
  let test: TestApp;
  let base: string;
  const readers: EventReader[] = [];
  beforeAll(async () => {
    test = await openTestApp(kind, { heartbeatS: 0.05 });
    base = await test.app.listen({ host: '127.0.0.1', port: 0 });
  });
  afterEach(() => {
    for (const reader of readers.splice(0)) reader.close();
  });
  afterAll(() => test.close());

  const follow = async (member: TestMember, headers = {}, at = base): Promise<EventReader> => {
    const reader = await followEvents(at, member.accessToken, headers);
    readers.push(reader);
    return reader;
  };
  const changeOf = (data: string): News => news.strict().parse(JSON.parse(data));
  const note = (ticketId: string, text = 'Hums.') =>
    test.home.technician.post(`/tickets/${ticketId}/commands`, { body: { type: 'note', text } });

  it('needs a sign-in', async () => {
    const reader = await followEvents(base, null);
    expect(reader.status).toBe(401);
    expect(reader.type).toContain('application/problem+json');
  });

  it('tells every role of a ticket that changed, with its new sequence, and says none of it', async () => {
    const { ticketId, chainId, siteId } = await openTestTicket(test);
    const { dispatcher, technician, support, admin } = test.home;
    const following = await Promise.all([dispatcher, technician, support, admin].map((one) => follow(one)));
    expect(following.map(({ type }) => type)).toEqual(Array(4).fill('text/event-stream; charset=utf-8'));
    const { sequence } = (await note(ticketId, 'A secret of the house.')).body;
    for (const reader of following) {
      // news come after their commit: that the ticket was opened may still be on its way to who follows only now
      const event = await reader.until(
        ({ event, data }) =>
          event === 'change' && data.includes(ticketId) && changeOf(data).sequence === sequence,
      );
      expect(changeOf(event.data)).toEqual({ kind: 'ticket', id: ticketId, sequence, chainId, siteId });
      expect(event.id).toMatch(/\.\d+$/);
    }
  });

  it('tells of evidence, sites, chains, members and firmware levels too', async () => {
    const { ticketId, siteId, chainId } = await openTestTicket(test);
    const reader = await follow(test.home.admin);
    const site = await test.home.admin.get(`/sites/${siteId}`);
    const body = { client: 'Family Overwell', address: '2 Mill Lane' };
    await test.home.admin.put(`/sites/${siteId}`, { body, ifMatch: site.headers.etag ?? '' });
    const chain = await test.home.admin.get(`/chains/${chainId}`);
    const named = { ...chain.body.chain, name: 'Renamed' };
    await test.home.admin.put(`/chains/${chainId}`, { body: named, ifMatch: chain.headers.etag ?? '' });
    await test.home.technician.post(`/tickets/${ticketId}/readings`, {
      body: { reading: { kind: 'note', text: 'Hums.' } },
    });
    await test.home.admin.post('/firmware-levels', { body: { model: `Model ${kind}`, minimum: '1' } });
    await test.home.admin.post('/members', {
      body: { name: 'New', email: 'new@home-firm.example', role: 'technician', password: 'long enough' },
    });
    for (const expected of ['site', 'chain', 'evidence', 'firmwareLevel', 'member'] as const) {
      const event = await reader.until(
        ({ event, data }) => event === 'change' && changeOf(data).kind === expected,
      );
      if (expected === 'chain') expect(changeOf(event.data)).toMatchObject({ id: chainId, sequence: 2 });
      if (expected === 'evidence') expect(changeOf(event.data)).toMatchObject({ ticketId });
    }
  });

  it('says nothing of a write that was refused', async () => {
    const { ticketId } = await openTestTicket(test);
    const reader = await follow(test.home.dispatcher);
    const refused = await test.home.technician.post(`/tickets/${ticketId}/commands`, {
      body: { type: 'close' },
    });
    expect(refused.status).toBe(409);
    const other = await openTestTicket(test);
    await reader.until(({ data }) => data.includes(other.ticketId));
    // News are told after their commit: those of the ticket's opening may come while somebody listens already.
    const ofRefused = reader.events
      .filter(({ data }) => data.includes(ticketId))
      .map(({ data }) => changeOf(data));
    expect(ofRefused.filter(({ sequence }) => sequence !== 1)).toEqual([]);
  });

  it('says resync in the place of more news than anybody reads', async () => {
    const reader = await follow(test.home.dispatcher);
    await test.services.database.inTenant({ orgId: test.home.orgId, memberId: null }, (tx) =>
      tx.firmwareLevel.createMany({
        data: Array.from({ length: 2_000 }, (_, at) => ({
          orgId: test.home.orgId,
          id: randomUUID(),
          model: `Model ${at}`,
          minimum: '1',
        })),
      }),
    );
    await reader.until(({ event }) => event === 'resync');
    expect(reader.events.filter(({ event }) => event === 'change')).toEqual([]);
  });

  it('keeps to the organisation', async () => {
    const stranger = await follow(test.other.admin);
    const { ticketId } = await openTestTicket(test);
    const theirs = await openTestTicket(test, test.other);
    await stranger.until(({ data }) => data.includes(theirs.ticketId));
    const seen = stranger.events.map(({ data }) => data).join();
    expect(seen).not.toContain(ticketId);
    expect(seen).not.toContain(test.home.orgId);
  });

  it('tells a grantee of another organisation that there is a packet, and no other id', async () => {
    const { technician, support } = test.home;
    const { ticketId } = await openTestTicket(test);
    const { missing } = (await technician.get(`/tickets/${ticketId}`)).body as Ticket;
    const items = [...new Set(missing.map(({ item }) => item))];
    const waivers = items.map((item) => ({ item, reason: 'Not for this test.' }));
    await accepted(technician, ticketId, { type: 'escalate', question: 'What is this?', waivers });
    const packetId = (await support.get(`/tickets/${ticketId}/packets`)).body.items[0].id as string;
    const reader = await follow(test.other.support);
    const bystander = await follow(test.other.admin);
    const { memberAddress } = (await test.other.support.get('/me')).body;
    const granted = await support.post(`/packets/${packetId}/grants`, { body: { memberAddress } });
    expect(granted.status).toBe(201);
    const event = await reader.until(({ data }) => data.includes('grantedPacket'));
    expect(changeOf(event.data)).toEqual({ kind: 'grantedPacket', id: packetId });
    const theirs = await openTestTicket(test, test.other);
    await bystander.until(({ data }) => data.includes(theirs.ticketId));
    expect(bystander.events.map(({ data }) => data).join()).not.toContain(packetId);
  });

  it('says resync to a reader that comes back, and to nobody else', async () => {
    const fresh = await follow(test.home.dispatcher);
    const first = await fresh.until(({ event }) => event === 'open');
    const back = await follow(test.home.dispatcher, { 'last-event-id': first.id ?? '' });
    await back.until(({ event }) => event === 'resync');
    expect(fresh.events.map(({ event }) => event)).not.toContain('resync');
  });

  it('shows that it is alive', async () => {
    const reader = await follow(test.home.dispatcher);
    await expect.poll(() => reader.comments.length, { timeout: 5000 }).toBeGreaterThan(2);
  });

  it('ends when the token does', async () => {
    const claims = test.app.jwt.decode<{ sub: string; org: string; role: 'technician'; sid: string }>(
      test.home.technician.accessToken,
      { complete: false },
    );
    if (claims === null) throw new Error('that is no token');
    const { sub, org, role, sid } = claims;
    const token = test.app.jwt.sign({ sub, org, role, sid }, { expiresIn: 1 });
    const reader = await followEvents(base, token);
    expect(reader.status).toBe(200);
    await reader.ended;
    expect((await followEvents(base, token)).status).toBe(401);
  });

  it('ends when the member is made inactive, who then gets none', async () => {
    const { secondTechnician, admin } = test.home;
    const reader = await follow(secondTechnician);
    const { headers, body } = await admin.get(`/members/${secondTechnician.id}`);
    await admin.put(`/members/${secondTechnician.id}`, {
      body: { name: body.name, role: body.role, active: false },
      ifMatch: headers.etag ?? '',
    });
    await reader.ended;
    expect((await follow(secondTechnician)).status).toBe(401);
  });

  it('lets a member hold twelve streams; another ends the oldest', async () => {
    const held: EventReader[] = [];
    for (let count = 0; count < 13; count += 1) held.push(await follow(test.home.support));
    await held[0]?.ended;
    const { ticketId } = await openTestTicket(test);
    for (const reader of held.slice(1)) await reader.until(({ data }) => data.includes(ticketId));
  });

  // An embedded database belongs to one process, and has no connection that could be lost.
  if (kind === 'server') {
    it('reaches the readers of another process on the same server', async () => {
      const database = await openDatabase(await test.databaseElsewhere());
      const second = await createApp({ ...test.services, database }, createLogger('silent'));
      try {
        const elsewhere = await second.listen({ host: '127.0.0.1', port: 0 });
        const reader = await follow(test.home.dispatcher, {}, elsewhere);
        const { ticketId } = await openTestTicket(test);
        await reader.until(({ data }) => data.includes(ticketId));
      } finally {
        await second.close();
        await database.close();
      }
    });

    it('says resync when the connection to the server was lost', async () => {
      const reader = await follow(test.home.dispatcher);
      await test.tamper(
        `select pg_terminate_backend(pid) from pg_stat_activity
       where application_name = 'halfsplit news' and datname = current_database()`,
        [],
      );
      await reader.until(({ event }) => event === 'resync');
      const { ticketId } = await openTestTicket(test);
      await reader.until(({ data }) => data.includes(ticketId));
    });
  }

  it('does not keep the server from closing', async () => {
    const second = await createApp(test.services, createLogger('silent'));
    const reader = await follow(
      test.home.dispatcher,
      {},
      await second.listen({ host: '127.0.0.1', port: 0 }),
    );
    await second.close();
    await reader.ended;
  });
});
