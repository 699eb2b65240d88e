import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chain, ContentProtectionVersion } from '../../../shared/contract/chain.ts';
import {
  cablesBehindVersionMessage,
  chainProtection,
} from '../../../shared/signal/content-protection/index.ts';
import { arbitraryChain } from '../../chain/arbitrary-chain.ts';
import {
  cable,
  chainOf,
  display,
  homeCinema,
  input,
  output,
  receiver,
  rowOf,
  source,
  splitter,
  withPort,
} from '../../chain/build-chain.ts';

const pair = (from: ContentProtectionVersion, to: ContentProtectionVersion): Chain =>
  rowOf([
    source('s', { ports: [output('out1', { contentProtection: from })] }),
    display('d', { ports: [input('in1', { contentProtection: to })] }),
  ]);

describe('a hop', () => {
  it.each([
    ['2.3', '2.2', '2.2', 'yes', 'yes'],
    ['2.2', '1.4', '1.4', 'yes', 'no'],
    ['1.4', '2.3', '1.4', 'yes', 'no'],
    ['2.3', '2.3', '2.3', 'yes', 'yes'],
    ['none', '2.2', 'none', 'no', 'no'],
    ['unknown', '2.2', 'unknown', 'unknown', 'unknown'],
    ['unknown', '1.4', 'unknown', 'unknown', 'no'],
    ['unknown', 'none', 'none', 'no', 'no'],
  ] as const)(
    'of %s and %s ends up at %s; type 0 goes: %s, type 1: %s',
    (from, to, version, type0, type1) => {
      const [asType0] = chainProtection(pair(from, to), 'type0').hops;
      const [asType1] = chainProtection(pair(from, to), 'type1').hops;
      expect(asType0).toMatchObject({ version, allowed: type0 });
      expect(asType1).toMatchObject({ version, allowed: type1 });
    },
  );

  it('says which end is too old', () => {
    const [hop] = chainProtection(pair('2.3', '1.4')).hops;
    expect(hop?.sentence).toMatchObject({
      code: 'hopTooOldForType1',
      values: {
        link: { linkId: hop?.linkId },
        ends: [{ code: 'endDoes', values: { port: { device: { deviceId: hop?.sinkId } }, version: '1.4' } }],
      },
    });
  });
});

describe('content over a chain', () => {
  const shownOn = (chain: Chain, displayId: string) =>
    chainProtection(chain).displays.find(
      (each) => each.displayId === displayId && each.sourceId === 'player',
    );

  it('of stream type 1 reaches each display whose every hop does 2.2', () => {
    const old = withPort(homeCinema(), 'television', 'in1', { contentProtection: '1.4' });
    expect(shownOn(old, 'projector')).toMatchObject({ shown: 'yes', linkId: null });
    expect(shownOn(old, 'television')).toMatchObject({ shown: 'no', linkId: 'L5' });
  });

  it('stops at a repeater that is too old, wherever the display is', () => {
    const old = withPort(homeCinema(), 'receiver', 'in1', { contentProtection: '1.4' });
    expect(shownOn(old, 'projector')).toMatchObject({ shown: 'no', linkId: 'L1' });
    expect(shownOn(old, 'projector')?.sentence).toMatchObject({
      code: 'type1NotShown',
      values: { hop: { code: 'hopTooOldForType1', values: { link: { linkId: 'L1' } } } },
    });
  });

  it('is not known where an end is not recorded', () => {
    const open = withPort(homeCinema(), 'projector', 'in1', { contentProtection: 'unknown' });
    expect(shownOn(open, 'projector')).toMatchObject({ shown: 'unknown', linkId: 'L4' });
  });

  it('never reaches more displays the stricter it is', () => {
    const version = fc.constantFrom<ContentProtectionVersion>('none', '1.4', '2.2', '2.3', 'unknown');
    fc.assert(
      fc.property(arbitraryChain(), fc.array(version, { minLength: 1, maxLength: 20 }), (made, versions) => {
        let at = 0;
        const next = () => versions[at++ % versions.length] ?? 'none';
        const devices = made.devices.map((device) => ({
          ...device,
          ports: device.ports.map((port) => ({ ...port, contentProtection: next() })),
        }));
        const [loose, strict] = (['type0', 'type1'] as const).map((demand) =>
          chainProtection({ ...made, devices }, demand).displays.filter(({ shown }) => shown === 'yes'),
        );
        const key = ({ sourceId, displayId }: { sourceId: string; displayId: string }) =>
          `${sourceId} ${displayId}`;
        expect(loose?.map(key)).toEqual(expect.arrayContaining(strict?.map(key) ?? []));
      }),
    );
  });
});

describe('what hangs behind a source', () => {
  const receivers = (count: number) => Array.from({ length: count }, (_, at) => receiver(`r${at}`));

  // HDCP 2.2 on HDMI (from memory): no more than four levels behind the first repeater; HDCP 1.4: seven.
  it('is too deep for 2.x past four levels, and for 1.x past seven', () => {
    const deep = (levels: number, contentProtection: ContentProtectionVersion) => {
      const first = source('s', { ports: [output('out1', { contentProtection })] });
      return chainProtection(rowOf([first, ...receivers(levels), display('d')])).topology[0];
    };
    expect(deep(4, '2.2')).toMatchObject({
      levels: 4,
      devices: 4,
      within: true,
      limit: { levels: 4, devices: 31 },
    });
    expect(deep(5, '2.2')).toMatchObject({ levels: 5, within: false });
    expect(deep(5, '1.4')).toMatchObject({ levels: 5, within: true, limit: { levels: 7, devices: 127 } });
    expect(deep(8, '1.4')).toMatchObject({ within: false });
    expect(deep(5, '2.2')?.sentence).toMatchObject({
      code: 'tooMuchBehindSource',
      values: { first: { deviceId: 'r0' }, devices: 5, levels: 5, allowedDevices: 31, allowedLevels: 4 },
    });
  });

  it('is too many for 2.x past 31 devices', () => {
    const wide = (count: number) => {
      const ports = [input('in1'), ...Array.from({ length: 40 }, (_, at) => output(`out${at}`))];
      const displays = Array.from({ length: count }, (_, at) => display(`d${at}`));
      return chainProtection(
        chainOf(
          [source('s'), splitter('p', { ports }), ...displays],
          [cable('s.out1', 'p.in1'), ...displays.map(({ id }, at) => cable(`p.out${at}`, `${id}.in1`))],
        ),
      ).topology[0];
    };
    expect(wide(31)).toMatchObject({ devices: 31, levels: 1, within: true });
    expect(wide(32)).toMatchObject({ devices: 32, within: false });
  });

  it('ends on a loop', () => {
    const loop = chainOf(
      [source('s'), receiver('a'), receiver('b')],
      [cable('s.out1', 'a.in1'), cable('a.out1', 'b.in1'), cable('b.out1', 'a.in2')],
    );
    expect(chainProtection(loop).topology).toHaveLength(1);
  });
});

describe('a message that a display lacks the newer version', () => {
  // Common practice, no source: the cable is it, above all an active optical one.
  it('points at the cables on the way, the optical one first', () => {
    const suspects = cablesBehindVersionMessage(homeCinema(), 'projector');
    expect(suspects.map(({ linkId }) => linkId)).toEqual(['L4', 'L1', 'L2', 'L3']);
    expect(suspects.map(({ sentence }) => sentence.code)).toEqual([
      'suspectOpticalCable',
      ...Array(3).fill('suspectCable'),
    ]);
  });

  it('is taken at its word where the record says so too', () => {
    const old = withPort(homeCinema(), 'projector', 'in1', { contentProtection: '1.4' });
    expect(cablesBehindVersionMessage(old, 'projector')).toEqual([]);
  });
});
