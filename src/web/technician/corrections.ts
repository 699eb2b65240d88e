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
  | 'gaugeAwg'
  | 'ratedGbps'
  | 'ratedLengthM'
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
      couplers: textOf(link.couplers),
      gaugeAwg: textOf(link.gaugeAwg),
      ratedGbps: textOf(link.rated?.gbps),
      ratedLengthM: textOf(link.rated?.lengthM),
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

const textOf = (value: number | null | undefined): string => (value == null ? '' : String(value));

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

/** What can be read off a cable's jacket or counted, and what the contract takes for each. */
const countsOfLink = {
  couplers: { least: 0, most: 10, isWhole: true },
  gaugeAwg: { least: 18, most: 36, isWhole: true },
  ratedGbps: { least: 0.1, most: 48, isWhole: false },
  ratedLengthM: { least: 0.1, most: 1000, isWhole: false },
} as const;
export type CountName = keyof typeof countsOfLink;
export const countNames = Object.keys(countsOfLink) as CountName[];

/** Such a number as typed, with a comma or a point; null for what is none, undefined where nobody looked. */
export function countFrom(name: CountName, text: string): number | null | undefined {
  if (text.trim() === '') return undefined;
  const value = Number(text.trim().replace(',', '.'));
  const { least, most, isWhole } = countsOfLink[name];
  const isOne = value >= least && value <= most && (!isWhole || Number.isInteger(value));
  return isOne ? value : null;
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
  const { lengthM, category, certified, sourceSeated, sinkSeated } = values;
  const counted = (name: CountName, before: number | undefined): number | undefined => {
    const text = values[name];
    const typed = text === undefined ? null : countFrom(name, text);
    return typed === null ? before : typed;
  };
  const gbps = counted('ratedGbps', link.rated?.gbps);
  const ratedLengthM = counted('ratedLengthM', link.rated?.lengthM ?? undefined);
  const end = (before: LinkEnd, seated: string | undefined): LinkEnd =>
    seated === undefined ? before : { ...before, seated: seated as LinkEnd['seated'] };
  return {
    ...link,
    lengthM: (lengthM === undefined ? null : lengthFrom(lengthM)) ?? link.lengthM,
    category: (category ?? link.category) as Link['category'],
    certified: certified === undefined ? link.certified : certified === 'yes',
    couplers: counted('couplers', link.couplers),
    gaugeAwg: counted('gaugeAwg', link.gaugeAwg),
    rated: gbps === undefined ? undefined : { gbps, lengthM: ratedLengthM ?? null },
    sourceEnd: end(link.sourceEnd, sourceSeated),
    sinkEnd: end(link.sinkEnd, sinkSeated),
  };
}
