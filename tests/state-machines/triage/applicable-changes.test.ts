import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeExists } from '../../../shared/chain/place.ts';
import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { LookSent } from '../../../shared/contract/look.ts';
import type { ChangeKind } from '../../../shared/contract/triage.ts';
import { applicableChanges, segmentOf } from '../../../state-machines/index.ts';
import { arbitraryChain } from '../../chain/arbitrary-chain.ts';
import {
  cable,
  chainOf,
  display,
  homeCinema,
  matrixSwitch,
  opticalCable,
  processor,
  source,
  tmds9,
  withDevice,
  withLink,
  withPort,
} from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';
import { device, link, port, type Sent } from './triage-events.ts';

type Answer = [deviceId: string, menu: 'stayed' | 'vanished'];

function onSide(chain: Chain, ...answers: Answer[]): TriageCase {
  const ticket = new TriageCase({ chain }).reproduced();
  for (const [deviceId, menu] of answers) ticket.side(deviceId, menu);
  return ticket.send({ type: 'beginSubstitution' });
}

const targets = (ticket: TriageCase, kind: ChangeKind): Place[] =>
  applicableChanges(ticket.snapshot)
    .filter((change) => change.kind === kind)
    .map(({ target }) => target);
const whyNot = (ticket: TriageCase, kind: ChangeKind, target: Place): string =>
  ticket.refused({ type: 'declareChange', kind, target, expected: 'It stays away' }).said.code;

const upstream = (chain: Chain = homeCinema()) => onSide(chain, ['processor', 'stayed']);
const downstream = (chain: Chain = homeCinema()) => onSide(chain, ['processor', 'vanished']);

describe('by side', () => {
  it('nothing applies before a side is known', () => {
    expect(applicableChanges(new TriageCase().reproduced().snapshot)).toEqual([]);
  });

  it('upstream of the processor: the links and devices before it', () => {
    const ticket = upstream();
    expect(targets(ticket, 'reseat')).toEqual([link('L1'), link('L2'), link('L3')]);
    expect(targets(ticket, 'sourceIntoProcessor')).toEqual([device('player'), device('streamer')]);
    expect(targets(ticket, 'limitInputBandwidth')).toEqual([device('receiver'), device('processor')]);
    expect(targets(ticket, 'substituteDisplay')).toEqual([]);
    expect(targets(ticket, 'moveProcessorToDisplay')).toEqual([]);
  });

  it('downstream of the processor: no change on the source side', () => {
    const ticket = downstream();
    expect(targets(ticket, 'reseat')).toEqual([link('L4')]);
    expect(targets(ticket, 'sourceIntoProcessor')).toEqual([]);
    expect(targets(ticket, 'unplugBranch')).toEqual([]);
    expect(targets(ticket, 'reissueHotPlug')).toEqual([]);
    expect(targets(ticket, 'limitOutputBandwidth')).toEqual([device('processor')]);
    expect(targets(ticket, 'limitInputBandwidth')).toEqual([device('projector')]);
    expect(targets(ticket, 'moveProcessorToDisplay')).toEqual([device('processor')]);
    expect(targets(ticket, 'substituteDisplay')).toEqual([device('projector')]);
    expect(targets(ticket, 'bypassDevice')).toEqual([device('processor')]);
  });

  it('between two menus: the one cable, the output before it and the input behind it', () => {
    const ticket = onSide(homeCinema(), ['receiver', 'vanished'], ['processor', 'stayed']);
    expect(targets(ticket, 'replaceCable')).toEqual([link('L3')]);
    expect(targets(ticket, 'limitOutputBandwidth')).toEqual([device('receiver')]);
    expect(targets(ticket, 'limitInputBandwidth')).toEqual([device('processor')]);
    expect(targets(ticket, 'movePort')).toEqual([port('processor', 'in1')]);
  });
});

describe('by what the chain has', () => {
  it('a cable in the wall is bridged, a short free one replaced, one in a conduit either', () => {
    const ticket = upstream(
      withLink(withLink(homeCinema(), 'L1', { route: 'inWall' }), 'L2', { route: 'inConduit' }),
    );
    expect(targets(ticket, 'replaceCable')).toEqual([link('L2'), link('L3')]);
    expect(targets(ticket, 'temporaryCable')).toEqual([link('L1'), link('L2')]);
    expect(whyNot(ticket, 'replaceCable', link('L1'))).toBe('cableInWall');
    expect(whyNot(ticket, 'temporaryCable', link('L3'))).toBe('cableShortAndFree');
  });

  it('a source goes straight into the processor only past something else', () => {
    const direct = chainOf(
      [source('player'), processor('processor'), display('projector')],
      [
        cable('player.out1', 'processor.in1', { id: 'L1' }),
        cable('processor.out1', 'projector.in1', { id: 'L2' }),
      ],
    );
    expect(whyNot(upstream(direct), 'sourceIntoProcessor', device('player'))).toBe('straightIntoProcessor');
    expect(whyNot(upstream(), 'sourceIntoProcessor', device('receiver'))).toBe('doneAtRoles');
    const none = chainOf(
      [source('player'), matrixSwitch('switch'), display('projector')],
      [cable('player.out1', 'switch.in1', { id: 'L1' }), cable('switch.out1', 'projector.in1', { id: 'L2' })],
    );
    expect(whyNot(onSide(none, ['projector', 'stayed']), 'sourceIntoProcessor', device('player'))).toBe(
      'noProcessorFollows',
    );
  });

  it('neither a source nor a display is bypassed', () => {
    const ticket = upstream();
    expect(targets(ticket, 'bypassDevice')).toEqual([device('receiver'), device('processor')]);
    expect(whyNot(ticket, 'bypassDevice', device('player'))).toBe('cannotBypass');
    expect(whyNot(downstream(), 'bypassDevice', device('projector'))).toBe('cannotBypass');
  });

  it('a branch is unplugged only where one runs parallel to the picture that is watched', () => {
    const ticket = upstream();
    expect(targets(ticket, 'unplugBranch')).toEqual([link('L5')]);
    expect(whyNot(ticket, 'unplugBranch', link('L3'))).toBe('watchedPictureRunsThrough');
    expect(whyNot(ticket, 'unplugBranch', link('L1'))).toBe('noParallelBranch');
  });

  it('a plug moves only to a port that is free', () => {
    const ticket = upstream();
    expect(targets(ticket, 'movePort')).toEqual([
      port('receiver', 'in1'),
      port('receiver', 'in2'),
      port('processor', 'in1'),
    ]);
    expect(whyNot(ticket, 'movePort', port('receiver', 'out1'))).toBe('noOtherOutput');
    expect(whyNot(ticket, 'movePort', port('receiver', 'in3'))).toBe('nothingPluggedIn');
  });

  it('a port’s mode is raised only where it is set below what the port can', () => {
    const onAutomatic = withPort(homeCinema(), 'receiver', 'in2', { setMode: null });
    const ticket = upstream(withPort(onAutomatic, 'receiver', 'in1', { setMode: tmds9 }));
    expect(targets(ticket, 'raisePortMode')).toEqual([port('receiver', 'in1')]);
    expect(whyNot(ticket, 'raisePortMode', port('receiver', 'in2'))).toBe('lookAtPortModeFirst');
    ticket.send(lookAt('in2', { kind: 'automatic' }));
    expect(whyNot(ticket, 'raisePortMode', port('receiver', 'in2'))).toBe('portModeNotSet');
    ticket.send(lookAt('in2', { kind: 'set', mode: tmds9 }));
    expect(targets(ticket, 'raisePortMode')).toEqual([port('receiver', 'in1'), port('receiver', 'in2')]);
    const full = upstream(
      withPort(homeCinema(), 'receiver', 'in1', { setMode: { kind: 'tmds', maxCharacterRateMHz: 600 } }),
    );
    expect(whyNot(full, 'raisePortMode', port('receiver', 'in1'))).toBe('portModeHighest');
  });

  it('processing and EDID management are switched off only where they are on', () => {
    const busy = withDevice(
      withDevice(homeCinema(), 'receiver', { edidHandling: { kind: 'replaces', edidHex: null } }),
      'processor',
      { processesPicture: true },
    );
    expect(targets(upstream(busy), 'disableProcessing')).toEqual([device('receiver'), device('processor')]);
    expect(targets(upstream(), 'disableProcessing')).toEqual([]);
  });

  it('bandwidth is limited to 9 Gbit/s only where more passes', () => {
    const limited = withPort(homeCinema(), 'processor', 'in1', { setMode: tmds9 });
    expect(targets(upstream(limited), 'limitInputBandwidth')).toEqual([device('receiver')]);
    expect(whyNot(upstream(limited), 'limitInputBandwidth', device('processor'))).toBe('inputLimitedAlready');
  });

  it('the processor moves to the display only from further than the short cable reaches', () => {
    const near = withLink(homeCinema(), 'L4', { lengthM: 3 });
    expect(whyNot(downstream(near), 'moveProcessorToDisplay', device('processor'))).toBe('joinedWithin');
  });

  it('settings are restored only where earlier ones are known', () => {
    expect(targets(upstream(), 'restoreSettings')).toEqual([]);
    const known = withDevice(homeCinema(), 'receiver', { settings: { EDID: 'auto' } });
    expect(targets(upstream(known), 'restoreSettings')).toEqual([device('receiver')]);
    const read = upstream();
    read.addEvidence({ kind: 'settings', tie: { deviceId: 'processor' } });
    expect(targets(read, 'restoreSettings')).toEqual([device('processor')]);
  });
});

describe('firmware', () => {
  const short = chainOf(
    [source('player'), processor('processor'), display('projector')],
    [
      cable('player.out1', 'processor.in1', { id: 'L1' }),
      opticalCable('processor.out1', 'projector.in1', { id: 'L2' }),
    ],
  );

  it('comes last: while anything else is untried, the reason names it', () => {
    const ticket = upstream(short);
    expect(targets(ticket, 'updateFirmware')).toEqual([]);
    expect(whyNot(ticket, 'updateFirmware', device('player'))).toBe('untriedFirst');
    for (;;) {
      const next = applicableChanges(ticket.snapshot).find(
        (change) => !change.tried && change.kind !== 'updateFirmware',
      );
      if (next === undefined) break;
      ticket.tried(next.kind, next.target, 'persists').send({ type: 'restoreChange' });
    }
    expect(targets(ticket, 'updateFirmware')).toEqual([device('player'), device('processor')]);
    expect(ticket.record.changes.length).toBeGreaterThan(4);
  });

  it('comes at once below the level that the organisation has set', () => {
    const ticket = new TriageCase({ chain: short });
    ticket.sendWith({ firmwareBelowLevel: ['processor'] }, { type: 'reviewAudit', chainVersion: 3 });
    ticket.send(
      { type: 'answerWhatChanged', answers: [{ kind: 'nothing' }] },
      { type: 'recordAsFound', chainVersion: 3 },
    );
    ticket.watch(60, 6).send({ type: 'acceptReproduction' }).side('processor', 'stayed');
    expect(targets(ticket, 'updateFirmware')).toEqual([device('processor')]);
  });
});

type Found = Extract<LookSent, { kind: 'portMode' }>['found'];
const lookAt = (portId: string, found: Found): Sent => ({
  type: 'recordLook',
  what: { kind: 'portMode', deviceId: 'receiver', portId, found },
});

describe('on any chain, with any side', () => {
  const cases = arbitraryChain().chain((chain) => {
    const withMenus = chain.devices.filter(({ drawsMenu }) => drawsMenu);
    return fc.record({
      chain: fc.constant(chain),
      deviceId: fc.constantFrom(...(withMenus.length > 0 ? withMenus : chain.devices).map(({ id }) => id)),
      menu: fc.constantFrom('stayed' as const, 'vanished' as const),
    });
  });

  it('every applicable change is accepted when declared, is at a place of the chain, and touches the segment', () => {
    fc.assert(
      fc.property(cases, fc.nat(), ({ chain, deviceId, menu }, pick) => {
        fc.pre(chain.devices.some(({ id, drawsMenu }) => id === deviceId && drawsMenu));
        const known = { menuSurvivesLossOfInput: 'yes', menuKeepsFormat: 'yes' } as const;
        const ticket = onSide(withDevice(chain, deviceId, known), [deviceId, menu]);
        const changes = applicableChanges(ticket.snapshot);
        const segment = segmentOf(ticket.record);
        for (const { kind, target } of changes) {
          expect(placeExists(chain, target)).toBe(true);
          if (kind === 'reseat' && target.kind === 'link') expect(segment?.linkIds).toContain(target.linkId);
          if (kind === 'bypassDevice' && target.kind === 'device') {
            expect(segment?.deviceIds).toContain(target.deviceId);
          }
        }
        const change = changes[pick % Math.max(1, changes.length)];
        if (change === undefined) return;
        ticket.declare(change.kind, change.target);
        expect(ticket.state).toBe('substitute.declared');
        expect(ticket.lastChange.diagnostic).toBe(change.diagnostic);
      }),
      { numRuns: 60 },
    );
  });
});
