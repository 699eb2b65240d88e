import { findDevice, findLink, findPort, linkAtPort } from '../chain/graph.ts';
import { bitRateGbps } from '../chain/signal-mode.ts';
import type { Chain, Device, Link, Place, Port, SignalMode } from '../contract/chain.ts';
import { type Message, message } from '../message/message.ts';
import type { PortAt, Scene } from './change-facts.ts';

// What kinds of change have in common where it is said whether they apply at a place: null where they do.

/** What a kind of change is made to, where it is asked for at another kind of place. */
export const doneTo = {
  device: 'doneToDevice',
  port: 'doneToPort',
  link: 'doneToLink',
  chain: 'doneToChain',
} as const;

/** The limit that the trade tests with: three channels of ten bits at 300 MHz; common practice, no source. */
const limitedGbps = 9;

const modeInUse = (port: Port): SignalMode => port.setMode ?? port.highestMode;

/** The fault lies elsewhere by what is known of the side. */
export const otherSide = message('onTheOtherSide');

const among = (ids: readonly string[], id: string): Message | null => (ids.includes(id) ? null : otherSide);
export const inputSide = ({ segment }: Scene, { id }: Device) => among(segment.inputHalfIds, id);
export const outputSide = ({ segment }: Scene, { id }: Device) => among(segment.outputHalfIds, id);
export const eitherSide = ({ segment }: Scene, { id }: Device) => among(segment.deviceIds, id);
export const linkPossible = ({ segment }: Scene, { id }: Link) => among(segment.linkIds, id);

/** For a port with something plugged in, on the side that it is on. */
export function portPossible(scene: Scene, { device, port }: PortAt): Message | null {
  if (linkAtPort(scene.chain, { deviceId: device.id, portId: port.id }) === undefined) {
    return message('nothingPluggedIn');
  }
  return port.direction === 'input' ? inputSide(scene, device) : outputSide(scene, device);
}

export const onlyRoles = (device: Device, ...roles: Device['role'][]): Message | null =>
  roles.includes(device.role) ? null : message('doneAtRoles', { roles, role: device.role });

const linkedPorts = (chain: Chain, device: Device, direction: Port['direction']): Port[] =>
  device.ports.filter(
    (port) =>
      port.direction === direction &&
      linkAtPort(chain, { deviceId: device.id, portId: port.id }) !== undefined,
  );

/** For a device that takes or sends more than the limit now. */
export function aboveLimit({ chain }: Scene, device: Device, direction: Port['direction']): Message | null {
  const ports = linkedPorts(chain, device, direction);
  if (ports.length === 0) return message(direction === 'input' ? 'nothingOnInput' : 'nothingOnOutput');
  return ports.some((port) => bitRateGbps(modeInUse(port)) > limitedGbps)
    ? null
    : message(direction === 'input' ? 'inputLimitedAlready' : 'outputLimitedAlready', { rate: limitedGbps });
}

/** For any place of the chain that can still be at fault; the chain as a whole always can. */
export function whyNotOnSide(scene: Scene, target: Place): Message | null {
  if (target.kind === 'chain') return null;
  if (target.kind === 'link') {
    const link = findLink(scene.chain, target.linkId);
    return link === undefined ? message('nothingUnderThatId') : linkPossible(scene, link);
  }
  const device = findDevice(scene.chain, target.deviceId);
  const port = target.kind === 'port' ? findPort(scene.chain, target) : undefined;
  if (device === undefined || (target.kind === 'port' && port === undefined))
    return message('nothingUnderThatId');
  return port === undefined ? eitherSide(scene, device) : portPossible(scene, { device, port });
}
