import type { Chain, Device, Link, Place, Port, VideoFormat } from '../contract/chain.ts';
import {
  deviceFields,
  type Field,
  linkFields,
  portFields,
  type SettingValue,
  settingText,
  shown,
} from './diff-fields.ts';
import { bareName, deviceName, linkName, placeName, socketName } from './place.ts';
import { formatName } from './signal-mode.ts';

/**
 * One difference between two chains, for programs and, as `sentence`, for people. `place` lies in the newer chain,
 * but for `removed`, where it lies in the older one. `field` is the contract's name.
 */
export type ChainChange = { sentence: string; place: Place } & (
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
    ...devices.kept.flatMap((pair) => deviceChanges(before, after, ...pair)),
    ...links.removed.map((link) => linkPart('removed', before, link)),
    ...links.added.map((link) => linkPart('added', after, link)),
    ...links.kept.flatMap((pair) => linkChanges(before, after, ...pair)),
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
      sentence: `The chain is now called '${after.name}', was '${before.name}'`,
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
            sentence: `${added ? 'Now wanted' : 'No longer wanted'}: ${formatName(format)}`,
          },
        ];
  return [
    ...before.wantedFormats.flatMap(missingIn(after.wantedFormats, false)),
    ...after.wantedFormats.flatMap(missingIn(before.wantedFormats, true)),
  ];
}

function devicePart(kind: 'added' | 'removed', chain: Chain, device: Device): ChainChange {
  const model = device.model === null ? '' : `, model ${device.model}`;
  return {
    kind,
    part: 'device',
    place: { kind: 'device', deviceId: device.id },
    sentence: `${kind === 'added' ? 'New' : 'Removed'}: ${deviceName(chain, device.id)}${model}`,
  };
}

function linkPart(kind: 'added' | 'removed', chain: Chain, link: Link): ChainChange {
  const name = linkName(chain, link).replace(/^the /, '');
  return {
    kind,
    part: 'link',
    place: { kind: 'link', linkId: link.id },
    sentence: `${kind === 'added' ? 'New' : 'Removed'} ${name}`,
  };
}

function deviceChanges(before: Chain, after: Chain, old: Device, now: Device): ChainChange[] {
  const place: Place = { kind: 'device', deviceId: now.id };
  const ports = matched(old.ports, now.ports);
  const portPart = (kind: 'added' | 'removed', chain: Chain, port: Port): ChainChange => {
    const at: Place = { kind: 'port', deviceId: now.id, portId: port.id };
    const change = kind === 'added' ? 'New' : 'Removed';
    return {
      kind,
      part: 'port',
      place: at,
      sentence: `${change} ${port.direction}: ${placeName(chain, at)}`,
    };
  };
  return [
    ...fieldChanges(deviceFields, place, deviceName(after, now.id), old, now),
    ...settingChanges(place, deviceName(after, now.id), old, now),
    ...ports.removed.map((port) => portPart('removed', before, port)),
    ...ports.added.map((port) => portPart('added', after, port)),
    ...ports.kept.flatMap(([oldPort, port]) => {
      const at: Place = { kind: 'port', deviceId: now.id, portId: port.id };
      return fieldChanges(portFields, at, placeName(after, at), oldPort, port);
    }),
  ];
}

function linkChanges(before: Chain, after: Chain, old: Link, now: Link): ChainChange[] {
  const place: Place = { kind: 'link', linkId: now.id };
  const ends = (chain: Chain, { from, to }: Link): string =>
    `${bareName(chain, from.deviceId)} to ${bareName(chain, to.deviceId)}`;
  const name = `Cable ${now.id} (${ends(after, now)})`;
  const sockets = (chain: Chain, { from, to }: Link): string =>
    `${socketName(chain, from)} to ${socketName(chain, to)}`;
  const [was, is] = [old, now].map(({ from, to }) => ({ from, to }));
  const moved: ChainChange[] =
    was === undefined || is === undefined || shown(was) === shown(is)
      ? []
      : [
          {
            kind: 'moved',
            place,
            before: was,
            after: is,
            sentence: `Cable ${now.id} now runs from ${sockets(after, now)}, was from ${sockets(before, old)}`,
          },
        ];
  return [...moved, ...fieldChanges(linkFields, place, name, old, now)];
}

function fieldChanges<Whole>(
  fields: Field<Whole>[],
  place: Place,
  name: string,
  old: Whole,
  now: Whole,
): ChainChange[] {
  return fields.flatMap(({ field, read, sentence }): ChainChange[] => {
    const before = read(old);
    const after = read(now);
    if (shown(before) === shown(after)) return [];
    return [{ kind: 'changed', place, field, before, after, sentence: sentence(name, old, now) }];
  });
}

function settingChanges(place: Place, name: string, old: Device, now: Device): ChainChange[] {
  const keys = [...new Set([...Object.keys(old.settings), ...Object.keys(now.settings)])].sort();
  return keys.flatMap((key): ChainChange[] => {
    const before = own(old.settings, key);
    const after = own(now.settings, key);
    if (before === after) return [];
    const sentence = `Setting '${key}' of ${name}: ${settingText(before)} → ${settingText(after)}`;
    return [{ kind: 'setting', place, key, before, after, sentence }];
  });
}

/** A key such as `constructor` is a setting only where somebody wrote it. */
function own(settings: Device['settings'], key: string): SettingValue | null {
  return Object.hasOwn(settings, key) ? (settings[key] ?? null) : null;
}
