import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ticketCommand } from '../../shared/contract/commands.ts';
import { erasureOf } from '../../shared/contract/erased-text.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import { english } from '../../shared/message/en/index.ts';
import { withSentences } from '../../src/replies/spoken.ts';
import { type Known, project, snapshotOf, wouldRefuse } from '../../src/web/projection/project.ts';
import type { OutboxEntry } from '../../src/web/store/outbox-entry.ts';
import { openTestApp, type TestApp } from '../support/test-app.ts';
import { bodyOf, type Command, openTestTicket, send, temporaryCable } from '../support/tickets.ts';

const minutesAgo = (minutes: number): string => new Date(Date.now() - minutes * 60_000).toISOString();
const entryOf = (ticket: Ticket, order: number, command: Command): OutboxEntry => ({
  order,
  id: randomUUID(),
  ticketId: ticket.id,
  kind: 'command',
  command: ticketCommand.parse(command),
  afterUploads: false,
  state: 'waiting',
  problem: null,
  mayHaveArrived: false,
  madeAt: new Date().toISOString(),
  basedOn: ticket.sequence,
});

/** What may differ: the server's clock stamps what the phone's stamped before, and its sentences stand beside messages. */
const unstamped = ({ state, triage, allowedNow, missing }: Ticket): unknown =>
  JSON.parse(
    JSON.stringify(withSentences({ state, triage, allowedNow, missing }, english), (key, value) =>
      (key === 'at' || key === 'declaredAt' || key === 'appliedAt') && typeof value === 'string' ? '' : value,
    ),
  );

describe('a ticket on the phone, ahead of the server', () => {
  let test: TestApp;
  beforeAll(async () => {
    test = await openTestApp('embedded');
  });
  afterAll(() => test.close());

  const knownOf = async (chainId: string): Promise<Known> => {
    const { technician } = test.home;
    return {
      member: { id: technician.id, role: 'technician' },
      chain: (await technician.get(`/chains/${chainId}`)).body,
      audit: (await technician.get(`/chains/${chainId}/audit?duringTriage=true&symptom=dropOuts`)).body,
      firmwareLevels: (await technician.get('/firmware-levels')).body.items,
      organisation: (await technician.get('/organisation')).body,
    };
  };
  const read = async (ticketId: string): Promise<Ticket> =>
    bodyOf(await test.home.technician.get(`/tickets/${ticketId}`), 200);

  const visit: Command[] = [
    { type: 'reviewAudit', chainVersion: 1 },
    { type: 'answerWhatChanged', answers: [{ kind: 'nothing' }] },
    { type: 'recordAsFound', chainVersion: 1 },
    { type: 'startWatch', watchId: randomUUID(), happenedAt: minutesAgo(600) },
    ...[590, 570, 550].map((at) => ({
      type: 'recordOccurrence',
      occurrenceId: randomUUID(),
      happenedAt: minutesAgo(at),
    })),
    { type: 'endWatch', happenedAt: minutesAgo(540) },
    { type: 'acceptReproduction' },
    { type: 'startWatch', watchId: randomUUID(), menuDeviceId: 'processor', happenedAt: minutesAgo(500) },
    { type: 'recordOccurrence', occurrenceId: randomUUID(), menu: 'vanished', happenedAt: minutesAgo(490) },
    { type: 'endWatch', happenedAt: minutesAgo(480) },
    { type: 'concludeSide', deviceId: 'processor' },
    { type: 'beginSubstitution' },
    { ...temporaryCable, changeId: randomUUID() },
    { type: 'applyChange' },
  ];

  it('shows after every step what the server answers to it later', async () => {
    await test.home.admin.post('/firmware-levels', { body: { model: 'Quellor R-9', minimum: '9.9' } });
    const { ticketId, chainId } = await openTestTicket(test);
    const [before, known] = [await read(ticketId), await knownOf(chainId)];
    const entries = visit.map((command, at) => entryOf(before, at + 1, command));
    for (const [at, command] of visit.entries()) {
      const ahead = project(before, entries.slice(0, at + 1), known, new Date().toISOString());
      expect([command.type, ahead.refused]).toEqual([command.type, null]);
      expect(ahead.ahead).toBe(at + 1);
      const answered = bodyOf<Ticket>(await send(test.home.technician, ticketId, command), 200);
      expect(unstamped(ahead.ticket)).toEqual(unstamped(answered));
    }
    expect((await read(ticketId)).state).toBe('substitute.applied');
  });

  it('is sent on what it was read with, and shows an erased text once it is read again', async () => {
    const { ticketId, chainId } = await openTestTicket(test);
    const { technician, admin } = test.home;
    bodyOf(await send(technician, ticketId, { type: 'note', text: 'The neighbour was at home.' }), 200);
    const [before, known] = [await read(ticketId), await knownOf(chainId)];
    const erasure = { event: before.sequence, pointer: '/text', reason: 'Names a neighbour.' };
    bodyOf(await admin.post(`/tickets/${ticketId}/erasures`, { body: erasure }), 200);
    const [first, second] = ['It hums.', 'It stopped.'].map((text): Command => ({ type: 'note', text }));
    if (first === undefined || second === undefined) throw new Error('two steps are needed');

    const ahead = project(before, [entryOf(before, 1, first)], known, new Date().toISOString());
    expect(ahead.ticket.triage.notes.map(({ text }) => text)).toEqual([
      'The neighbour was at home.',
      'It hums.',
    ]);
    const answered = bodyOf<Ticket>(await send(technician, ticketId, first), 200);
    expect(answered.triage.notes.map(({ text }) => erasureOf(text)?.by ?? text)).toEqual([
      admin.id,
      'It hums.',
    ]);
    const after = await read(ticketId);
    const next = project(after, [entryOf(after, 1, second)], known, new Date().toISOString());
    const then = bodyOf<Ticket>(await send(technician, ticketId, second), 200);
    expect(unstamped(next.ticket)).toEqual(unstamped(then));
  });

  it('finds its way back to the machine from every state that the API names', async () => {
    const { ticketId } = await openTestTicket(test);
    const ticket = await read(ticketId);
    expect(snapshotOf(ticket).value).toBe('baseline');
    expect(snapshotOf({ ...ticket, state: 'substitute.applied' }).value).toEqual({ substitute: 'applied' });
  });

  it('says at once what the machine would refuse, and what is allowed instead', async () => {
    const { ticketId, chainId } = await openTestTicket(test);
    const [ticket, known] = [await read(ticketId), await knownOf(chainId)];
    const early = ticketCommand.parse({ type: 'close' });
    const problem = wouldRefuse(ticket, early, known, new Date().toISOString());
    const answered = await send(test.home.technician, ticketId, { type: 'close' });
    expect(problem).toMatchObject({
      type: answered.body.type,
      status: answered.status,
      said: answered.body.said,
    });
    expect(withSentences(problem?.allowedNow, english)).toEqual(answered.body.allowedNow);
  });

  it('stops at an entry that was refused: what came after it was built on it', async () => {
    const { ticketId, chainId } = await openTestTicket(test);
    const [ticket, known] = [await read(ticketId), await knownOf(chainId)];
    const [first, second] = visit.slice(0, 2).map((command, at) => entryOf(ticket, at + 1, command));
    if (first === undefined || second === undefined) throw new Error('two steps are needed');
    const held = project(ticket, [{ ...first, state: 'conflict' }, second], known, new Date().toISOString());
    expect(held.ahead).toBe(0);
    expect(held.ticket.triage.whatChanged).toBeNull();
  });

  it('counts evidence that is still on the phone', async () => {
    const { ticketId, chainId } = await openTestTicket(test);
    const [ticket, known] = [await read(ticketId), await knownOf(chainId)];
    const madeAt = new Date().toISOString();
    const common = {
      ticketId,
      state: 'waiting',
      problem: null,
      mayHaveArrived: false,
      madeAt,
      basedOn: 1,
    } as const;
    const reading: OutboxEntry = {
      ...common,
      order: 1,
      id: randomUUID(),
      kind: 'reading',
      reading: {
        tie: { deviceId: 'receiver' },
        description: '',
        reading: { kind: 'firmware', level: '1.8' },
        takenAt: madeAt,
      },
    };
    const asked = (of: Ticket) => of.missing.filter(({ item }) => item === 'firmware').length;
    const found = visit.slice(0, 3).map((command, at) => entryOf(ticket, at + 1, command));
    const without = project(ticket, found, known, madeAt);
    const withIt = project(ticket, [...found, { ...reading, order: 9 }], known, madeAt);
    expect(withIt.refused).toBeNull();
    expect(asked(withIt.ticket)).toBe(asked(without.ticket) - 1);
  });
});
