import { describe, expect, it } from 'vitest';
import { segmentOf } from '../../../state-machines/index.ts';
import { cable, chainOf, display, processor, receiver, source } from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';

/** player → receiver → processor A → projector A, and receiver → processor B → projector B. */
const twoRooms = chainOf(
  [
    source('player'),
    receiver('receiver'),
    processor('processorA', { name: 'Processor A' }),
    processor('processorB', { name: 'Processor B' }),
    display('projectorA', { name: 'Projector A' }),
    display('projectorB', { name: 'Projector B', drawsMenu: false }),
  ],
  [
    cable('player.out1', 'receiver.in1', { id: 'L1' }),
    cable('receiver.out1', 'processorA.in1', { id: 'L2' }),
    cable('receiver.out2', 'processorB.in1', { id: 'L3' }),
    cable('processorA.out1', 'projectorA.in1', { id: 'L4' }),
    cable('processorB.out1', 'projectorB.in1', { id: 'L5' }),
  ],
);

describe('a watch for the side', () => {
  it('needs a device that draws a menu, in the chain, on a way to a display', () => {
    const ticket = new TriageCase({ chain: twoRooms }).reproduced();
    expect(ticket.refused({ type: 'startWatch' }).type).toBe('device-not-suitable');
    expect(ticket.refused({ type: 'startWatch', menuDeviceId: 'projectorB' })).toMatchObject({
      type: 'device-not-suitable',
      place: { kind: 'device', deviceId: 'projectorB' },
      said: { code: 'drawsNoMenu', values: { device: { deviceId: 'projectorB' } } },
    });
    expect(ticket.refused({ type: 'startWatch', menuDeviceId: 'nowhere' }).type).toBe('device-not-suitable');
    ticket.send({ type: 'startWatch', menuDeviceId: 'processorA' });
    expect(ticket.lastWatch).toMatchObject({ purpose: 'side', menuDeviceId: 'processorA' });
  });

  it('asks about the menu with every occurrence', () => {
    const ticket = new TriageCase().reproduced().send({ type: 'startWatch', menuDeviceId: 'processor' });
    expect(ticket.refused({ type: 'recordOccurrence' }).type).toBe('menu-answer-missing');
    ticket.send({ type: 'recordOccurrence', menu: 'stayed' });
    expect(ticket.lastWatch.occurrences).toMatchObject([{ menu: 'stayed' }]);
  });
});

describe('the side', () => {
  it('is upstream where the menu stayed, downstream where it vanished', () => {
    expect(new TriageCase().reproduced().side('processor', 'stayed').record.sides).toMatchObject([
      { deviceId: 'processor', side: 'input', proof: { kind: 'menu', occurrences: 1 }, withdrawn: null },
    ]);
    expect(new TriageCase().reproduced().side('processor', 'vanished').record.sides).toMatchObject([
      { deviceId: 'processor', side: 'output' },
    ]);
  });

  it('has no answer without an occurrence', () => {
    const ticket = new TriageCase().reproduced().menuWatch('processor');
    expect(ticket.refused({ type: 'concludeSide', deviceId: 'processor' }).type).toBe('no-occurrence');
    expect(ticket.allowed()).not.toContain('concludeSide');
    ticket.menuWatch('receiver', 'stayed');
    expect(ticket.refused({ type: 'concludeSide', deviceId: 'processor' }).type).toBe('no-occurrence');
  });

  it('has no answer while the watches at one device contradict each other', () => {
    const ticket = new TriageCase().reproduced().menuWatch('processor', 'stayed', 'vanished');
    const refusal = ticket.refused({ type: 'concludeSide', deviceId: 'processor' });
    expect(refusal).toMatchObject({
      type: 'side-contradiction',
      place: { kind: 'device', deviceId: 'processor' },
    });
    const wrong = ticket.lastWatch.occurrences[1]?.id ?? '';
    ticket.send({ type: 'withdrawOccurrence', occurrenceId: wrong, reason: 'I had closed the menu myself' });
    ticket.send({ type: 'concludeSide', deviceId: 'processor' });
    expect(ticket.record.sides).toMatchObject([{ side: 'input', proof: { kind: 'menu', occurrences: 1 } }]);
  });

  it('is not concluded at a device that a corrected chain no longer has', () => {
    const ticket = new TriageCase({ chain: twoRooms }).reproduced().menuWatch('processorB', 'stayed');
    const devices = twoRooms.devices.filter(({ id }) => id !== 'processorB' && id !== 'projectorB');
    const links = twoRooms.links.filter(({ id }) => id !== 'L3' && id !== 'L5');
    const corrected = { ...twoRooms, devices, links };
    ticket.sendWith({ chain: corrected }, { type: 'recordAsFound', chainVersion: 4 });
    expect(ticket.refused({ type: 'concludeSide', deviceId: 'processorB' }).type).toBe('device-not-suitable');
  });

  it('is not concluded while a watch runs, nor twice at one device', () => {
    const ticket = new TriageCase().reproduced().side('processor', 'stayed');
    const again = { type: 'concludeSide', deviceId: 'processor' } as const;
    expect(ticket.refused(again).type).toBe('not-allowed-now');
    ticket.send({ type: 'startWatch', menuDeviceId: 'processor' });
    expect(ticket.refused(again).type).toBe('watch-running');
    expect(ticket.refused({ type: 'beginSubstitution' }).type).toBe('watch-running');
  });

  it('at two devices may not be upstream of the first and downstream of the second', () => {
    const ticket = new TriageCase()
      .reproduced()
      .side('receiver', 'stayed')
      .menuWatch('processor', 'vanished');
    const refusal = ticket.refused({ type: 'concludeSide', deviceId: 'processor' });
    expect(refusal.type).toBe('side-contradiction');
    expect(refusal.said).toMatchObject({
      code: 'sidesContradict',
      values: {
        side: 'output',
        device: { deviceId: 'processor' },
        others: [{ code: 'sideOf', values: { side: 'input', device: { deviceId: 'receiver' } } }],
      },
    });
    ticket.send(
      { type: 'withdrawSide', deviceId: 'receiver', reason: 'Looked at the wrong menu' },
      { type: 'concludeSide', deviceId: 'processor' },
    );
    expect(ticket.record.sides).toMatchObject([
      { deviceId: 'receiver', withdrawn: { reason: 'Looked at the wrong menu' } },
      { deviceId: 'processor', withdrawn: null },
    ]);
  });

  it('may not be downstream of two devices on parallel branches', () => {
    const ticket = new TriageCase({ chain: twoRooms }).reproduced().side('processorA', 'vanished');
    ticket.menuWatch('processorB', 'vanished');
    expect(ticket.refused({ type: 'concludeSide', deviceId: 'processorB' }).type).toBe('side-contradiction');
  });

  it('has to be known before anything is changed', () => {
    const ticket = new TriageCase().reproduced();
    expect(ticket.refused({ type: 'beginSubstitution' }).type).toBe('side-unknown');
    expect(ticket.allowed()).not.toContain('beginSubstitution');
    expect(ticket.side('processor', 'stayed').send({ type: 'beginSubstitution' }).state).toBe(
      'substitute.ready',
    );
  });

  it('does not carry on when a later watch contradicts it', () => {
    const ticket = new TriageCase()
      .reproduced()
      .side('processor', 'stayed')
      .menuWatch('processor', 'vanished');
    expect(ticket.refused({ type: 'beginSubstitution' }).type).toBe('side-contradiction');
  });

  it('can be looked for again from substitution, with the answers so far', () => {
    const ticket = new TriageCase()
      .substituting()
      .send({ type: 'locateSideAgain', reason: 'Narrow it down' });
    expect(ticket.state).toBe('locateSide');
    expect(ticket.record.notes).toMatchObject([{ text: 'Narrow it down' }]);
    ticket.side('receiver', 'vanished').send({ type: 'beginSubstitution' });
    expect(ticket.record.sides).toHaveLength(2);
  });

  it('that was never concluded can’t be withdrawn', () => {
    const ticket = new TriageCase().reproduced().side('processor', 'stayed');
    const other = { type: 'withdrawSide', deviceId: 'receiver', reason: 'Wrong one' } as const;
    expect(ticket.refused(other).type).toBe('unknown-reference');
  });
});

describe('the segment that can still be at fault', () => {
  it('is unknown before the chain is, then everything', () => {
    expect(segmentOf(new TriageCase().record)).toBeNull();
    expect(segmentOf(new TriageCase().reproduced().record)).toMatchObject({
      deviceIds: ['player', 'streamer', 'receiver', 'processor', 'projector', 'television'],
      linkIds: ['L1', 'L2', 'L3', 'L4', 'L5'],
      upstreamDeviceId: null,
      downstreamDeviceId: null,
    });
  });

  it('upstream of the processor holds its input half, and not the parallel branch', () => {
    expect(segmentOf(new TriageCase().substituting().record)).toEqual({
      deviceIds: ['player', 'streamer', 'receiver', 'processor'],
      linkIds: ['L1', 'L2', 'L3'],
      inputHalfIds: ['player', 'streamer', 'receiver', 'processor'],
      outputHalfIds: ['player', 'streamer', 'receiver'],
      upstreamDeviceId: null,
      downstreamDeviceId: 'processor',
    });
  });

  it('downstream of the processor holds its output half', () => {
    expect(segmentOf(new TriageCase().substituting('processor', 'vanished').record)).toMatchObject({
      deviceIds: ['processor', 'projector'],
      linkIds: ['L4'],
      inputHalfIds: ['projector'],
      outputHalfIds: ['processor', 'projector'],
      upstreamDeviceId: 'processor',
      downstreamDeviceId: null,
    });
  });

  it('between two devices is what lies between their menus', () => {
    const ticket = new TriageCase().reproduced().side('receiver', 'vanished').side('processor', 'stayed');
    expect(segmentOf(ticket.record)).toEqual({
      deviceIds: ['receiver', 'processor'],
      linkIds: ['L3'],
      inputHalfIds: ['processor'],
      outputHalfIds: ['receiver'],
      upstreamDeviceId: 'receiver',
      downstreamDeviceId: 'processor',
    });
  });

  it('upstream of both rooms’ processors is the common trunk', () => {
    const ticket = new TriageCase({ chain: twoRooms })
      .reproduced()
      .side('processorA', 'stayed')
      .side('processorB', 'stayed');
    expect(segmentOf(ticket.record)).toMatchObject({ deviceIds: ['player', 'receiver'], linkIds: ['L1'] });
  });
});
