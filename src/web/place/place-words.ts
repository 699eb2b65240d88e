import type { Chain, Place } from '../../../shared/contract/chain.ts';
import { wordsOf } from '../words/language.ts';

const t = wordsOf({
  en: {
    chain: 'the whole chain',
    link: (id: string, from: string, to: string) => `Cable ${id} (${from} → ${to})`,
    port: (label: string, device: string) => `${device}, ${label}`,
  },
  de: {
    chain: 'die ganze Kette',
    link: (id, from, to) => `Kabel ${id} (${from} → ${to})`,
    port: (label, device) => `${device}, ${label}`,
  },
});

export const deviceWord = (chain: Chain, deviceId: string): string =>
  chain.devices.find(({ id }) => id === deviceId)?.name ?? deviceId;

/** What a place is called on second line's screens: short, with the id that is in the drawing. */
export function placeWord(chain: Chain, place: Place): string {
  switch (place.kind) {
    case 'chain':
      return t().chain;
    case 'device':
      return deviceWord(chain, place.deviceId);
    case 'port': {
      const device = chain.devices.find(({ id }) => id === place.deviceId);
      const label = device?.ports.find(({ id }) => id === place.portId)?.label ?? place.portId;
      return t().port(label, device?.name ?? place.deviceId);
    }
    case 'link': {
      const link = chain.links.find(({ id }) => id === place.linkId);
      if (link === undefined) return place.linkId;
      return t().link(link.id, deviceWord(chain, link.from.deviceId), deviceWord(chain, link.to.deviceId));
    }
  }
}
