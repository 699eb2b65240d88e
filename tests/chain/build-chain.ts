import {
  type Chain,
  chain,
  type Device,
  type DeviceRole,
  device,
  type Link,
  link,
  type Port,
  port,
  type SignalMode,
} from '../../shared/contract/chain.ts';

/** 18 Gbit/s: three channels of ten bits a character at 600 MHz. */
export const tmds18: SignalMode = { kind: 'tmds', maxCharacterRateMHz: 600 };
/** 9 Gbit/s. */
export const tmds9: SignalMode = { kind: 'tmds', maxCharacterRateMHz: 300 };
/** 48 Gbit/s: four lanes at 12. */
export const frl48: SignalMode = { kind: 'frl', lanes: 4, gbpsPerLane: 12 };

type Facts<Whole> = Partial<Whole>;
type LinkEnds = `${string}.${string}`;

/** An output that passes 18 Gbit/s, unless `facts` say otherwise. */
export const output = (id: string, facts: Facts<Port> = {}): Port => socket('output', id, facts);
/** An input that passes 18 Gbit/s, unless `facts` say otherwise. */
export const input = (id: string, facts: Facts<Port> = {}): Port => socket('input', id, facts);

function socket(direction: Port['direction'], id: string, facts: Facts<Port>): Port {
  const label = `HDMI ${id.toUpperCase()}`;
  return port.parse({ id, label, direction, highestMode: tmds18, contentProtection: '2.2', ...facts });
}

const inputs = (count: number, facts: Facts<Port> = {}): Port[] =>
  Array.from({ length: count }, (_, at) => input(`in${at + 1}`, facts));
const outputs = (count: number, facts: Facts<Port> = {}): Port[] =>
  Array.from({ length: count }, (_, at) => output(`out${at + 1}`, facts));
/** A receiver often has to be told to pass 18 Gbit/s; this one was. */
const told = { setMode: tmds18 };

const usual: Record<DeviceRole, { name: string; ports: () => Port[]; drawsMenu: boolean }> = {
  source: { name: 'Disc player', ports: () => outputs(1), drawsMenu: true },
  switch: { name: 'Switch', ports: () => [...inputs(4), ...outputs(1)], drawsMenu: false },
  receiver: { name: 'Receiver', ports: () => [...inputs(4, told), ...outputs(2, told)], drawsMenu: true },
  processor: { name: 'Cinema processor', ports: () => [...inputs(2), ...outputs(2)], drawsMenu: true },
  extender: { name: 'Extender', ports: () => [...inputs(1), ...outputs(1)], drawsMenu: false },
  splitter: { name: 'Splitter', ports: () => [...inputs(1), ...outputs(4)], drawsMenu: false },
  display: { name: 'Projector', ports: () => inputs(2), drawsMenu: true },
};

/** Tried once: the menu stays without an input, and in the picture’s format. */
const menuIsKnown = { menuSurvivesLossOfInput: 'yes', menuKeepsFormat: 'yes' } as const;

const builder =
  (role: DeviceRole) =>
  (id: string, facts: Facts<Device> = {}): Device => {
    const { name, ports, drawsMenu } = usual[role];
    return device.parse({ id, name, role, drawsMenu, ...menuIsKnown, ports: ports(), ...facts });
  };

/*
 * A device of each role with the sockets such a device usually has, called in1, in2, ..., out1, out2, ...:
 * source out1; switch in1..in4, out1; receiver in1..in4, out1, out2; processor in1, in2, out1, out2;
 * extender in1, out1; splitter in1, out1..out4; display in1, in2.
 */
export const source = builder('source');
export const matrixSwitch = builder('switch');
export const receiver = builder('receiver');
export const processor = builder('processor');
export const extender = builder('extender');
export const splitter = builder('splitter');
export const display = builder('display');

/**
 * A cable nobody could object to: passive copper, certified for 18 Gbit/s, 3 m, seated at both ends.
 * `from` and `to` read `device.port`; the id is `from-to` with the dots left out unless `facts` give one.
 */
export function cable(from: LinkEnds, to: LinkEnds, facts: Facts<Link> = {}): Link {
  return link.parse({
    id: `${from}-${to}`.replaceAll('.', ''),
    from: end(from),
    to: end(to),
    construction: 'passiveCopper',
    category: 'premiumHighSpeed',
    certified: true,
    lengthM: 3,
    direction: 'notDirectional',
    factoryFittedEnds: true,
    sourceEnd: { seated: 'yes' },
    sinkEnd: { seated: 'yes' },
    ...facts,
  });
}

/** An active optical cable nobody could object to: 15 m, laid as marked, power asked for and given at the sink. */
export const opticalCable = (from: LinkEnds, to: LinkEnds, facts: Facts<Link> = {}): Link =>
  cable(from, to, {
    construction: 'activeOptical',
    category: 'ultraHighSpeed',
    lengthM: 15,
    direction: 'asMarked',
    sinkEnd: { needsPower: true, powered: 'yes', seated: 'yes' },
    ...facts,
  });

function end(text: LinkEnds): Link['from'] {
  const [deviceId = '', portId = ''] = text.split('.');
  return { deviceId, portId };
}

/** The chain of these devices and links, checked against the contract (not for faults between its parts). */
export function chainOf(devices: Device[], links: Link[], facts: Facts<Chain> = {}): Chain {
  return chain.parse({ name: 'Cinema', devices, links, ...facts });
}

/** These devices in a row, each one's `out1` joined to the `in1` of the next by a cable with `facts`. */
export function rowOf(devices: Device[], facts: Facts<Link> = {}): Chain {
  const links = devices.slice(1).map((next, at) => cable(`${devices[at]?.id}.out1`, `${next.id}.in1`, facts));
  return chainOf(devices, links);
}

/**
 * A home cinema in good order: `player` and `streamer` into `receiver`, its out1 through `processor` and 15 m of
 * optical cable to `projector`, its out2 to the parallel display `television`.
 * Links: L1 player, L2 streamer, L3 to the processor, L4 to the projector, L5 to the television.
 */
export function homeCinema(): Chain {
  return chainOf(
    [
      source('player'),
      source('streamer', { name: 'Streamer' }),
      receiver('receiver'),
      processor('processor'),
      display('projector'),
      display('television', { name: 'Television' }),
    ],
    [
      cable('player.out1', 'receiver.in1', { id: 'L1' }),
      cable('streamer.out1', 'receiver.in2', { id: 'L2' }),
      cable('receiver.out1', 'processor.in1', { id: 'L3' }),
      opticalCable('processor.out1', 'projector.in1', { id: 'L4' }),
      cable('receiver.out2', 'television.in1', { id: 'L5' }),
    ],
  );
}

/** `of` with these facts changed at one device. */
export function withDevice(of: Chain, deviceId: string, facts: Facts<Device>): Chain {
  return {
    ...of,
    devices: of.devices.map((each) => (each.id === deviceId ? { ...each, ...facts } : each)),
  };
}

/** `of` with these facts changed at one port. */
export function withPort(of: Chain, deviceId: string, portId: string, facts: Facts<Port>): Chain {
  const ports = of.devices
    .find((each) => each.id === deviceId)
    ?.ports.map((each) => (each.id === portId ? { ...each, ...facts } : each));
  return ports === undefined ? of : withDevice(of, deviceId, { ports });
}

/** `of` with these facts changed at one link. */
export function withLink(of: Chain, linkId: string, facts: Facts<Link>): Chain {
  return { ...of, links: of.links.map((each) => (each.id === linkId ? { ...each, ...facts } : each)) };
}

/** `of` without these links. */
export function withoutLinks(of: Chain, ...linkIds: string[]): Chain {
  return { ...of, links: of.links.filter((each) => !linkIds.includes(each.id)) };
}
