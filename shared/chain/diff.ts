import type { Chain, Device, Link, Place, Port, VideoFormat } from '../contract/chain.ts';
import { type Message, message, type NamedPlace } from '../message/index.ts';
import { deviceFields, type Field, linkFields, portFields, type SettingValue, shown } from './diff-fields.ts';
import { namedLink, namedPlace, namedPort } from './named-place.ts';

/**
 * One difference between two chains, for programs and, as `sentence`, for people. `place` lies in the newer chain,
 * but for `removed`, where it lies in the older one. `field` is the contract's name.
 */
export type ChainChange = { sentence: Message; place: Place } & (
  | { kind: 'added' | 'removed'; part: 'device' | 'port' | 'link' }
  | { kind: 'moved'; before: Pick<Link, 'from' | 'to'>; after: Pick<Link, 'from' | 'to'> }
  | { kind: 'changed'; field: string; before: unknown; after: unknown }
  | { kind: 'setting'; key: string; before: SettingValue | null; after: SettingValue | null }
  | { kind: 'wantedFormat'; added: boolean; format: VideoFormat }
);

/**
 * What differs between two chains without faults, matched by id: the chain's own name and wanted formats, then
 * devices with their ports and settings, then links. The order of devices, ports, links, settings and formats is no
 * difference. Identical chains give an empty list.
 */
export function chainDiff(before: Chain, after: Chain): ChainChange[] {
  const devices = matched(before.devices, after.devices);
  const links = matched(before.links, after.links);
  return [
    ...nameChange(before, after),
    ...formatChanges(before, after),
    ...devices.removed.map((device) => devicePart('removed', before, device)),
    ...devices.added.map((device) => devicePart('added', after, device)),
    ...devices.kept.flatMap((pair) => deviceChanges(before, after, pair)),
    ...links.removed.map((link) => linkPart('removed', before, link)),
    ...links.added.map((link) => linkPart('added', after, link)),
    ...links.kept.flatMap((pair) => linkChanges(before, after, pair)),
  ];
}

type Matched<Item> = { removed: Item[]; added: Item[]; kept: [Item, Item][] };

function matched<Item extends { id: string }>(before: Item[], after: Item[]): Matched<Item> {
  const olds = new Map(before.map((item) => [item.id, item]));
  const news = new Map(after.map((item) => [item.id, item]));
  return {
    removed: [...olds.values()].filter(({ id }) => !news.has(id)),
    added: [...news.values()].filter(({ id }) => !olds.has(id)),
    kept: [...news.values()].flatMap((item): [Item, Item][] => {
      const old = olds.get(item.id);
      return old === undefined ? [] : [[old, item]];
    }),
  };
}

function nameChange(before: Chain, after: Chain): ChainChange[] {
  if (before.name === after.name) return [];
  return [
    {
      kind: 'changed',
      place: { kind: 'chain' },
      field: 'name',
      before: before.name,
      after: after.name,
      sentence: message('chainRenamed', { before: before.name, after: after.name }),
    },
  ];
}

function formatChanges(before: Chain, after: Chain): ChainChange[] {
  const missingIn = (formats: VideoFormat[], added: boolean) => (format: VideoFormat) =>
    formats.some((other) => shown(other) === shown(format))
      ? []
      : [
          {
            kind: 'wantedFormat' as const,
            place: { kind: 'chain' as const },
            added,
            format,
            sentence: message(added ? 'formatWanted' : 'formatNoLongerWanted', { format }),
          },
        ];
  return [
    ...before.wantedFormats.flatMap(missingIn(after.wantedFormats, false)),
    ...after.wantedFormats.flatMap(missingIn(before.wantedFormats, true)),
  ];
}

function devicePart(kind: 'added' | 'removed', chain: Chain, { id, model }: Device): ChainChange {
  const place: Place = { kind: 'device', deviceId: id };
  const values = { device: namedPlace(chain, place), model };
  return {
    kind,
    part: 'device',
    place,
    sentence: message(kind === 'added' ? 'deviceAdded' : 'deviceRemoved', values),
  };
}

const linkPart = (kind: 'added' | 'removed', chain: Chain, link: Link): ChainChange => ({
  kind,
  part: 'link',
  place: { kind: 'link', linkId: link.id },
  sentence: message(kind === 'added' ? 'cableAdded' : 'cableRemoved', { cable: namedLink(chain, link) }),
});

function portPart(
  kind: 'added' | 'removed',
  chain: Chain,
  { device, port }: { device: Device; port: Port },
): ChainChange {
  const place: Place = { kind: 'port', deviceId: device.id, portId: port.id };
  const values = { port: namedPlace(chain, place), side: port.direction };
  return {
    kind,
    part: 'port',
    place,
    sentence: message(kind === 'added' ? 'portAdded' : 'portRemoved', values),
  };
}

function deviceChanges(before: Chain, after: Chain, [old, now]: [Device, Device]): ChainChange[] {
  const place: Place = { kind: 'device', deviceId: now.id };
  const ports = matched(old.ports, now.ports);
  return [
    ...fieldChanges(deviceFields, { place, named: namedPlace(after, place) }, [old, now]),
    ...settingChanges({ place, named: namedPlace(after, place) }, old, now),
    ...ports.removed.map((port) => portPart('removed', before, { device: now, port })),
    ...ports.added.map((port) => portPart('added', after, { device: now, port })),
    ...ports.kept.flatMap((pair) => {
      const at: Place = { kind: 'port', deviceId: now.id, portId: pair[1].id };
      return fieldChanges(portFields, { place: at, named: namedPlace(after, at) }, pair);
    }),
  ];
}

function linkChanges(before: Chain, after: Chain, [old, now]: [Link, Link]): ChainChange[] {
  const place: Place = { kind: 'link', linkId: now.id };
  return [
    ...(shown(endsOf(old)) === shown(endsOf(now))
      ? []
      : [
          {
            kind: 'moved' as const,
            place,
            before: endsOf(old),
            after: endsOf(now),
            sentence: message('cableMoved', {
              cable: namedLink(before, old),
              from: namedPort(after, now.from),
              to: namedPort(after, now.to),
            }),
          },
        ]),
    ...fieldChanges(linkFields, { place, named: namedLink(after, now) }, [old, now]),
  ];
}

const endsOf = ({ from, to }: Link): Pick<Link, 'from' | 'to'> => ({ from, to });

/** Where something lies, for programs and by its names. */
type At = { place: Place; named: NamedPlace };

const fieldChanges = <Whole>(
  fields: Field<Whole>[],
  { place, named }: At,
  [old, now]: [Whole, Whole],
): ChainChange[] =>
  fields.flatMap(({ field, read, said }): ChainChange[] => {
    const before = read(old);
    const after = read(now);
    if (shown(before) === shown(after)) return [];
    return [{ kind: 'changed', place, field, before, after, sentence: said(named, old, now) }];
  });

function settingChanges({ place, named: device }: At, old: Device, now: Device): ChainChange[] {
  const keys = [...new Set([...Object.keys(old.settings), ...Object.keys(now.settings)])].sort();
  return keys.flatMap((key): ChainChange[] => {
    const before = own(old.settings, key);
    const after = own(now.settings, key);
    if (before === after) return [];
    const sentence = message('settingChanged', { device, setting: key, before, after });
    return [{ kind: 'setting', place, key, before, after, sentence }];
  });
}

/** A key such as `constructor` is a setting only where somebody wrote it. */
function own(settings: Device['settings'], key: string): SettingValue | null {
  return Object.hasOwn(settings, key) ? (settings[key] ?? null) : null;
}
