import { describe, expect, it } from 'vitest';
import type { Chain } from '../../shared/contract/chain.ts';
import {
  cable,
  chainOf,
  display,
  frl48,
  homeCinema,
  input,
  output,
  receiver,
  source,
  tmds9,
  tmds18,
  withDevice,
  withPort,
} from '../chain/build-chain.ts';
import { only, seen } from './audit-findings.ts';

const cinema = homeCinema();

describe('ports', () => {
  const twoOutputs = (one: Parameters<typeof output>[1], other: Parameters<typeof output>[1]): Chain =>
    withDevice(cinema, 'receiver', {
      ports: [
        input('in1', { setMode: tmds18 }),
        input('in2', { setMode: tmds18 }),
        output('out1', one),
        output('out2', other),
      ],
    });
  const told = { setMode: tmds18 };
  const slow = { highestMode: tmds9 };

  it.each<[string, Chain, string[]]>([
    [
      'set below what both ends pass',
      withPort(cinema, 'receiver', 'in1', { setMode: tmds9 }),
      ['port-mode mustFix receiver.in1'],
    ],
    [
      'set below, but no lower than the other end passes',
      withPort(withPort(cinema, 'player', 'out1', slow), 'receiver', 'in1', { setMode: tmds9 }),
      [],
    ],
    [
      'of a receiver that nobody looked at, in one note',
      withPort(withPort(cinema, 'receiver', 'in1', { setMode: null }), 'receiver', 'out1', { setMode: null }),
      ['port-mode note receiver'],
    ],
    ['of another device on automatic', withPort(cinema, 'processor', 'in1', { setMode: null }), []],
    [
      'noted as set above their highest mode',
      withPort(withPort(cinema, 'player', 'out1', slow), 'receiver', 'in1', {
        highestMode: tmds9,
        setMode: tmds18,
      }),
      ['port-mode note receiver.in1'],
    ],
    [
      'slower than a free one beside them',
      withPort(cinema, 'projector', 'in1', slow),
      ['lower-rate-port mustFix projector.in1'],
    ],
    [
      'slower than a free one, where more than 18 Gbit/s could pass',
      withPort(withPort(cinema, 'projector', 'in2', { highestMode: frl48 }), 'processor', 'out1', {
        highestMode: frl48,
      }),
      ['lower-rate-port note projector.in1'],
    ],
    [
      'slower than one whose link needs less',
      withPort(withPort(twoOutputs({ ...slow }, told), 'television', 'in1', slow), 'television', 'in2', slow),
      ['lower-rate-port shouldFix receiver.out1'],
    ],
    [
      'slower than one whose link needs as much',
      twoOutputs(told, { ...slow }),
      ['lower-rate-port shouldFix receiver.out2'],
    ],
    [
      'as slow as the display they feed',
      withPort(withPort(twoOutputs(told, { ...slow }), 'television', 'in1', slow), 'television', 'in2', slow),
      [],
    ],
    [
      'slow, where the device has no better one',
      withPort(withPort(cinema, 'projector', 'in1', slow), 'projector', 'in2', slow),
      [],
    ],
    [
      'that do an older content protection than a free one',
      withPort(cinema, 'receiver', 'in1', { contentProtection: '1.4' }),
      ['port-protection shouldFix receiver.in1'],
    ],
    [
      'that do an older content protection than free ones that pass less',
      withDevice(cinema, 'receiver', {
        ports: [
          input('in1', { setMode: tmds18, contentProtection: '1.4' }),
          input('in2', { setMode: tmds18 }),
          input('in3', { highestMode: tmds9 }),
          output('out1', { setMode: tmds18 }),
          output('out2', { setMode: tmds18 }),
        ],
      }),
      [],
    ],
    [
      'of a receiver that nobody looked at, into a display that passes less',
      withDevice(withPort(cinema, 'receiver', 'out2', { setMode: null }), 'television', {
        ports: [input('in1', { highestMode: tmds9 })],
      }),
      [],
    ],
    [
      'that do older content protection, like the other end',
      withPort(withPort(cinema, 'player', 'out1', { contentProtection: '1.4' }), 'receiver', 'in1', {
        contentProtection: '1.4',
      }),
      [],
    ],
    [
      'whose content protection nobody knows',
      withPort(cinema, 'receiver', 'in1', { contentProtection: 'unknown' }),
      [],
    ],
    [
      'of a source that say audio, on the way to a display',
      withDevice(cinema, 'player', {
        ports: [output('out1', { label: 'HDMI AUDIO OUT' }), output('out2', { label: 'HDMI MAIN' })],
      }),
      ['right-port-label shouldFix player.out1'],
    ],
    [
      'of a receiver that say zone, on the way to a display',
      twoOutputs(told, { ...told, label: 'ZONE 2 OUT' }),
      ['right-port-label note receiver.out2'],
    ],
    [
      'that say audio, on the way to no display',
      chainOf(
        [
          source('player', { ports: [output('out1'), output('out2', { label: 'AUDIO' })] }),
          display('tv'),
          receiver('sound'),
        ],
        [cable('player.out1', 'tv.in1'), cable('player.out2', 'sound.in1')],
      ),
      [],
    ],
  ])('%s', (_name, chain, expected) => {
    expect(seen(chain)).toEqual(expected);
  });

  it('tells a better port to swap with from one that is needed where it is', () => {
    const spare = twoOutputs(slow, told);
    const modest = withDevice(spare, 'television', { ports: [input('in1', slow)] });
    expect(only(modest).whatToDo).toMatchObject({
      code: 'swapPlugs',
      values: { with: [{ portId: 'out2', device: { deviceId: 'receiver' } }] },
    });
    expect(only(spare).whatToDo.code).toBe('decideWhichPlugGoesFirst');
  });

  it('names the free port to move to', () => {
    const moved = only(withPort(cinema, 'projector', 'in1', slow));
    expect(moved.text).toMatchObject({
      code: 'portOfLowerRate',
      values: {
        port: { portId: 'in1', label: 'HDMI IN1', device: { deviceId: 'projector' } },
        passes: 9,
        better: [{ portId: 'in2', label: 'HDMI IN2' }],
      },
    });
    expect(moved.whatToDo).toMatchObject({ code: 'movePlug', values: { to: [{ portId: 'in2' }] } });
    const audio = withDevice(cinema, 'player', {
      ports: [output('out1', { label: 'AUDIO' }), output('out2', { label: 'MAIN' })],
    });
    expect(only(audio).whatToDo).toMatchObject({
      code: 'movePlugOrLookUp',
      values: { to: [{ label: 'MAIN' }] },
    });
  });
});
