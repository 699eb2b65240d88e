import type { Chain, Device, Link, Place } from '../contract/chain.ts';
import { findDevice, linksInto, linksOutOf } from './look-up.ts';
import { placeKey } from './place.ts';

export {
  findDevice,
  findLink,
  findPort,
  freePorts,
  type LinkEnds,
  linkAtPort,
  linkEnds,
  linksAt,
  linksInto,
  linksOutOf,
  samePort,
} from './look-up.ts';
export {
  bareName,
  deviceName,
  linkName,
  placeExists,
  placeKey,
  placeName,
  samePlace,
  socketName,
} from './place.ts';

/**
 * Questions about a chain as a directed graph. Every function takes the chain as it stands in the contract, treats
 * an id that isn't in it as "nothing there", ends on chains with faults too (loops, duplicate ids, loose links), and
 * takes time in proportion to devices and links; only `pathsBetween` lists paths, and it is bounded.
 */

export const sourcesOf = (chain: Chain): Device[] => chain.devices.filter(({ role }) => role === 'source');
export const displaysOf = (chain: Chain): Device[] => chain.devices.filter(({ role }) => role === 'display');

/** Device ids reached from `start`, which itself is in the set only when a loop leads back to it. */
function reached(
  start: string,
  linksFrom: (deviceId: string) => readonly Link[],
  next: (link: Link) => string,
): Set<string> {
  const found = new Set<string>();
  const waiting = [start];
  for (let at = waiting.pop(); at !== undefined; at = waiting.pop())
    for (const link of linksFrom(at)) {
      const device = next(link);
      if (found.has(device)) continue;
      found.add(device);
      waiting.push(device);
    }
  return found;
}

/** Ids of the devices whose signal reaches this one, without itself. */
export function upstreamOf(chain: Chain, deviceId: string): Set<string> {
  return reached(
    deviceId,
    (id) => linksInto(chain, id),
    (link) => link.from.deviceId,
  );
}

/** Ids of the devices that this one's signal reaches, without itself. */
export function downstreamOf(chain: Chain, deviceId: string): Set<string> {
  return reached(
    deviceId,
    (id) => linksOutOf(chain, id),
    (link) => link.to.deviceId,
  );
}

/**
 * Device ids along the signal: each after everything that feeds it, branches kept together, otherwise in the order
 * of the document. In a loop, which has no such order, each device still comes once.
 */
export function signalOrder(chain: Chain): string[] {
  const known = new Set(chain.devices.map((device) => device.id));
  const begun = new Set<string>();
  const finished: string[] = [];
  // A step is on the stack twice: to open a device, and, below everything after it, to close it.
  const visit = (root: string): void => {
    const stack = [{ device: root, closing: false }];
    for (let step = stack.pop(); step !== undefined; step = stack.pop()) {
      if (step.closing) finished.push(step.device);
      else if (!begun.has(step.device)) {
        begun.add(step.device);
        stack.push({ device: step.device, closing: true });
        for (const link of linksOutOf(chain, step.device))
          if (known.has(link.to.deviceId)) stack.push({ device: link.to.deviceId, closing: false });
      }
    }
  };
  for (const device of [...chain.devices].reverse()) visit(device.id);
  return finished.reverse();
}

/**
 * Where along the signal a place lies, for sorting: the chain first, then device by device its inputs, itself, its
 * outputs and the links that leave it; what isn't in the chain comes last.
 */
export function signalRank(chain: Chain): (place: Place) => number {
  const ranks = new Map<string, number>([[placeKey({ kind: 'chain' }), 0]]);
  const add = (place: Place): void => {
    if (!ranks.has(placeKey(place))) ranks.set(placeKey(place), ranks.size);
  };
  for (const deviceId of signalOrder(chain)) {
    const ports = findDevice(chain, deviceId)?.ports ?? [];
    for (const port of ports)
      if (port.direction === 'input') add({ kind: 'port', deviceId, portId: port.id });
    add({ kind: 'device', deviceId });
    for (const port of ports) add({ kind: 'port', deviceId, portId: port.id });
    for (const link of linksOutOf(chain, deviceId)) add({ kind: 'link', linkId: link.id });
  }
  return (place) => ranks.get(placeKey(place)) ?? Number.POSITIVE_INFINITY;
}

export type Component = Extract<Place, { kind: 'device' | 'link' }>;

/** Devices and links whose ids pass, along the signal: each device before the links that leave it. */
function componentsWhere(chain: Chain, onDevice: (id: string) => boolean, onLink: (link: Link) => boolean) {
  return signalOrder(chain).flatMap((deviceId): Component[] => [
    ...(onDevice(deviceId) ? [{ kind: 'device' as const, deviceId }] : []),
    ...linksOutOf(chain, deviceId)
      .filter(onLink)
      .map((link): Component => ({ kind: 'link', linkId: link.id })),
  ]);
}

/** Every device and link of the chain, along the signal. */
export function componentsOf(chain: Chain): Component[] {
  return componentsWhere(
    chain,
    () => true,
    () => true,
  );
}

/**
 * Every device and link on some way from one device to another, both devices included, along the signal: the first
 * entry is `fromId`, the last `toId`. Empty when no signal runs from the one to the other.
 */
export const componentsFromTo = (chain: Chain, fromId: string, toId: string): Component[] =>
  componentsOnTheWay(chain, [fromId], [toId]);

/** As `componentsFromTo`, on some way from any of these devices to any of those. */
export function componentsOnTheWay(
  chain: Chain,
  fromIds: readonly string[],
  toIds: readonly string[],
): Component[] {
  const inChain = (id: string) => findDevice(chain, id) !== undefined;
  const after = new Set(fromIds.filter(inChain).flatMap((id) => [id, ...downstreamOf(chain, id)]));
  const before = new Set(toIds.filter(inChain).flatMap((id) => [id, ...upstreamOf(chain, id)]));
  // What any of them reaches, and reaches any of those, lies on a way from the one to the other.
  const between = (id: string): boolean => after.has(id) && before.has(id);
  return componentsWhere(chain, between, (link) => between(link.from.deviceId) && between(link.to.deviceId));
}

/** As `componentsFromTo`, without the two devices themselves. */
export function componentsBetween(chain: Chain, fromId: string, toId: string): Component[] {
  return componentsFromTo(chain, fromId, toId).filter(
    (place) => place.kind === 'link' || (place.deviceId !== fromId && place.deviceId !== toId),
  );
}

/** One way of the signal: devices in order, and the link after each of them but the last. */
export type SignalPath = { deviceIds: string[]; linkIds: string[] };
/** `complete` is false when there are more paths than were asked for. */
export type SignalPaths = { paths: SignalPath[]; complete: boolean };

/**
 * The ways of the signal from one device to another, shortest first; two cables side by side make two ways. At most
 * `limit` of them (assumed: 64), since their number can double with every branch; use `componentsFromTo` where only
 * what lies on them matters.
 */
export function pathsBetween(chain: Chain, fromId: string, toId: string, limit = 64): SignalPaths {
  if (fromId === toId || findDevice(chain, fromId) === undefined) return { paths: [], complete: true };
  const leadsThere = upstreamOf(chain, toId).add(toId);
  const paths: SignalPath[] = [];
  // Without loops every step belongs to a path that gets there; in a loop the budget ends the search.
  let steps = (limit + 1) * (chain.devices.length + 1);
  const walk = (path: SignalPath, at: string): void => {
    if (at === toId) paths.push(path);
    else
      for (const link of linksOutOf(chain, at)) {
        const next = link.to.deviceId;
        if (!leadsThere.has(next) || path.deviceIds.includes(next)) continue;
        if (paths.length > limit || steps <= 0) return;
        steps -= 1;
        walk({ deviceIds: [...path.deviceIds, next], linkIds: [...path.linkIds, link.id] }, next);
      }
  };
  walk({ deviceIds: [fromId], linkIds: [] }, fromId);
  const shortestFirst = paths.slice(0, limit).sort((a, b) => a.linkIds.length - b.linkIds.length);
  return { paths: shortestFirst, complete: paths.length <= limit && steps > 0 };
}

/** A cable that leaves the way to a display and leads somewhere else: where to unplug, and what goes dark then. */
export type ParallelBranch = {
  linkId: string;
  /** The device on the way to the display that the branch leaves. */
  forkDeviceId: string;
  /** Devices beyond the link that don't feed the display. */
  deviceIds: string[];
  /** Those of them that are displays. */
  displayIds: string[];
};

/** Branches beside the way to one display, in the order of the links. */
export function parallelBranches(chain: Chain, displayId: string): ParallelBranch[] {
  if (findDevice(chain, displayId) === undefined) return [];
  const onTheWay = upstreamOf(chain, displayId);
  const displays = new Set(displaysOf(chain).map((display) => display.id));
  const leaves = ({ from, to }: Link): boolean =>
    onTheWay.has(from.deviceId) && !onTheWay.has(to.deviceId) && to.deviceId !== displayId;
  return chain.links.filter(leaves).map((link) => {
    const beyond = downstreamOf(chain, link.to.deviceId).add(link.to.deviceId);
    const deviceIds = chain.devices.map((device) => device.id).filter((id) => beyond.has(id));
    return {
      linkId: link.id,
      forkDeviceId: link.from.deviceId,
      deviceIds,
      displayIds: deviceIds.filter((id) => displays.has(id)),
    };
  });
}
