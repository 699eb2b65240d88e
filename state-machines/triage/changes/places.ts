import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { ChangeFacts } from '../../../shared/isolation/change-facts.ts';

/** Every place of a kind; none for what is made to any place, since nobody can know which is meant. */
export function everyPlace(chain: Chain, kind: ChangeFacts['target']): Place[] {
  if (kind === 'place') return [];
  if (kind === 'chain') return [{ kind }];
  if (kind === 'link') return chain.links.map((link) => ({ kind, linkId: link.id }));
  if (kind === 'device') return chain.devices.map((device) => ({ kind, deviceId: device.id }));
  return chain.devices.flatMap((device) =>
    device.ports.map((port): Place => ({ kind, deviceId: device.id, portId: port.id })),
  );
}
