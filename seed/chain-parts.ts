import type { ChainInput } from '../shared/contract/chain.ts';

export type DeviceInput = ChainInput['devices'][number];
export type PortInput = DeviceInput['ports'][number];
export type LinkInput = ChainInput['links'][number];

const tmds18 = { kind: 'tmds', maxCharacterRateMHz: 600 } as const;
const tmds9 = { kind: 'tmds', maxCharacterRateMHz: 300 } as const;
const frl40 = { kind: 'frl', lanes: 4, gbpsPerLane: 10 } as const;

const port =
  (direction: 'input' | 'output') =>
  (id: string, label: string, more: Partial<PortInput> = {}): PortInput => ({
    id,
    label,
    direction,
    highestMode: tmds18,
    contentProtection: '2.2',
    ...more,
  });
export const input = port('input');
export const output = port('output');
export const modes = { tmds18, tmds9, frl40 };

const end = (text: string) => {
  const [deviceId = '', portId = ''] = text.split(':');
  return { deviceId, portId };
};
const seated = { seated: 'yes' } as const;

/** A passive copper cable between `device:port` and `device:port`. */
export const copper = (
  id: string,
  from: string,
  to: string,
  lengthM: number,
  more: Partial<LinkInput> = {},
): LinkInput => ({
  id,
  from: end(from),
  to: end(to),
  construction: 'passiveCopper',
  category: 'premiumHighSpeed',
  certified: true,
  lengthM,
  direction: 'notDirectional',
  factoryFittedEnds: true,
  sourceEnd: seated,
  sinkEnd: seated,
  ...more,
});

/** An active optical cable, laid as marked. */
export const optical = (
  id: string,
  from: string,
  to: string,
  lengthM: number,
  more: Partial<LinkInput> = {},
): LinkInput =>
  copper(id, from, to, lengthM, {
    construction: 'activeOptical',
    category: 'ultraHighSpeed',
    direction: 'asMarked',
    route: 'inConduit',
    ...more,
  });

export const cinemaFormats = [
  { widthPx: 3840, heightPx: 2160, refreshHz: 24, encoding: 'rgb', bitsPerComponent: 12 },
  { widthPx: 3840, heightPx: 2160, refreshHz: 60, encoding: 'ycbcr422', bitsPerComponent: 12 },
  { widthPx: 1920, heightPx: 1080, refreshHz: 60, encoding: 'rgb', bitsPerComponent: 8 },
] as const;

/** Tried once: the menu stays without an input, and in the picture’s format. */
export const menuIsKnown = { menuSurvivesLossOfInput: 'yes', menuKeepsFormat: 'yes' } as const;
