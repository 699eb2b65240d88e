import { findDevice, linkEnds } from '../chain/graph.ts';
import type { Chain, Device, Link, Place } from '../contract/chain.ts';
import type { Candidate } from './candidates.ts';
import { linkMeant } from './components.ts';
import type { TestKind } from './effect-table.ts';

/** What a client can get at, as told on the phone. */
export type ClientReach = {
  /** Devices whose sockets the client reaches standing on the floor, outside any closed rack. */
  reachableDevices: readonly string[];
};

/** Done with a remote control or a device's own menu; nothing is touched. */
const byRemoteControl: readonly TestKind[] = [
  'otherSource',
  'reissueHotPlug',
  'raisePortMode',
  'disableProcessing',
  'limitInputBandwidth',
  'limitOutputBandwidth',
];
/** Done at plugs. */
const atPlugs: readonly TestKind[] = ['reseat', 'unplugBranch', 'movePort'];

/**
 * Why a client must not be asked to do something over the phone; null when it is safe. Only what is on the list is
 * safe: what a remote control does, and plugs that are within reach, of copper, and lie free. Nobody is sent up a
 * ladder, into a rack, behind mains, or to the end of an optical cable.
 */
export function whyNotByClient(chain: Chain, { action, kit }: Candidate, reach: ClientReach): string | null {
  if (action.kind === 'menu') return null;
  if (kit.length > 0) return 'It takes something the client doesn’t have.';
  if (byRemoteControl.includes(action.test)) return whyNoMenu(chain, action.test, action.target);
  if (!atPlugs.includes(action.test)) return 'That is work for a technician.';
  const link = linkMeant(chain, action.target);
  if (link === null) return 'Which cable it is isn’t known.';
  return whyHandsOff(chain, link, reach);
}

function whyNoMenu(chain: Chain, test: TestKind, target: Place): string | null {
  if (test === 'otherSource' || test === 'reissueHotPlug') return null;
  const id = target.kind === 'device' || target.kind === 'port' ? target.deviceId : '';
  return findDevice(chain, id)?.drawsMenu === true ? null : 'It has no menu to do that in.';
}

function whyHandsOff(chain: Chain, link: Link, { reachableDevices }: ClientReach): string | null {
  if (link.construction === 'activeOptical')
    return 'An optical cable carries laser light: clients leave its plugs alone.';
  if (link.route !== 'free') return 'The cable doesn’t lie free.';
  const ends = linkEnds(chain, link);
  const devices: Device[] = ends === null ? [] : [ends.source, ends.sink];
  const out = devices.filter(({ id }) => !reachableDevices.includes(id));
  return devices.length === 2 && out.length === 0
    ? null
    : 'The client can’t get at both plugs standing on the floor, outside any rack.';
}
