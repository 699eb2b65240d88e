import { describe, expect, it } from 'vitest';
import { chainDiff } from '../../shared/chain/diff.ts';
import type { ChainVersionRef } from '../../shared/contract/site.ts';
import type { Ticket } from '../../shared/contract/ticket.ts';
import { historyAt } from '../../src/web/place/history.ts';
import { homeCinema } from '../chain/build-chain.ts';
import { TriageCase } from '../state-machines/triage/triage-case.ts';
import { device, link } from '../state-machines/triage/triage-events.ts';

const ticketOf = (played: TriageCase, number: number) =>
  ({ id: `id-${number}`, number, triage: played.record }) as Ticket;

describe('what happened at a device or cable before', () => {
  const chain = homeCinema();
  const found = new TriageCase()
    .substituting()
    .tried('replaceCable', link('L3'), 'cleared')
    .send({ type: 'restoreChange' });
  found.send({
    type: 'nameCulprit',
    changeId: found.lastChange.id,
    place: link('L3'),
    explanation: 'Kinked behind the rack',
    confirmation: { kind: 'notDone', reason: 'The client had to leave' },
  });
  found.send({ type: 'chooseRemedy', remedy: { kind: 'permanent', what: 'A new cable' } });
  const declared = new TriageCase().substituting().declare('reseat', link('L2'));

  it('is the cause with its repair, and each change that was made, of the tickets that say so', () => {
    const past = historyAt(link('L3'), [ticketOf(found, 4), ticketOf(declared, 9)], []);
    expect(past.map(({ kind }) => kind).sort()).toEqual(['change', 'culprit']);
    expect(past.find(({ kind }) => kind === 'culprit')).toMatchObject({
      ticket: { number: 4 },
      culprit: { explanation: 'Kinked behind the rack' },
      remedy: { kind: 'permanent' },
    });
    expect(past.find(({ kind }) => kind === 'change')).toMatchObject({
      change: { kind: 'replaceCable', judgement: { verdict: 'cleared' } },
    });
    expect(historyAt(device('receiver'), [ticketOf(found, 4)], [])).toEqual([]);
  });

  it('is no change that was only declared', () => {
    expect(historyAt(link('L2'), [ticketOf(declared, 9)], [])).toEqual([]);
  });

  it('is what versions of the chain changed of it, newest first, and not the first description', () => {
    const serial = {
      ...chain,
      devices: chain.devices.map((one) => (one.id === 'receiver' ? { ...one, serial: 'RX-2' } : one)),
    };
    const longer = {
      ...serial,
      links: serial.links.map((one) => (one.id === 'L3' ? { ...one, lengthM: one.lengthM + 1 } : one)),
    };
    const stages = [chain, serial, longer];
    const versions = stages.map(
      (after, at): ChainVersionRef => ({
        version: at + 1,
        changedBy: 'id-of-oda',
        changedByName: 'Oda',
        changedAt: `2026-0${at + 1}-01T00:00:00.000Z`,
        changes: chainDiff(stages[at - 1] ?? chain, after).map(({ sentence }) => sentence),
      }),
    );
    const versionsAt = (place: Parameters<typeof historyAt>[0]) =>
      historyAt(place, [], versions).map((past) => past.kind === 'version' && past.version);
    expect(versionsAt(device('receiver'))).toEqual([2]);
    expect(versionsAt(link('L3'))).toEqual([3]);
    expect(versionsAt(link('L1'))).toEqual([]);
    const mixed = historyAt(link('L3'), [ticketOf(found, 4)], versions).map(({ at }) => at);
    expect(mixed).toEqual(mixed.toSorted().reverse());
    expect(mixed).toHaveLength(3);
  });
});
