import { placeExists } from '../../../shared/chain/place.ts';
import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { EvidenceTie } from '../../../shared/contract/evidence.ts';
import { type Message, message } from '../../../shared/message/index.ts';
import { type Context, type Refused, refused } from '../../http/index.ts';
import { readChain } from '../chains/index.ts';
import type { TicketCase } from '../ticket-record/index.ts';

type TiedPlace = Exclude<Place, { kind: 'chain' }>;

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
    return refused('invalid-input', message('portNeedsDevice'), {
      errors: [{ pointer: '/tie/deviceId', ...message('deviceOfPortMissing') }],
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
  return refused('unknown-reference', lacking(unknown), { place: unknown });
}

const lacking = (place: TiedPlace): Message => {
  switch (place.kind) {
    case 'device':
      return message('chainLacksDevice', { deviceId: place.deviceId });
    case 'port':
      return message('chainLacksPort', { portId: place.portId });
    case 'link':
      return message('chainLacksLink', { linkId: place.linkId });
  }
};

function placesOf({ deviceId, portId, linkId }: EvidenceTie): TiedPlace[] | null {
  if (portId !== null && deviceId === null) return null;
  const places: TiedPlace[] = [];
  if (deviceId !== null) {
    places.push(portId === null ? { kind: 'device', deviceId } : { kind: 'port', deviceId, portId });
  }
  if (linkId !== null) places.push({ kind: 'link', linkId });
  return places;
}
