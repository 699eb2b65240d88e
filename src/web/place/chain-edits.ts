import type { Chain, Device, DeviceRole, Link, Port, SignalMode } from '../../../shared/contract/chain.ts';

/** Ids are ours to choose and stable over versions; the next free one of a kind. */
const freeId = (prefix: string, taken: readonly string[]): string => {
  for (let n = 1; ; n += 1) if (!taken.includes(`${prefix}${n}`)) return `${prefix}${n}`;
};

/** What a socket passes at most, as text for a list: `tmds 600`, `frl 4 12`. */
export const modeKey = (mode: SignalMode): string =>
  mode.kind === 'tmds' ? `tmds ${mode.maxCharacterRateMHz}` : `frl ${mode.lanes} ${mode.gbpsPerLane}`;
export const modeOf = (key: string): SignalMode => {
  const [kind, first = 0, second = 0] = key.split(' ').map((part, at) => (at === 0 ? part : Number(part)));
  if (kind === 'tmds') return { kind: 'tmds', maxCharacterRateMHz: Number(first) };
  return { kind: 'frl', lanes: first, gbpsPerLane: second } as SignalMode;
};
/** TMDS carries ten bits a character on each of three channels; HDMI 2.1's fixed-rate link, lanes times rate (from memory). */
export const modeName = (mode: SignalMode): string =>
  mode.kind === 'tmds'
    ? `TMDS ${mode.maxCharacterRateMHz} MHz (${Math.round(mode.maxCharacterRateMHz * 0.3) / 10} Gbit/s)`
    : `FRL ${mode.lanes} × ${mode.gbpsPerLane} Gbit/s`;
export const usualModes: readonly SignalMode[] = [
  { kind: 'tmds', maxCharacterRateMHz: 165 },
  { kind: 'tmds', maxCharacterRateMHz: 340 },
  { kind: 'tmds', maxCharacterRateMHz: 600 },
  { kind: 'frl', lanes: 3, gbpsPerLane: 6 },
  { kind: 'frl', lanes: 4, gbpsPerLane: 6 },
  { kind: 'frl', lanes: 4, gbpsPerLane: 8 },
  { kind: 'frl', lanes: 4, gbpsPerLane: 10 },
  { kind: 'frl', lanes: 4, gbpsPerLane: 12 },
];

export function newPort(direction: Port['direction'], among: readonly Port[]): Port {
  const id = freeId(
    direction === 'input' ? 'in' : 'out',
    among.map((port) => port.id),
  );
  return {
    id,
    label: id.toUpperCase(),
    direction,
    highestMode: { kind: 'tmds', maxCharacterRateMHz: 600 },
    setMode: null,
    contentProtection: 'unknown',
    edidHex: null,
    fiveVoltMa: null,
  };
}

/** The sockets that a device of this kind has at least. */
const usualPorts: Record<DeviceRole, readonly Port['direction'][]> = {
  source: ['output'],
  switch: ['input', 'input', 'output'],
  receiver: ['input', 'input', 'output'],
  processor: ['input', 'output'],
  extender: ['input', 'output'],
  splitter: ['input', 'output', 'output'],
  display: ['input'],
};

export function newDevice(role: DeviceRole, name: string, chain: Chain): Device {
  const ids = chain.devices.map(({ id }) => id);
  const ports: Port[] = [];
  for (const direction of usualPorts[role]) ports.push(newPort(direction, ports));
  return {
    id: freeId(role, ids),
    name,
    role,
    model: null,
    serial: null,
    firmware: null,
    drawsMenu: role !== 'extender' && role !== 'splitter',
    menuSurvivesLossOfInput: 'unknown',
    menuKeepsFormat: 'unknown',
    processesPicture: role === 'processor',
    edidHandling: { kind: 'passesOn' },
    outputFormat: null,
    settings: {},
    ports,
    notes: '',
  };
}

/** A cable from the first free output to the first free input of another device, where there is one. */
export function newLink(chain: Chain): Link {
  const used = new Set(chain.links.flatMap(({ from, to }) => [refKey(from), refKey(to)]));
  const free = (direction: Port['direction'], notOf: string) =>
    chain.devices
      .filter(({ id }) => id !== notOf)
      .flatMap((device) => device.ports.map((port) => ({ deviceId: device.id, portId: port.id, port })))
      .find((one) => one.port.direction === direction && !used.has(refKey(one)));
  const from = free('output', '');
  const to = free('input', from?.deviceId ?? '');
  const end = { needsPower: false, powered: 'unknown', seated: 'unknown' } as const;
  return {
    id: freeId(
      'C',
      chain.links.map(({ id }) => id),
    ),
    from: { deviceId: from?.deviceId ?? '', portId: from?.portId ?? '' },
    to: { deviceId: to?.deviceId ?? '', portId: to?.portId ?? '' },
    construction: 'passiveCopper',
    category: 'unknown',
    certified: false,
    lengthM: 2,
    direction: 'unknown',
    factoryFittedEnds: null,
    sourceEnd: end,
    sinkEnd: end,
    route: 'free',
    installedOn: null,
    drawMa: null,
    notes: '',
  };
}

/** A socket in one text, for a list. */
export const refKey = ({ deviceId, portId }: { deviceId: string; portId: string }): string =>
  `${deviceId} ${portId}`;

/** Without a device, and without the cables at it. */
export const withoutDevice = (chain: Chain, id: string): Chain => ({
  ...chain,
  devices: chain.devices.filter((device) => device.id !== id),
  links: chain.links.filter(({ from, to }) => from.deviceId !== id && to.deviceId !== id),
});
