import { placeExists } from '../../../shared/chain/place.ts';
import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { EvidenceTie } from '../../../shared/contract/evidence.ts';
import { type Context, type Refused, refused } from '../../http/index.ts';
import { readChain } from '../chains/index.ts';
import type { TicketCase } from '../ticket-record/index.ts';

/**
 * Why evidence can't be tied to these places; null where it can. A place counts when the chain has it now or had it
 * when it was recorded as found. Watches and changes are the triage machine's to check.
 */
export async function refusalOfTie(
  context: Context,
  { chainId, snapshot }: TicketCase,
  tie: EvidenceTie,
): Promise<Refused | null> {
  const places = placesOf(tie);
  if (places === null) {
    return refused('invalid-input', 'A port is named with its device.', {
      errors: [{ pointer: '/tie/deviceId', code: 'required', text: 'name the device that has the port' }],
    });
  }
  if (places.length === 0) return null;
  const newest = await readChain(context, chainId);
  if (!newest.ok) return newest;
  const chains: Chain[] = [newest.body.chain];
  const { asFound } = snapshot.context;
  if (asFound !== null) chains.push(asFound.chain);
  const unknown = places.find((place) => !chains.some((chain) => placeExists(chain, place)));
  if (unknown === undefined) return null;
  return refused('unknown-reference', `The chain has no such ${unknown.kind}.`, { place: unknown });
}

function placesOf({ deviceId, portId, linkId }: EvidenceTie): Place[] | null {
  if (portId !== null && deviceId === null) return null;
  const places: Place[] = [];
  if (deviceId !== null) {
    places.push(portId === null ? { kind: 'device', deviceId } : { kind: 'port', deviceId, portId });
  }
  if (linkId !== null) places.push({ kind: 'link', linkId });
  return places;
}
