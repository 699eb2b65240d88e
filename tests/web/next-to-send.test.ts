import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isStopped, nextToSend, type OutboxEntry, outboxVersion } from '../../src/web/store/outbox-entry.ts';

const entry = (order: number, ticketId: string, part: Partial<OutboxEntry> = {}): OutboxEntry =>
  ({
    order,
    ticketId,
    id: `entry-${order}`,
    kind: 'command',
    command: { type: 'note', text: 'x' },
    afterUploads: false,
    state: 'waiting',
    problem: null,
    mayHaveArrived: false,
    madeAt: '2026-01-01T00:00:00.000Z',
    basedOn: 1,
    ...part,
  }) as OutboxEntry;
const upload = (order: number, ticketId: string, part: Partial<OutboxEntry> = {}): OutboxEntry =>
  entry(order, ticketId, { kind: 'upload', ...part } as Partial<OutboxEntry>);
const orders = (entries: readonly OutboxEntry[]): number[] => entries.map(({ order }) => order);

describe('what the outbox sends next', () => {
  it('is the first of every ticket', () => {
    const { writes, uploads } = nextToSend([entry(1, 'a'), entry(2, 'b'), entry(3, 'a')]);
    expect(orders(writes)).toEqual([1, 2]);
    expect(uploads).toEqual([]);
  });

  it('is a file only after the steps before it, and a step at once though files wait', () => {
    expect(orders(nextToSend([entry(1, 'a'), upload(2, 'a')]).uploads)).toEqual([]);
    const behindFiles = nextToSend([upload(1, 'a'), upload(2, 'a'), entry(3, 'a')]);
    expect(orders(behindFiles.uploads)).toEqual([1]);
    expect(orders(behindFiles.writes)).toEqual([3]);
  });

  it('is an escalation only after the files before it, and nothing overtakes it', () => {
    const escalation = entry(2, 'a', { afterUploads: true } as Partial<OutboxEntry>);
    const held = nextToSend([upload(1, 'a'), escalation, entry(3, 'a')]);
    expect(orders(held.writes)).toEqual([]);
    expect(orders(held.uploads)).toEqual([1]);
    expect(orders(nextToSend([escalation, entry(3, 'a')]).writes)).toEqual([2]);
    expect(orders(nextToSend([escalation, upload(3, 'a')]).writes)).toEqual([2]);
  });

  it('is nothing of a ticket behind a refusal, and goes on with the others', () => {
    const refused = entry(1, 'a', { state: 'refused' });
    const { writes, uploads } = nextToSend([refused, entry(2, 'a'), upload(3, 'a'), entry(4, 'b')]);
    expect(orders(writes)).toEqual([4]);
    expect(uploads).toEqual([]);
  });

  it('sends everything there is, once, each ticket in order, whatever it holds', () => {
    const any = fc.record({
      ticketId: fc.constantFrom('a', 'b', 'c'),
      kind: fc.constantFrom('command' as const, 'upload' as const),
      afterUploads: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(any, { maxLength: 30 }), (made) => {
        let left = made.map((part, at) => entry(at + 1, part.ticketId, part as Partial<OutboxEntry>));
        const sent: OutboxEntry[] = [];
        while (left.length > 0) {
          const { writes, uploads } = nextToSend(left);
          const now = [...writes, ...uploads];
          expect(now.length).toBeGreaterThan(0);
          expect(now.some(isStopped)).toBe(false);
          sent.push(...now);
          left = left.filter((one) => !now.includes(one));
        }
        expect(new Set(orders(sent)).size).toBe(made.length);
        for (const ticketId of ['a', 'b', 'c']) {
          const steps = sent.filter((one) => one.ticketId === ticketId && one.kind === 'command');
          expect(orders(steps)).toEqual(orders(steps).toSorted((a, b) => a - b));
        }
      }),
    );
  });

  it('leaves what a newer version of the client wrote to that one, with all of its ticket after it', () => {
    const newer = { ...entry(1, 'a'), version: outboxVersion + 1 };
    const held = nextToSend([newer, entry(2, 'a'), upload(3, 'a'), entry(4, 'b')]);
    expect(orders(held.writes)).toEqual([4]);
    expect(orders(held.uploads)).toEqual([]);
    expect(orders(nextToSend([{ ...newer, version: outboxVersion }]).writes)).toEqual([1]);
  });
});
