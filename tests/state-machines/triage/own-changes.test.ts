import { describe, expect, it } from 'vitest';
import type { Place } from '../../../shared/contract/chain.ts';
import type { ChangeKind } from '../../../shared/contract/change.ts';
import type { OwnChange } from '../../../shared/contract/own-change.ts';
import { applicableChanges } from '../../../state-machines/index.ts';
import { careFor } from '../../../state-machines/triage/changes/described.ts';
import { homeCinema } from '../../chain/build-chain.ts';
import { TriageCase } from './triage-case.ts';
import { device, link, uuid } from './triage-events.ts';

const ferrites: OwnChange = {
  id: uuid(800),
  name: 'Clip ferrites on',
  actsOn: 'link',
  reachesNeighbours: false,
  setupMin: 4,
  restoreMin: 2,
  kit: 'two ferrites',
  caution: 'Open no housing.',
  byClient: null,
  mayStay: true,
  keepsAway: 0.4,
};
const declared = { type: 'declareChange', target: link('L3'), expected: 'It stays away' } as const;
const upstream = () => new TriageCase().substituting('processor', 'stayed');

const codesFor = (change: Parameters<typeof careFor>[1]): string[] =>
  careFor(homeCinema(), change).map(({ code }) => code);

describe('what to take care of', () => {
  it.each<[ChangeKind, Place, readonly string[]]>([
    ['flexCable', link('L1'), ['cautionFlexByHand', 'cautionMains']],
    ['powerCycle', device('receiver'), ['cautionPowerOff']],
    ['mainsOffForAll', { kind: 'chain' }, ['cautionMainsOrder', 'cautionMains']],
    ['otherOutlet', device('receiver'), ['cautionPowerOff', 'cautionEarth']],
    ['otherSupply', device('receiver'), ['cautionSupply', 'cautionPowerOff']],
    ['clearVents', device('receiver'), ['cautionHeat', 'cautionMains']],
    ['warmByUse', device('receiver'), ['cautionHeat']],
    ['controlBusOff', device('receiver'), ['cautionReturnAudio']],
    ['removeCoupler', link('L1'), ['cautionMains']],
    ['disconnectDisturber', { kind: 'chain' }, ['cautionOthersAppliances']],
    ['unplugAerial', { kind: 'chain' }, ['cautionEarth', 'cautionThunderstorm']],
    ['unplugNetwork', { kind: 'chain' }, ['cautionEarth', 'cautionOthersAppliances']],
    ['oneSocketCircuit', { kind: 'chain' }, ['cautionEarth', 'cautionCableAcrossFloor', 'cautionMains']],
    ['otherWakeOrder', { kind: 'chain' }, ['cautionBeam']],
    ['ownRemotes', { kind: 'chain' }, ['cautionBeam']],
    ['otherChange', { kind: 'chain' }, ['cautionMains']],
    ['otherChange', device('projector'), ['cautionMains', 'cautionDisplay']],
  ])('is said of %s at a place', (kind, target, cautions) => {
    expect(codesFor({ kind, target })).toEqual(cautions);
  });

  it('never speaks of a ladder where a cable is flexed from the floor, and does where it is reseated', () => {
    const atDisplay = homeCinema().links.find(({ to }) => to.deviceId === 'projector');
    const target = link(atDisplay?.id ?? '');
    expect(codesFor({ kind: 'flexCable', target })).not.toContain('cautionDisplay');
    expect(codesFor({ kind: 'reseat', target })).toContain('cautionDisplay');
  });

  it('is what the organisation says of its own kind, then what the place asks for', () => {
    const care = careFor(homeCinema(), { kind: 'ownKind', target: device('projector'), own: ferrites });
    expect(care.map(({ code }) => code)).toEqual(['asWritten', 'cautionDisplay']);
    expect(care[0]?.values).toEqual({ sentence: ferrites.caution });
  });
});

describe('a change described in words', () => {
  const another = { ...declared, kind: 'otherChange' } as const;

  it('is refused without a description', () => {
    expect(upstream().refused(another).said.code).toBe('describeTheChange');
  });

  it('may stay only where whoever declares it said so', () => {
    const detail = 'Turned the plug round';
    const staying = upstream();
    staying.send({ ...another, detail, mayStay: true });
    expect(staying.lastChange).toMatchObject({ diagnostic: false, detail, own: null });
    const going = upstream();
    going.send({ ...another, detail });
    expect(going.lastChange.diagnostic).toBe(true);
  });
});

describe('an organisation’s own kind', () => {
  const own = { ...declared, kind: 'ownKind', ownKindId: ferrites.id } as const;

  it('applies to each place of its kind on the side of the fault, with its minutes, kit and caution', () => {
    const found = applicableChanges(upstream().snapshot, { ownChanges: [ferrites] }).filter(
      (change) => change.own?.id === ferrites.id,
    );
    expect(found.map(({ target }) => target)).toEqual([link('L1'), link('L2'), link('L3')]);
    expect(found[0]).toMatchObject({ setupMin: 4, restoreMin: 2, diagnostic: false });
    expect([found[0]?.needs, found[0]?.caution].flat()).toHaveLength(2);
  });

  it('is copied into the declaration, so that nothing has to be looked up again', () => {
    const ticket = upstream();
    ticket.sendWith({ ownChanges: [ferrites] }, own);
    expect(ticket.lastChange).toMatchObject({ own: ferrites, diagnostic: false });
  });

  it('is refused where the organisation has none such', () => {
    expect(upstream().refused(own).said.code).toBe('ownKindUnknown');
  });
});
