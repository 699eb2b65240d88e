import type { Place } from '../contract/chain.ts';
import { type Message, message } from '../message/message.ts';
import type { Candidate } from './candidates.ts';
import { changeCatalogue } from './change-catalogue.ts';

/** What a client can get at, as told on the phone. */
export type ClientReach = {
  /** Devices whose front switch the client reaches standing on the floor, outside any closed rack. */
  reachableDevices: readonly string[];
};

/**
 * Why a client is not asked, by phone, to do something; null when they may be. Only what the catalogue says is safe: what a
 * remote control does and undoes, and a switch within reach. Nobody is sent up a ladder, into a rack, behind mains, to a
 * plug, or into a menu that a lost picture would take away; and a client has none of the kit.
 */
export function whyNotByPhone({ action, kit }: Candidate, reach: ClientReach): Message | null {
  if (action.kind === 'menu') return null;
  const { test, own = null } = action;
  if (kit.length > 0 || (own !== null && own.kit !== '')) return message('phoneTakesKit');
  const byClient =
    own === null ? changeCatalogue[test].byClient : (own.byClient ?? ('phoneTakesTechnician' as const));
  switch (byClient) {
    case 'remoteControl':
      return null;
    case 'switch':
      return isWithinReach(action.target, reach) ? null : message('phoneOutOfReach');
    default:
      return message(byClient);
  }
}

/** The switch of a device, or of an appliance that the client uses every day. */
const isWithinReach = (target: Place, { reachableDevices }: ClientReach): boolean =>
  target.kind === 'chain' || (target.kind === 'device' && reachableDevices.includes(target.deviceId));
