import type { Chain, Device, Link, Place, PortRef } from '../contract/chain.ts';
import { findDevice, findLink, findPort } from './look-up.ts';

/** One text for one place, the same wherever it is computed: for maps, sets and comparisons. */
export function placeKey(place: Place): string {
  switch (place.kind) {
    case 'chain':
      return 'chain';
    case 'device':
      return `device:${place.deviceId}`;
    case 'port':
      return `port:${place.deviceId}:${place.portId}`;
    case 'link':
      return `link:${place.linkId}`;
  }
}

export function samePlace(one: Place, other: Place): boolean {
  return placeKey(one) === placeKey(other);
}

export function placeExists(chain: Chain, place: Place): boolean {
  switch (place.kind) {
    case 'chain':
      return true;
    case 'device':
      return findDevice(chain, place.deviceId) !== undefined;
    case 'port':
      return findPort(chain, place) !== undefined;
    case 'link':
      return findLink(chain, place.linkId) !== undefined;
  }
}

/**
 * What to call a place in a sentence: `processor 'Cinema processor'`, `port 'IN 3' of switch 'Switch'`,
 * `the cable from Disc player 'HDMI OUT' to Switch 'IN 3'`, `the chain 'Cinema'`. Devices or ports that bear the
 * same name get their id in brackets; what isn't in the chain is called by its id.
 */
export function placeName(chain: Chain, place: Place): string {
  switch (place.kind) {
    case 'chain':
      return `the chain '${chain.name}'`;
    case 'device':
      return deviceName(chain, place.deviceId);
    case 'port':
      return `port ${portLabel(chain, place)} of ${deviceName(chain, place.deviceId)}`;
    case 'link': {
      const link = findLink(chain, place.linkId);
      return link === undefined ? `link '${place.linkId}'` : linkName(chain, link);
    }
  }
}

/** A device's role and name: `processor 'Cinema processor'`. */
export function deviceName(chain: Chain, deviceId: string): string {
  const device = findDevice(chain, deviceId);
  return device === undefined
    ? `device '${deviceId}'`
    : `${device.role} '${device.name}'${sharedNameId(chain, device)}`;
}

/** A link by what it joins, also when the chain holds other links under its id. */
export function linkName(chain: Chain, link: Link): string {
  const what = link.construction === 'twistedPairExtender' ? 'twisted-pair extender' : 'cable';
  return `the ${what} from ${socketName(chain, link.from)} to ${socketName(chain, link.to)}`;
}

/** A socket in few words: the device's bare name and the label at the socket, `Switch 'IN 3'`. */
export function socketName(chain: Chain, port: PortRef): string {
  return `${bareName(chain, port.deviceId)} ${portLabel(chain, port)}`;
}

/** The device's name alone, with its id in brackets where another bears the same name. */
export function bareName(chain: Chain, deviceId: string): string {
  const device = findDevice(chain, deviceId);
  return device === undefined ? `device '${deviceId}'` : `${device.name}${sharedNameId(chain, device)}`;
}

function portLabel(chain: Chain, ref: PortRef): string {
  const ports = findDevice(chain, ref.deviceId)?.ports ?? [];
  const label = findPort(chain, ref)?.label;
  if (label === undefined) return `'${ref.portId}'`;
  return ports.filter((port) => port.label === label).length > 1
    ? `'${label}' (${ref.portId})`
    : `'${label}'`;
}

function sharedNameId(chain: Chain, { id, name }: Device): string {
  const shared = chain.devices.some((device) => device.name === name && device.id !== id);
  return shared ? ` (${id})` : '';
}
