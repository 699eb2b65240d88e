import type { Chain, Device, Link, Place, PortRef } from '../contract/chain.ts';
import type { NamedDevice, NamedPlace, NamedPort } from '../message/values.ts';
import { findDevice, findLink, findPort } from './look-up.ts';

/** A place with its names as they are now, for a message: what it was called then stays with what was said of it. */
export function namedPlace(chain: Chain, place: Place): NamedPlace {
  switch (place.kind) {
    case 'chain':
      return { kind: 'chain', name: chain.name };
    case 'device':
      return { kind: 'device', ...namedDevice(chain, place.deviceId) };
    case 'port':
      return { kind: 'port', ...namedPort(chain, place) };
    case 'link': {
      const link = findLink(chain, place.linkId);
      return link === undefined
        ? { kind: 'link', linkId: place.linkId, isExtender: false, ends: null }
        : namedLink(chain, link);
    }
  }
}

/** A link by what it joins, also when the chain holds other links under its id. */
export const namedLink = (chain: Chain, link: Link): NamedPlace & { kind: 'link' } => ({
  kind: 'link',
  linkId: link.id,
  isExtender: link.construction === 'twistedPairExtender',
  ends: { from: namedPort(chain, link.from), to: namedPort(chain, link.to) },
});

/** A device; what is not in the chain is called by its id. */
export function namedDevice(chain: Chain, deviceId: string): NamedDevice {
  const device = findDevice(chain, deviceId);
  return device === undefined
    ? { deviceId, role: null, name: deviceId, isShared: false }
    : { deviceId, role: device.role, name: device.name, isShared: isNameShared(chain, device) };
}

/** A socket; one that is not in the chain is called by its id. */
export function namedPort(chain: Chain, ref: PortRef): NamedPort {
  const ports = findDevice(chain, ref.deviceId)?.ports ?? [];
  const label = findPort(chain, ref)?.label ?? ref.portId;
  return {
    portId: ref.portId,
    label,
    isShared: ports.filter((port) => port.label === label).length > 1,
    device: namedDevice(chain, ref.deviceId),
  };
}

const isNameShared = (chain: Chain, { id, name }: Device): boolean =>
  chain.devices.some((device) => device.name === name && device.id !== id);
