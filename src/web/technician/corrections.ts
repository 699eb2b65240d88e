import { findDevice, findLink } from '../../../shared/chain/look-up.ts';
import type { Chain, Device, Link, LinkEnd, PassedOn, Place } from '../../../shared/contract/chain.ts';
import { hdrKinds } from '../../../shared/contract/chain-names.ts';
import { lengthFrom } from './common/length.ts';

/** What of a chain's description is corrected on site, as it stands in a form. Lengths in metres, as typed. */
export type FieldName =
  | 'serial'
  | 'firmware'
  | 'hdr'
  | 'lengthM'
  | 'category'
  | 'certified'
  | 'couplers'
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
      couplers: link.couplers === undefined ? '' : String(link.couplers),
    };
  }
  const device = place.kind === 'chain' ? undefined : findDevice(chain, place.deviceId);
  return device === undefined
    ? {}
    : {
        serial: device.serial ?? '',
        firmware: device.firmware ?? '',
        hdr: hdrValue(device.passes?.dynamicRanges),
      };
}

type HdrKind = (typeof hdrKinds)[number];

/** Kinds of HDR as one value of a form: apart by spaces, `none`, or empty where nobody looked them up. */
export const hdrValue = (kinds: readonly HdrKind[] | undefined): string =>
  kinds === undefined
    ? ''
    : kinds.length === 0
      ? 'none'
      : hdrKinds.filter((kind) => kinds.includes(kind)).join(' ');

/** The kinds that such a value stands for; none for `none`, and undefined for an empty one. */
export const hdrKindsOf = (value: string): HdrKind[] | undefined =>
  value === '' ? undefined : hdrKinds.filter((kind) => value.split(' ').includes(kind));

function passesWith(passes: PassedOn | undefined, hdr: string): Pick<Device, 'passes'> {
  const { dynamicRanges: _, ...others } = passes ?? {};
  const kinds = hdrKindsOf(hdr);
  const known = kinds === undefined ? others : { ...others, dynamicRanges: kinds };
  return { passes: Object.keys(known).length === 0 ? undefined : known };
}

/** Couplers as people count them; null for what is no such number, undefined where nobody looked. */
export function couplersFrom(text: string): number | null | undefined {
  if (text.trim() === '') return undefined;
  const value = Number(text.trim());
  return Number.isInteger(value) && value >= 0 && value <= 10 ? value : null;
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
  const { serial, firmware, hdr } = values;
  return {
    ...chain,
    devices: chain.devices.map((device) =>
      device.id !== place.deviceId
        ? device
        : {
            ...device,
            ...(serial === undefined ? {} : { serial: serial.trim() || null }),
            ...(firmware === undefined ? {} : { firmware: firmware.trim() || null }),
            ...(hdr === undefined ? {} : passesWith(device.passes, hdr)),
          },
    ),
  };
}

function correctedLink(link: Link, values: Values): Link {
  const { lengthM, category, certified, couplers, sourceSeated, sinkSeated } = values;
  const counted = couplers === undefined ? link.couplers : couplersFrom(couplers);
  const end = (before: LinkEnd, seated: string | undefined): LinkEnd =>
    seated === undefined ? before : { ...before, seated: seated as LinkEnd['seated'] };
  return {
    ...link,
    lengthM: (lengthM === undefined ? null : lengthFrom(lengthM)) ?? link.lengthM,
    category: (category ?? link.category) as Link['category'],
    certified: certified === undefined ? link.certified : certified === 'yes',
    couplers: counted === null ? link.couplers : counted,
    sourceEnd: end(link.sourceEnd, sourceSeated),
    sinkEnd: end(link.sinkEnd, sinkSeated),
  };
}
