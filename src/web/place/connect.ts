import {
  findDevice,
  findLink,
  findPort,
  linkAtPort,
  linksInto,
  linksOutOf,
  samePort,
} from '../../../shared/chain/look-up.ts';
import type { Chain, Device, Link, Place, Port, PortRef } from '../../../shared/contract/chain.ts';
import { newLink, newPort, withoutDevice } from './chain-edits.ts';

/** What is about to be plugged somewhere: a new cable at a socket, an end of a cable, or a device into a cable. */
export type Start =
  | { kind: 'socket'; at: PortRef }
  | { kind: 'end'; linkId: string; end: 'from' | 'to' }
  | { kind: 'device'; deviceId: string };
/** Where it can go. A socket that has a cable already gives that one the place that becomes free. */
export type Goal =
  | { kind: 'socket'; at: PortRef; swapsWith: string | null }
  | { kind: 'cable'; linkId: string };

const otherEnd = { from: 'to', to: 'from' } as const;
const opposite = { input: 'output', output: 'input' } as const;
const directionAt = { from: 'output', to: 'input' } as const;

/** Every socket of one direction, in the order of the document. */
const sockets = (chain: Chain, direction: Port['direction']): PortRef[] =>
  chain.devices.flatMap(({ id, ports }) =>
    ports.filter((port) => port.direction === direction).map((port) => ({ deviceId: id, portId: port.id })),
  );

/** Where something can be plugged: never into its own device, and a new cable only where none is. */
export function goalsOf(chain: Chain, start: Start): Goal[] {
  switch (start.kind) {
    case 'socket': {
      const port = findPort(chain, start.at);
      if (port === undefined) return [];
      return sockets(chain, opposite[port.direction])
        .filter((at) => at.deviceId !== start.at.deviceId && linkAtPort(chain, at) === undefined)
        .map((at) => ({ kind: 'socket', at, swapsWith: null }));
    }
    case 'end': {
      const link = findLink(chain, start.linkId);
      return link === undefined ? [] : goalsOfEnd(chain, link, start.end);
    }
    case 'device':
      if (takenOut(chain, start.deviceId) === null) return [];
      return chain.links
        .filter(({ from, to }) => from.deviceId !== start.deviceId && to.deviceId !== start.deviceId)
        .map(({ id }) => ({ kind: 'cable', linkId: id }));
  }
}

function goalsOfEnd(chain: Chain, link: Link, end: 'from' | 'to'): Goal[] {
  const far = link[otherEnd[end]].deviceId;
  return sockets(chain, directionAt[end])
    .filter((at) => at.deviceId !== far && !samePort(at, link[end]))
    .flatMap((at): Goal[] => {
      const there = linkAtPort(chain, at);
      // The cable that is there would come back to the device that it starts from.
      if (there !== undefined && there[otherEnd[end]].deviceId === link[end].deviceId) return [];
      return [{ kind: 'socket', at, swapsWith: there?.id ?? null }];
    });
}

/** The chain once it is plugged there, and what that was done to; the chain as it is where it can't be. */
export function connected(chain: Chain, start: Start, goal: Goal): { chain: Chain; place: Place } {
  if (start.kind === 'device') {
    const place: Place = { kind: 'device', deviceId: start.deviceId };
    return { chain: goal.kind === 'cable' ? movedInto(chain, start.deviceId, goal.linkId) : chain, place };
  }
  if (start.kind === 'end') {
    const place: Place = { kind: 'link', linkId: start.linkId };
    return { chain: goal.kind === 'socket' ? withEndAt(chain, start, goal.at) : chain, place };
  }
  const link = newLink(chain);
  const place: Place = { kind: 'link', linkId: link.id };
  if (goal.kind !== 'socket') return { chain, place };
  const isFrom = findPort(chain, start.at)?.direction === 'output';
  const ends = isFrom ? { from: start.at, to: goal.at } : { from: goal.at, to: start.at };
  return { chain: { ...chain, links: [...chain.links, { ...link, ...ends }] }, place };
}

function withEndAt(
  chain: Chain,
  { linkId, end }: { linkId: string; end: 'from' | 'to' },
  at: PortRef,
): Chain {
  const before = findLink(chain, linkId)?.[end];
  const there = linkAtPort(chain, at)?.id;
  return {
    ...chain,
    links: chain.links.map((link) =>
      link.id === linkId
        ? { ...link, [end]: at }
        : link.id === there && before !== undefined
          ? { ...link, [end]: before }
          : link,
    ),
  };
}

/** A device with one more socket of a direction, and that socket. */
export function withSocket(
  chain: Chain,
  deviceId: string,
  direction: Port['direction'],
): { chain: Chain; at: PortRef } | null {
  const device = findDevice(chain, deviceId);
  if (device === undefined) return null;
  const port = newPort(direction, device.ports);
  const devices = chain.devices.map((one) =>
    one.id === deviceId ? { ...one, ports: [...one.ports, port] } : one,
  );
  return { chain: { ...chain, devices }, at: { deviceId, portId: port.id } };
}

/** What a start looks for where no socket is free; null where it looks for a cable. */
export function wantedDirection(chain: Chain, start: Start): Port['direction'] | null {
  if (start.kind === 'device') return null;
  if (start.kind === 'end') return directionAt[start.end];
  const port = findPort(chain, start.at);
  return port === undefined ? null : opposite[port.direction];
}

/** Whether a device can sit in a cable: it takes a signal in and sends one on. */
export const sitsBetween = ({ ports }: Device): boolean =>
  ports.some(({ direction }) => direction === 'input') &&
  ports.some(({ direction }) => direction === 'output');

/** A device put into a cable: that one ends at it now, and a new one goes on to where it ended. */
export function insertedInto(chain: Chain, linkId: string, device: Device): Chain {
  const link = findLink(chain, linkId);
  return link === undefined
    ? chain
    : between({ ...chain, devices: [...chain.devices, device] }, link, { device, spare: newLink(chain) });
}

function between(chain: Chain, link: Link, { device, spare }: { device: Device; spare: Link }): Chain {
  const portOf = (direction: Port['direction']): PortRef | undefined => {
    const port = device.ports.find((one) => one.direction === direction);
    return port === undefined ? undefined : { deviceId: device.id, portId: port.id };
  };
  const [into, outOf] = [portOf('input'), portOf('output')];
  if (into === undefined || outOf === undefined) return chain;
  return {
    ...chain,
    links: [
      ...chain.links.map((one) => (one.id === link.id ? { ...one, to: into } : one)),
      { ...spare, from: outOf, to: link.to },
    ],
  };
}

/**
 * A chain without a device that one cable enters and one leaves: the first goes on to where the second went, which is
 * spare then. Null for every other device, and for one that sends back to where it is fed from.
 */
export function takenOut(chain: Chain, deviceId: string): { chain: Chain; spare: Link } | null {
  const [into, ...moreInto] = linksInto(chain, deviceId);
  const [outOf, ...moreOutOf] = linksOutOf(chain, deviceId);
  if (into === undefined || outOf === undefined || moreInto.length + moreOutOf.length > 0) return null;
  // what comes to it from a device and goes back there would be a cable into that device
  if (into.from.deviceId === outOf.to.deviceId) return null;
  return {
    chain: {
      ...chain,
      devices: chain.devices.filter(({ id }) => id !== deviceId),
      links: chain.links
        .filter(({ id }) => id !== outOf.id)
        .map((link) => (link.id === into.id ? { ...link, to: outOf.to } : link)),
    },
    spare: outOf,
  };
}

/** A device with a cable each way moved into another cable; what it leaves is joined again, and no cable is lost. */
export function movedInto(chain: Chain, deviceId: string, linkId: string): Chain {
  const out = takenOut(chain, deviceId);
  const device = findDevice(chain, deviceId);
  if (out === null || device === undefined) return chain;
  const link = findLink(out.chain, linkId);
  if (link === undefined) return chain;
  return between({ ...out.chain, devices: chain.devices }, link, { device, spare: out.spare });
}

/** The chain without a device and the cables at it, or without a cable. */
export function withoutPlace(chain: Chain, place: Place): Chain {
  if (place.kind === 'chain') return chain;
  if (place.kind !== 'link') return withoutDevice(chain, place.deviceId);
  return { ...chain, links: chain.links.filter(({ id }) => id !== place.linkId) };
}

/** What is selected on a drawing for a place: the device of a socket. */
export const ownerOf = (place: Place): Place =>
  place.kind === 'port' ? { kind: 'device', deviceId: place.deviceId } : place;

/** The device or cable that a JSON pointer (RFC 6901) into the chain leads into; else the chain. */
export function placeAtPointer(chain: Chain, pointer: string): Place {
  const [, list, at = ''] = pointer.split('/');
  const device = list === 'devices' ? chain.devices[Number(at)] : undefined;
  if (device !== undefined) return { kind: 'device', deviceId: device.id };
  const link = list === 'links' ? chain.links[Number(at)] : undefined;
  return link === undefined ? { kind: 'chain' } : { kind: 'link', linkId: link.id };
}
