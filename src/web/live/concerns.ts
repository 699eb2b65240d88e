import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import type { News } from '../../../shared/contract/news.ts';

/** The addresses whose documents a piece of news may have changed: those below, and a list with any query. */
export function concerns(news: News): (path: string) => boolean {
  const addresses = addressesOf(news);
  return (path) => {
    const [address = ''] = path.split('?', 1);
    return addresses.some((one) =>
      one.endsWith('?') ? address === one.slice(0, -1) : address === one || address.startsWith(`${one}/`),
    );
  };
}

/** With `?` at its end: that list itself, and nothing below it. */
const list = (address: string): string => `${address}?`;

const everyChain = addresses.chain.replace('/:id', '');

function addressesOf({ kind, id, ...of }: News): string[] {
  const { ticketId = '', siteId = '', packetId = '' } = of;
  switch (kind) {
    case 'ticket':
      return [
        addressOf(addresses.ticket, { id }),
        list(addresses.tickets),
        addresses.supportQueue,
        addresses.pastCases,
      ];
    case 'evidence':
      return [addressOf(addresses.ticket, { id: ticketId }), addressOf(addresses.evidence, { id })];
    case 'site':
      return [addressOf(addresses.site, { id }), list(addresses.sites)];
    case 'chain':
      return [
        addressOf(addresses.chain, { id }),
        addressOf(addresses.site, { id: siteId }),
        list(addresses.sites),
      ];
    case 'packet':
      return [addressOf(addresses.packet, { id }), addressOf(addresses.ticket, { id: ticketId })];
    case 'grant':
      return [addressOf(addresses.packet, { id: packetId })];
    case 'grantedPacket':
      return [addressOf(addresses.packet, { id }), addresses.grantedPackets];
    case 'member':
      return [addresses.members, addresses.me];
    case 'organisation':
      return [addresses.organisation, addresses.faultModel, everyChain, addresses.me];
    case 'firmwareLevel':
      return [addresses.firmwareLevels, everyChain];
  }
}
