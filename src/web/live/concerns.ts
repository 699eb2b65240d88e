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
function addressesOf({ kind, id, ticketId, siteId, packetId }: News): string[] {
  switch (kind) {
    case 'ticket':
      return [`/tickets/${id}`, '/tickets?', '/support-queue'];
    case 'evidence':
      return [`/tickets/${ticketId}`, `/evidence/${id}`];
    case 'site':
      return [`/sites/${id}`, '/sites?'];
    case 'chain':
      return [`/chains/${id}`, `/sites/${siteId}`, '/sites?'];
    case 'packet':
      return [`/packets/${id}`, `/tickets/${ticketId}`];
    case 'grant':
      return [`/packets/${packetId}`];
    case 'grantedPacket':
      return [`/packets/${id}`, '/granted-packets'];
    case 'member':
      return ['/members', '/me'];
    case 'organisation':
      return ['/organisation', '/fault-model', '/chains', '/me'];
    case 'firmwareLevel':
      return ['/firmware-levels', '/chains'];
  }
}
