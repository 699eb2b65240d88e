import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { openChange } from '../../../state-machines/triage/record.ts';
import { segmentOf } from '../../../state-machines/triage/segment.ts';
import type { Marks } from '../drawing/marks.ts';

/**
 * What a ticket says of the places of its chain: where the fault can still lie, once that is less than everywhere;
 * the change that is open; the cause, once it is named.
 */
export function marksOf({ triage }: Ticket, chain: Chain): Marks {
  const segment = segmentOf(triage);
  const places: Place[] =
    segment === null || triage.culprit !== null
      ? []
      : [
          ...segment.deviceIds.map((deviceId): Place => ({ kind: 'device', deviceId })),
          ...segment.linkIds.map((linkId): Place => ({ kind: 'link', linkId })),
        ];
  const isEverywhere = places.length >= chain.devices.length + chain.links.length;
  return {
    suspects: isEverywhere ? [] : places.map((place) => ({ place, chance: null })),
    change: openChange(triage)?.target ?? null,
    culprit: triage.culprit?.place ?? null,
  };
}
