import type { Chain, Device, Link, Port, PortRef } from '../contract/chain.ts';

export function findDevice(chain: Chain, deviceId: string): Device | undefined {
  return chain.devices.find((device) => device.id === deviceId);
}

export function findPort(chain: Chain, { deviceId, portId }: PortRef): Port | undefined {
  return findDevice(chain, deviceId)?.ports.find((port) => port.id === portId);
}

export function findLink(chain: Chain, linkId: string): Link | undefined {
  return chain.links.find((link) => link.id === linkId);
}

export function samePort(one: PortRef, other: PortRef): boolean {
  return one.deviceId === other.deviceId && one.portId === other.portId;
}

/** The link plugged into a port, at either end of the link. */
export function linkAtPort(chain: Chain, port: PortRef): Link | undefined {
  return chain.links.find((link) => samePort(link.from, port) || samePort(link.to, port));
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

export const linksInto = (chain: Chain, deviceId: string): Link[] =>
  chain.links.filter((link) => link.to.deviceId === deviceId);
export const linksOutOf = (chain: Chain, deviceId: string): Link[] =>
  chain.links.filter((link) => link.from.deviceId === deviceId);

/** Ports of a device, of one direction, that no link is plugged into. */
export function freePorts(chain: Chain, deviceId: string, direction: Port['direction']): Port[] {
  const ports = findDevice(chain, deviceId)?.ports ?? [];
  return ports.filter(
    (port) => port.direction === direction && linkAtPort(chain, { deviceId, portId: port.id }) === undefined,
  );
}
