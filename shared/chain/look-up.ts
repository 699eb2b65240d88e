import type { Chain, Device, Link, Port, PortRef } from '../contract/chain.ts';

/** What is asked of a chain many times over, found once. */
type Index = {
  devices: ReadonlyMap<string, Device>;
  links: ReadonlyMap<string, Link>;
  /** Links by the id of the device that they enter, leave, or are at in either way, in the order of the document. */
  into: ReadonlyMap<string, readonly Link[]>;
  outOf: ReadonlyMap<string, readonly Link[]>;
  at: ReadonlyMap<string, readonly Link[]>;
};

/** By the chain itself, which nobody changes once it is made: another version of it is another object. */
const indexes = new WeakMap<Chain, Index>();

function indexOf(chain: Chain): Index {
  const known = indexes.get(chain);
  if (known !== undefined) return known;
  const index: Index = {
    devices: byId(chain.devices),
    links: byId(chain.links),
    into: linksBy(chain, ({ to }) => [to.deviceId]),
    outOf: linksBy(chain, ({ from }) => [from.deviceId]),
    at: linksBy(chain, ({ from, to }) => new Set([from.deviceId, to.deviceId])),
  };
  indexes.set(chain, index);
  return index;
}

/** Where an id is there twice, the first counts. */
function byId<Each extends { id: string }>(all: readonly Each[]): Map<string, Each> {
  const found = new Map<string, Each>();
  for (const each of all) if (!found.has(each.id)) found.set(each.id, each);
  return found;
}

function linksBy(chain: Chain, deviceIdsOf: (link: Link) => Iterable<string>): Map<string, Link[]> {
  const links = new Map<string, Link[]>();
  for (const link of chain.links)
    for (const deviceId of deviceIdsOf(link)) {
      const known = links.get(deviceId);
      if (known === undefined) links.set(deviceId, [link]);
      else known.push(link);
    }
  return links;
}

export const findDevice = (chain: Chain, deviceId: string): Device | undefined =>
  indexOf(chain).devices.get(deviceId);

export function findPort(chain: Chain, { deviceId, portId }: PortRef): Port | undefined {
  return findDevice(chain, deviceId)?.ports.find((port) => port.id === portId);
}

export const findLink = (chain: Chain, linkId: string): Link | undefined => indexOf(chain).links.get(linkId);

export function samePort(one: PortRef, other: PortRef): boolean {
  return one.deviceId === other.deviceId && one.portId === other.portId;
}

/** The link plugged into a port, at either end of the link. */
export function linkAtPort(chain: Chain, port: PortRef): Link | undefined {
  return linksAt(chain, port.deviceId).find((link) => samePort(link.from, port) || samePort(link.to, port));
}

export type LinkEnds = { source: Device; output: Port; sink: Device; input: Port };

/** The devices and ports that a link joins, by its own `from` and `to`; null when one of them isn't there. */
export function linkEnds(chain: Chain, link: Link): LinkEnds | null {
  const source = findDevice(chain, link.from.deviceId);
  const sink = findDevice(chain, link.to.deviceId);
  const output = findPort(chain, link.from);
  const input = findPort(chain, link.to);
  return source && sink && output && input ? { source, output, sink, input } : null;
}

const none: readonly Link[] = [];

export const linksInto = (chain: Chain, deviceId: string): readonly Link[] =>
  indexOf(chain).into.get(deviceId) ?? none;
export const linksOutOf = (chain: Chain, deviceId: string): readonly Link[] =>
  indexOf(chain).outOf.get(deviceId) ?? none;
/** Links into a device and out of it. */
export const linksAt = (chain: Chain, deviceId: string): readonly Link[] =>
  indexOf(chain).at.get(deviceId) ?? none;

/** Ports of a device, of one direction, that no link is plugged into. */
export function freePorts(chain: Chain, deviceId: string, direction: Port['direction']): Port[] {
  const ports = findDevice(chain, deviceId)?.ports ?? [];
  return ports.filter(
    (port) => port.direction === direction && linkAtPort(chain, { deviceId, portId: port.id }) === undefined,
  );
}
