import { findDevice, findLink } from '../../../shared/chain/look-up.ts';
import type { Chain, Link, LinkEnd, Place } from '../../../shared/contract/chain.ts';

/** What of a chain's description is corrected on site, as it stands in a form. Lengths in metres, as typed. */
export type FieldName =
  | 'serial'
  | 'firmware'
  | 'lengthM'
  | 'category'
  | 'certified'
  | 'sourceSeated'
  | 'sinkSeated';
export type Values = Partial<Record<FieldName, string>>;

/** The values that can be corrected at a place, as the description has them. */
export function valuesAt(chain: Chain, place: Place): Values {
  if (place.kind === 'link') {
    const link = findLink(chain, place.linkId);
    if (link === undefined) return {};
    return {
      sourceSeated: link.sourceEnd.seated,
      sinkSeated: link.sinkEnd.seated,
      lengthM: String(link.lengthM),
      category: link.category,
      certified: link.certified ? 'yes' : 'no',
    };
  }
  const device = place.kind === 'chain' ? undefined : findDevice(chain, place.deviceId);
  return device === undefined ? {} : { serial: device.serial ?? '', firmware: device.firmware ?? '' };
}

/** A length as people type it; null for what is none. */
export function lengthFrom(text: string): number | null {
  const value = Number(text.trim().replace(',', '.'));
  return text.trim() !== '' && Number.isFinite(value) && value > 0 && value <= 1000 ? value : null;
}

/** The chain with these values at a place; everything else stays as it is. */
export function corrected(chain: Chain, place: Place, values: Values): Chain {
  if (place.kind === 'link') {
    return {
      ...chain,
      links: chain.links.map((link) => (link.id === place.linkId ? correctedLink(link, values) : link)),
    };
  }
  if (place.kind === 'chain') return chain;
  const { serial, firmware } = values;
  return {
    ...chain,
    devices: chain.devices.map((device) =>
      device.id !== place.deviceId
        ? device
        : {
            ...device,
            ...(serial === undefined ? {} : { serial: serial.trim() || null }),
            ...(firmware === undefined ? {} : { firmware: firmware.trim() || null }),
          },
    ),
  };
}

function correctedLink(link: Link, values: Values): Link {
  const { lengthM, category, certified, sourceSeated, sinkSeated } = values;
  const end = (before: LinkEnd, seated: string | undefined): LinkEnd =>
    seated === undefined ? before : { ...before, seated: seated as LinkEnd['seated'] };
  return {
    ...link,
    lengthM: (lengthM === undefined ? null : lengthFrom(lengthM)) ?? link.lengthM,
    category: (category ?? link.category) as Link['category'],
    certified: certified === undefined ? link.certified : certified === 'yes',
    sourceEnd: end(link.sourceEnd, sourceSeated),
    sinkEnd: end(link.sinkEnd, sinkSeated),
  };
}
