import {
  type Component,
  componentsOf,
  componentsOnTheWay,
  findDevice,
  findLink,
  linkAtPort,
  linksAt,
  upstreamOf,
} from '../chain/graph.ts';
import { namedPlace } from '../chain/named-place.ts';
import { placeKey } from '../chain/place.ts';
import type { Chain, Device, Link, Place } from '../contract/chain.ts';
import type { NamedPlace } from '../message/values.ts';
import type { outside } from './failure-modes.ts';

/** What can be at fault, a device, a link or the chain as a whole, as the text that `placeKey` gives it. */
export type ComponentKey = string;
/** Where one component lies as the signal runs from another. */
export type Relation = 'own' | 'upstream' | 'downstream' | 'apart';

export const deviceKey = (deviceId: string): ComponentKey => placeKey({ kind: 'device', deviceId });
export const linkKey = (linkId: string): ComponentKey => placeKey({ kind: 'link', linkId });

/** The chain as a whole, which fails in ways that no device or cable explains alone. */
export const chainKey: ComponentKey = placeKey({ kind: 'chain' });

type Known = {
  place: Component | { kind: 'chain' };
  device: Device | null;
  link: Link | null;
  named: NamedPlace;
};

/** A chain whose devices and links are asked about many times: who lies where is computed once. */
export type Components = {
  chain: Chain;
  /** Devices and links along the signal. */
  keys: readonly ComponentKey[];
  known: ReadonlyMap<ComponentKey, Known>;
  /** Of each device, the ids of those whose signal reaches it. */
  devicesBefore: ReadonlyMap<string, ReadonlySet<string>>;
};

/** Which sources and displays the fault is seen between. */
export type Scope = {
  affected: readonly string[];
  unaffected: readonly string[];
  displays: readonly string[];
  /** Components on some way from an affected source to an affected display. */
  path: ReadonlySet<ComponentKey>;
};

export function componentsIn(chain: Chain): Components {
  const places = componentsOf(chain);
  const known = new Map<ComponentKey, Known>(
    places.map((place) => {
      const device = place.kind === 'device' ? (findDevice(chain, place.deviceId) ?? null) : null;
      const link = place.kind === 'link' ? (findLink(chain, place.linkId) ?? null) : null;
      return [placeKey(place), { place, device, link, named: namedPlace(chain, place) }];
    }),
  );
  const keys = [...known.keys()];
  const whole = { kind: 'chain' } as const;
  known.set(chainKey, { place: whole, device: null, link: null, named: namedPlace(chain, whole) });
  const devicesBefore = new Map(chain.devices.map(({ id }) => [id, upstreamOf(chain, id)]));
  return { chain, keys, known, devicesBefore };
}

/** A component with its names as they are now, for a message. */
export const namedComponent = ({ known }: Components, key: ComponentKey | typeof outside): NamedPlace =>
  known.get(key)?.named ?? { kind: 'outside' };

/** Where `other` lies, seen from `from`. */
export function relationOf(components: Components, from: ComponentKey, other: ComponentKey): Relation {
  if (from === other) return 'own';
  if (feeds(components, other, from)) return 'upstream';
  return feeds(components, from, other) ? 'downstream' : 'apart';
}

/** Everything whose signal reaches a component, in a loop itself too. */
export const upstreamIn = (components: Components, key: ComponentKey): ComponentKey[] =>
  components.keys.filter((each) => feeds(components, each, key));

/** Whether the signal of one component reaches another one: what leaves it comes to where the other begins. */
function feeds({ known, devicesBefore }: Components, one: ComponentKey, other: ComponentKey): boolean {
  const [from, to] = [known.get(one), known.get(other)];
  const begins = to?.device?.id ?? to?.link?.from.deviceId;
  if (from === undefined || begins === undefined) return false;
  const { device, link } = from;
  const comesTo = device === null ? link?.to.deviceId : device.id;
  if (comesTo === undefined) return false;
  // A device comes before what leaves it, but before itself only where a loop leads back to it.
  const isThere = comesTo === begins && (link !== null || to?.link != null);
  return isThere || devicesBefore.get(begins)?.has(comesTo) === true;
}

/** The components on some way from these sources to these displays, ends included; empty when no signal runs there. */
export const pathBetween = (
  { chain }: Components,
  sourceIds: readonly string[],
  displayIds: readonly string[],
): Set<ComponentKey> => new Set(componentsOnTheWay(chain, sourceIds, displayIds).map(placeKey));

/** The component a place stands for: a port stands for its device. */
export function componentAt(place: Place): ComponentKey {
  return place.kind === 'port' ? deviceKey(place.deviceId) : placeKey(place);
}

/** The link a place means: itself, or the one plugged into a port. */
export function linkMeant(chain: Chain, place: Place): Link | null {
  if (place.kind === 'link') return findLink(chain, place.linkId) ?? null;
  return place.kind === 'port' ? (linkAtPort(chain, place) ?? null) : null;
}

/** The two devices a link joins, or the links at a device. */
export function neighboursOf(components: Components, key: ComponentKey): ComponentKey[] {
  const found = components.known.get(key);
  if (found?.link) return [deviceKey(found.link.from.deviceId), deviceKey(found.link.to.deviceId)];
  const id = found?.device?.id;
  return id === undefined ? [] : linksAt(components.chain, id).map((link) => linkKey(link.id));
}
