import { describe, expect, it } from 'vitest';
import type { Conversion, SignalSeen } from '../../../shared/contract/look.ts';
import type { Symptom } from '../../../shared/contract/triage.ts';
import { readingsAsFound, segmentOf, traceOf } from '../../../state-machines/index.ts';
import { boundsOf, nextToRead, type SignalLook } from '../../../state-machines/triage/trace.ts';
import { display, processor, receiver, rowOf, source, withDevice } from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';
import { type Sent, uuid } from './triage-events.ts';

/** player → receiver → processor → projector. */
const row = rowOf([source('player'), receiver('receiver'), processor('processor'), display('projector')]);
type Signal = Extract<SignalSeen, { kind: 'signal' }>;
const nothingTold: Signal = {
  kind: 'signal',
  resolution: null,
  refreshHz: null,
  bitsPerComponent: null,
  encoding: null,
  hdr: null,
  protection: null,
  linkGbps: null,
};
const hdr: Signal = { ...nothingTold, hdr: 'static', encoding: 'ycbcr422', bitsPerComponent: 12 };
const standard: Signal = { ...hdr, hdr: 'none', bitsPerComponent: 8 };
const none: SignalSeen = { kind: 'noSignal' };

type Read = {
  receives?: SignalSeen;
  sends?: SignalSeen;
  intended?: Conversion[];
  moment?: 'good' | 'bad';
};
/** Readings in the order in which they are given. */
const readings = (...reads: [string, Read][]): SignalLook[] =>
  reads.map(([deviceId, { receives = null, sends = null, intended = [], moment = 'bad' }], at) => ({
    id: uuid(at + 1),
    round: 1,
    what: { kind: 'signal', deviceId, moment, receives, sends, intended, sameAs: null },
    changeId: null,
    evidenceId: null,
    at: '2026-11-02T09:00:00.000Z',
    by: uuid(2),
    withdrawn: null,
  }));
const traced = (kind: Symptom['kind'], looks: SignalLook[], chain = row) => {
  const trace = traceOf({ chain, symptom: { kind } }, looks);
  if (trace === null) throw new Error('no way from a source to a display');
  return trace;
};

describe('the trace', () => {
  it('finds the first device that receives right and sends wrong', () => {
    const looks = readings(
      ['player', { sends: hdr }],
      ['receiver', { receives: hdr, sends: standard }],
      ['projector', { receives: standard }],
    );
    expect(traced('noHdr', looks).found).toEqual({ kind: 'device', deviceId: 'receiver' });
  });

  it('finds the first link whose two ends differ', () => {
    const looks = readings(
      [
        'receiver',
        { receives: { ...nothingTold, protection: '2.2' }, sends: { ...nothingTold, protection: '2.2' } },
      ],
      ['processor', { receives: { ...nothingTold, protection: 'none' } }],
      ['player', { sends: { ...nothingTold, protection: '2.2' } }],
    );
    expect(traced('contentProtectionMessage', looks).found).toEqual({
      kind: 'link',
      linkId: 'receiverout1-processorin1',
    });
  });

  it('takes a source that sends wrong for the first that does', () => {
    const looks = readings(['player', { sends: standard }], ['receiver', { receives: standard }]);
    expect(traced('noHdr', looks).found).toEqual({ kind: 'device', deviceId: 'player' });
  });

  it('compares a good moment with a bad one', () => {
    const at = (refreshHz: number): Signal => ({ ...nothingTold, refreshHz });
    const looks = readings(
      ['processor', { moment: 'good', receives: at(24), sends: at(60) }],
      ['processor', { receives: at(24), sends: at(50) }],
    );
    expect(traced('wrongRateOrResolution', looks).found).toEqual({ kind: 'device', deviceId: 'processor' });
    const upstream = readings(
      ['processor', { moment: 'good', receives: at(24), sends: at(24) }],
      ['processor', { receives: at(60), sends: at(60) }],
    );
    const { firstWrong, found } = traced('wrongRateOrResolution', upstream);
    expect(firstWrong).toMatchObject({ deviceId: 'processor', at: 'receives' });
    expect(found).toBeNull();
  });

  it.each<[Conversion, Symptom['kind'], Partial<Signal>]>([
    ['toneMapping', 'noHdr', { hdr: 'none' }],
    ['colourConversion', 'wrongColour', { encoding: 'rgb', bitsPerComponent: 8 }],
    ['colourConversion', 'noHdr', { encoding: 'rgb', bitsPerComponent: 8 }],
    ['dynamicHdrInRgb', 'noHdr', { hdr: 'none', encoding: 'rgb', bitsPerComponent: 8 }],
    ['scaling', 'wrongRateOrResolution', { resolution: { widthPx: 1920, heightPx: 1080 } }],
    ['rateConversion', 'wrongRateOrResolution', { refreshHz: 60 }],
  ])('takes %s that is meant for no loss', (conversion, kind, changed) => {
    const full: Signal = { ...hdr, resolution: { widthPx: 3840, heightPx: 2160 }, refreshHz: 24 };
    const after: Signal = { ...full, ...changed };
    const looks = (intended: Conversion[]) =>
      readings(
        ['player', { sends: full }],
        ['processor', { receives: full, sends: after, intended }],
        ['projector', { receives: after }],
      );
    expect(traced(kind, looks([conversion])).firstWrong).toBeNull();
    expect(traced(kind, looks([])).found).toEqual({ kind: 'device', deviceId: 'processor' });
  });

  it('takes what a device is set to send for right', () => {
    const format = {
      widthPx: 3840,
      heightPx: 2160,
      interlaced: false,
      refreshHz: 60,
      encoding: 'ycbcr420',
      bitsPerComponent: 10,
    } as const;
    const chain = withDevice(row, 'processor', { outputFormat: format });
    const at = (refreshHz: number): Signal => ({ ...nothingTold, refreshHz });
    const looks = readings(['player', { sends: at(24) }], ['processor', { receives: at(24), sends: at(60) }]);
    expect(traced('wrongRateOrResolution', looks, chain).firstWrong).toBeNull();
    expect(traced('wrongRateOrResolution', looks).firstWrong).not.toBeNull();
  });

  it('does not take a rounded rate for another one', () => {
    const at = (refreshHz: number): Signal => ({ ...nothingTold, refreshHz });
    const looks = readings(['player', { sends: at(59.94) }], ['receiver', { receives: at(60) }]);
    expect(traced('wrongRateOrResolution', looks).firstWrong).toBeNull();
  });

  it('sees a signal that stops', () => {
    const looks = readings(['receiver', { receives: nothingTold, sends: none }]);
    expect(traced('noPicture', looks).found).toEqual({ kind: 'device', deviceId: 'receiver' });
  });

  it('halves what is left with the next reading', () => {
    const read = (looks: SignalLook[]) => new Set(looks.map(({ what }) => what.deviceId));
    const none = readings();
    expect(nextToRead(traced('noHdr', none), read(none))[0]).toBe('receiver');
    const first = readings(['receiver', { receives: hdr, sends: hdr }]);
    expect(nextToRead(traced('noHdr', first), read(first))).toEqual(['processor', 'projector']);
    const both = [...first, ...readings(['processor', { receives: standard }])];
    expect(nextToRead(traced('noHdr', both), read(both))).toEqual([]);
  });
});

const read = (deviceId: string, said: Record<string, unknown>): Sent =>
  ({
    type: 'recordLook',
    what: { kind: 'signal', deviceId, moment: 'bad', said: { kind: 'read', ...said } },
  }) as Sent;
const lostHdr = {
  symptom: {
    kind: 'noHdr',
    perHour: null,
    lastsS: null,
    pattern: { kind: 'always' },
    onlyWith: null,
  },
} as const;

describe('a side by the trace', () => {
  const ticketWith = (...looks: Sent[]) =>
    new TriageCase({ chain: row, opening: lostHdr }).reproduced().send(...looks);
  const conclude = (deviceId: string): Sent => ({ type: 'concludeSide', deviceId, from: 'trace' });

  it('leaves the link between two devices where its ends differ', () => {
    const ticket = ticketWith(
      read('receiver', { receives: hdr, sends: hdr }),
      read('processor', { receives: standard, sends: standard }),
    ).send(conclude('receiver'), conclude('processor'));
    expect(segmentOf(ticket.record)).toMatchObject({
      linkIds: ['receiverout1-processorin1'],
      inputHalfIds: ['processor'],
      outputHalfIds: ['receiver'],
    });
    ticket.send({ type: 'beginSubstitution' });
    expect(ticket.state).toBe('substitute.ready');
  });

  it('leaves a device that receives right and sends wrong, and what told it so, as far as an EDID is passed on', () => {
    const ticket = ticketWith(
      read('player', { sends: hdr }),
      read('receiver', { receives: hdr, sends: standard }),
    ).send(conclude('receiver'));
    expect(ticket.record.sides).toMatchObject([
      { deviceId: 'receiver', side: 'output', proof: { kind: 'trace', sendsWrong: true } },
    ]);
    expect(segmentOf(ticket.record)?.deviceIds).toEqual(['receiver', 'processor', 'projector']);
    expect(segmentOf(ticket.record)?.linkIds).not.toContain('playerout1-receiverin1');
  });

  it('bounds itself by the last device that is right and the first that is not', () => {
    const looks = readings(['receiver', { sends: hdr }], ['projector', { receives: standard }]);
    expect(boundsOf(traced('noHdr', looks))).toEqual(['receiver', 'projector']);
  });

  it('is refused where nothing was read, and of readings with a change in place', () => {
    const ticket = ticketWith(read('player', { sends: hdr }));
    expect(ticket.refused(conclude('processor')).said.code).toBe('traceSaysNothing');
    ticket.send({ type: 'goOnWithoutSide', reason: 'Cannot read more' });
    ticket
      .declare('reseat', { kind: 'link', linkId: 'receiverout1-processorin1' })
      .send({ type: 'applyChange' });
    ticket.send(read('processor', { receives: hdr }));
    expect(ticket.record.looks.at(-1)).toMatchObject({ changeId: ticket.lastChange.id });
    expect(
      traceOf({ chain: row, symptom: lostHdr.symptom }, readingsAsFound(ticket.record))?.points,
    ).toHaveLength(1);
  });

  it('is decided anew when another reading says something else, and falls when its reading is withdrawn', () => {
    const ticket = ticketWith(read('processor', { receives: hdr, sends: standard })).send(
      conclude('processor'),
    );
    ticket.send(read('processor', { receives: standard, sends: standard }));
    expect(ticket.log.at(-1)).toMatchObject({ type: 'sideRevised', outcome: { side: 'input' } });
    for (const { id } of ticket.record.looks)
      ticket.send({ type: 'withdrawLook', lookId: id, reason: 'Read off the wrong page' });
    expect(ticket.log.at(-1)).toMatchObject({ type: 'sideRevised', outcome: null });
    expect(ticket.state).toBe('locateSide');
  });

  it('is for devices without a menu too, and replays to the same record', () => {
    const chain = withDevice(row, 'receiver', { drawsMenu: false });
    const ticket = new TriageCase({ chain, opening: lostHdr })
      .reproduced()
      .send(read('receiver', { receives: hdr, sends: standard }), conclude('receiver'));
    expect(ticket.replayed()).toEqual(ticket.snapshot);
  });
});
