import { componentsBetween, findDevice } from '../chain/graph.ts';
import { placeKey } from '../chain/place.ts';
import type { Device, Place } from '../contract/chain.ts';
import {
  type ComponentKey,
  type Components,
  componentAt,
  deviceKey,
  linkKey,
  linkMeant,
  neighboursOf,
  pathBetween,
  relationOf,
  type Scope,
  upstreamIn,
} from './components.ts';

// The stretches that kinds of change take out of the way of the picture.

const deviceAt = ({ chain }: Components, target: Place): Device | null =>
  target.kind === 'device' || target.kind === 'port' ? (findDevice(chain, target.deviceId) ?? null) : null;

/** All between the sources and the processor, with a source or the processor as the target. */
export function sourcesToProcessor(components: Components, scope: Scope, target: Place): ComponentKey[] {
  const device = deviceAt(components, target);
  const sources = device?.role === 'source' ? [device.id] : scope.affected;
  const processor = device?.role === 'processor' ? device.id : null;
  return sources.flatMap((source) => beforeProcessor(components, source, processor));
}

/** All between a device and the displays. */
export function deviceToDisplays(components: Components, scope: Scope, target: Place): ComponentKey[] {
  const device = deviceAt(components, target);
  return scope.displays.flatMap((display) =>
    device === null ? [] : componentsBetween(components.chain, device.id, display).map(placeKey),
  );
}

/** All that feeds the processor, but the source that now plays straight into it. */
function beforeProcessor(components: Components, source: string, processor: string | null): ComponentKey[] {
  const isProcessor = (key: ComponentKey) =>
    components.known.get(key)?.device?.role === 'processor' &&
    relationOf(components, deviceKey(source), key) === 'downstream';
  const at = processor === null ? components.keys.find(isProcessor) : deviceKey(processor);
  const before = at === undefined ? [] : upstreamIn(components, at);
  return before.filter((key) => key !== deviceKey(source));
}

/** A link that leaves the way of the picture, and all that hangs on it alone. */
export function branchAt(components: Components, scope: Scope, target: Place): ComponentKey[] {
  const at = componentAt(target);
  const into = neighboursOf(components, at).filter((key) => relationOf(components, at, key) === 'upstream');
  const meant = linkMeant(components.chain, target);
  const from = meant === null ? into : [linkKey(meant.id)];
  const feedsDisplay = (key: ComponentKey) =>
    scope.displays.some((id) => ['own', 'upstream'].includes(relationOf(components, deviceKey(id), key)));
  const beyond = components.keys.filter(
    (key) => from.includes(key) || from.some((link) => relationOf(components, link, key) === 'downstream'),
  );
  return beyond.filter((key) => !feedsDisplay(key));
}

/** What the picture no longer passes when another source plays; a brought source spares only the one it stands for. */
export function sparedBySource(components: Components, scope: Scope, target: Place): ComponentKey[] {
  const other = deviceAt(components, target)?.id;
  if (other === undefined) return [];
  if (scope.affected.includes(other) && scope.affected.length === 1) return [deviceKey(other)];
  const passed = pathBetween(components, [other], scope.displays);
  return [...scope.path].filter((key) => !passed.has(key));
}
