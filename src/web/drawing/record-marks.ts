import { chainDiff } from '../../../shared/chain/diff.ts';
import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { readingsAsFound } from '../../../state-machines/triage/looks.ts';
import { traceOf } from '../../../state-machines/triage/trace.ts';
import type { Marks } from './marks.ts';

/** What a ticket's record says of the places of `chain`: what differs from as found, what was read. */
export function recordMarks(triage: Ticket['triage'], chain: Chain): Marks {
  const asFound = triage.asFound?.chain;
  const readings = readingsAsFound(triage);
  const trace =
    readings.length === 0 ? null : traceOf({ chain: asFound ?? chain, symptom: triage.symptom }, readings);
  const at = (deviceId: string): Place => ({ kind: 'device', deviceId });
  const wrong = new Set(trace?.points.flatMap(({ says, deviceId }) => (says === 'wrong' ? deviceId : [])));
  const right = new Set(trace?.points.flatMap(({ deviceId }) => (wrong.has(deviceId) ? [] : deviceId)));
  return {
    differs: asFound === undefined ? [] : placesOnce(chainDiff(asFound, chain).map(({ place }) => place)),
    wrong: [...wrong].map(at),
    right: [...right].map(at),
  };
}

/** Devices and cables, each once; a port counts as its device. */
function placesOnce(places: readonly Place[]): Place[] {
  const found = new Map<string, Place>();
  for (const place of places) {
    if (place.kind === 'link') found.set(`link ${place.linkId}`, place);
    if (place.kind === 'device' || place.kind === 'port')
      found.set(`device ${place.deviceId}`, { kind: 'device', deviceId: place.deviceId });
  }
  return [...found.values()];
}
