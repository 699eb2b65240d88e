import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { OwnChange } from '../../../shared/contract/own-change.ts';
import { changeCatalogue } from '../../../shared/isolation/change-catalogue.ts';
import type { ChangeFacts } from '../../../shared/isolation/change-facts.ts';
import { type ComponentKey, componentAt, deviceKey } from '../../../shared/isolation/components.ts';

/** Parts of a chain that changes are looked for at; null: all of them. */
export type Parts = ReadonlySet<ComponentKey> | null;

/** Every place of a kind at these parts. */
export const placesAt = (chain: Chain, kind: ChangeFacts['target'], parts: Parts): Place[] =>
  parts === null
    ? everyPlace(chain, kind)
    : everyPlace(chain, kind).filter((place) => place.kind === 'chain' || parts.has(componentAt(place)));

/** Every place of a kind; none for what is made to any place, since nobody can know which is meant. */
export function everyPlace(chain: Chain, kind: ChangeFacts['target']): Place[] {
  if (kind === 'place') return [];
  if (kind === 'chain') return [{ kind }];
  if (kind === 'link') return chain.links.map((link) => ({ kind, linkId: link.id }));
  if (kind === 'device') return chain.devices.map((device) => ({ kind, deviceId: device.id }));
  return chain.devices.flatMap((device) =>
    device.ports.map((port): Place => ({ kind, deviceId: device.id, portId: port.id })),
  );
}

/** How many changes can be asked for at a device, with those at its ports, or at a link. */
export function asksAt(chain: Chain, ownChanges: readonly OwnChange[]): (part: ComponentKey) => number {
  const kinds = Object.values(changeCatalogue).map(({ target }): string => target);
  const targets = [...kinds, ...ownChanges.map(({ actsOn }) => actsOn)];
  const kindsAt = (target: string) => targets.filter((each) => each === target).length;
  const [atDevice, atPort, atLink] = [kindsAt('device'), kindsAt('port'), kindsAt('link')];
  const ofDevices = new Map(
    chain.devices.map(({ id, ports }) => [deviceKey(id), atDevice + atPort * ports.length]),
  );
  return (part) => ofDevices.get(part) ?? atLink;
}
