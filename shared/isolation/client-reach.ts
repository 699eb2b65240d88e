import { findDevice, linkEnds } from '../chain/graph.ts';
import type { Chain, Link, Place } from '../contract/chain.ts';
import type { Candidate } from './candidates.ts';
import { changeCatalogue } from './change-catalogue.ts';
import { linkMeant } from './components.ts';

/** What a client can get at, as told on the phone. */
export type ClientReach = {
  /** Devices whose sockets the client reaches standing on the floor, outside any closed rack. */
  reachableDevices: readonly string[];
};

/**
 * Whether a client may be asked to do something over the phone. Only what the catalogue says is safe: what a remote
 * control does, a switch within reach, and plugs that are within reach, of copper, and lie free. Nobody is sent up a ladder, into a rack,
 * behind mains, or to the end of an optical cable, which carries laser light; and a client has none of the kit.
 */
export function isSafeForClient(chain: Chain, { action, kit }: Candidate, reach: ClientReach): boolean {
  if (action.kind === 'menu') return true;
  if (kit.length > 0) return false;
  switch (changeCatalogue[action.test].byClient) {
    case 'remoteControl':
      return true;
    case 'ownMenu':
      return hasMenu(chain, action.target);
    case 'switch':
      return isWithinReach(action.target, reach);
    case 'plugs': {
      const link = linkMeant(chain, action.target);
      return link !== null && mayHandle(chain, link, reach);
    }
    case null:
      return false;
  }
}

function hasMenu(chain: Chain, target: Place): boolean {
  const id = target.kind === 'device' || target.kind === 'port' ? target.deviceId : '';
  return findDevice(chain, id)?.drawsMenu === true;
}

/** The switch of a device, or of an appliance that the client uses every day. */
const isWithinReach = (target: Place, { reachableDevices }: ClientReach): boolean =>
  target.kind === 'chain' || (target.kind === 'device' && reachableDevices.includes(target.deviceId));

function mayHandle(chain: Chain, link: Link, { reachableDevices }: ClientReach): boolean {
  if (link.construction === 'activeOptical' || link.route !== 'free') return false;
  const ends = linkEnds(chain, link);
  return ends !== null && [ends.source, ends.sink].every(({ id }) => reachableDevices.includes(id));
}
