import type { Place } from '../../../shared/contract/chain.ts';
import type { EvidenceTie } from '../../../shared/contract/evidence.ts';

/** What evidence of a place is tied to. */
export function tieOf(place: Place): Partial<EvidenceTie> {
  switch (place.kind) {
    case 'chain':
      return {};
    case 'device':
      return { deviceId: place.deviceId };
    case 'port':
      return { deviceId: place.deviceId, portId: place.portId };
    case 'link':
      return { linkId: place.linkId };
  }
}

/** Whether evidence belongs to a device (or one of its ports), or to a cable. */
export const isTiedTo = (tie: Pick<EvidenceTie, 'deviceId' | 'linkId'>, place: Place): boolean =>
  (place.kind === 'link' && tie.linkId === place.linkId) ||
  ((place.kind === 'device' || place.kind === 'port') && tie.deviceId === place.deviceId);
