import { componentsBetween, displaysOf, findDevice, sourcesOf } from '../chain/graph.ts';
import { placeKey } from '../chain/place.ts';
import type { Place } from '../contract/chain.ts';
import type { Case } from './case.ts';
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
} from './components.ts';
import type { Reach, TestKind } from './effect-table.ts';

/** Which sources and displays the fault is seen between. */
export type Scope = {
  affected: readonly string[];
  unaffected: readonly string[];
  displays: readonly string[];
  /** Components on some way from an affected source to an affected display. */
  path: ReadonlySet<ComponentKey>;
};

/** The scope of a case: ids that are not in the chain are left out, and what isn't known is taken as everything. */
export function scopeOf(components: Components, facts: Case): Scope {
  const sources = sourcesOf(facts.chain).map(({ id }) => id);
  const displays = displaysOf(facts.chain).map(({ id }) => id);
  const orAll = (chosen: readonly string[], all: string[]) => {
    const valid = all.filter((id) => chosen.includes(id));
    return valid.length === 0 ? all : valid;
  };
  const affected = orAll(facts.affectedSources, sources);
  const shown = orAll(facts.affectedDisplays, displays);
  const path = new Set(
    affected.flatMap((source) => shown.flatMap((display) => [...pathBetween(components, source, display)])),
  );
  return { affected, unaffected: sources.filter((id) => !affected.includes(id)), displays: shown, path };
}

/** What a change, or playing another source, reaches in one way: components, or none. */
export function reachOf(
  components: Components,
  scope: Scope,
  { test, target }: { test: TestKind; target: Place },
  reach: Reach,
): Iterable<ComponentKey> {
  if (reach === 'anywhere') return scope.path;
  if (reach === 'between') return stretchTakenOut(components, scope, test, target);
  const at = targetOf(components, test, target);
  if (at === null) return [];
  switch (reach) {
    case 'target':
      return [at];
    case 'ends': {
      const link = target.kind === 'port' ? linkMeant(components.chain, target) : null;
      if (target.kind !== 'port') return neighboursOf(components, at);
      return link === null ? [] : [linkKey(link.id)];
    }
    case 'upstream':
      return components.upstream.get(at) ?? [];
    case 'downstream':
      return limitReachesOn(components, test, at)
        ? components.keys.filter((key) => relationOf(components, at, key) === 'downstream')
        : [];
  }
}

function targetOf(components: Components, test: TestKind, target: Place): ComponentKey | null {
  const link = linkMeant(components.chain, target);
  if (test === 'replaceCable' || test === 'temporaryCable' || test === 'insertSyncSwitch')
    return link === null ? componentAt(target) : linkKey(link.id);
  if (test === 'movePort' && target.kind === 'link' && link !== null) return deviceKey(link.to.deviceId);
  return componentAt(target);
}

/** A lower rate asked for at a device's input holds beyond it only where the device passes on what it gets. */
function limitReachesOn(components: Components, test: TestKind, at: ComponentKey): boolean {
  if (test !== 'limitInputBandwidth') return true;
  const device = components.known.get(at)?.device;
  return device != null && !device.processesPicture && device.outputFormat === null;
}

function stretchTakenOut(
  components: Components,
  scope: Scope,
  test: TestKind,
  target: Place,
): ComponentKey[] {
  const { chain } = components;
  const device =
    target.kind === 'device' || target.kind === 'port' ? findDevice(chain, target.deviceId) : null;
  switch (test) {
    case 'sourceIntoProcessor': {
      const sources = device?.role === 'source' ? [device.id] : scope.affected;
      const processor = device?.role === 'processor' ? device.id : null;
      return sources.flatMap((source) => beforeProcessor(components, source, processor));
    }
    case 'moveProcessorToDisplay':
      return scope.displays.flatMap((display) =>
        device == null ? [] : componentsBetween(chain, device.id, display).map(placeKey),
      );
    case 'unplugBranch':
      return branchAt(components, scope, target);
    case 'otherSource':
      return device == null ? [] : spared(components, scope, device.id);
    default:
      return [];
  }
}

/** All that feeds the processor, but the source that now plays straight into it. */
function beforeProcessor(components: Components, source: string, processor: string | null): ComponentKey[] {
  const isProcessor = (key: ComponentKey) =>
    components.known.get(key)?.device?.role === 'processor' &&
    relationOf(components, deviceKey(source), key) === 'downstream';
  const at = processor === null ? components.keys.find(isProcessor) : deviceKey(processor);
  const before = at === undefined ? [] : [...(components.upstream.get(at) ?? [])];
  return before.filter((key) => key !== deviceKey(source));
}

/** A link that leaves the way of the picture, and all that hangs on it alone. */
function branchAt(components: Components, scope: Scope, target: Place): ComponentKey[] {
  const at = componentAt(target);
  if (at === null) return [];
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
function spared(components: Components, scope: Scope, other: string): ComponentKey[] {
  if (scope.affected.includes(other) && scope.affected.length === 1) return [deviceKey(other)];
  const passed = new Set(scope.displays.flatMap((display) => [...pathBetween(components, other, display)]));
  return [...scope.path].filter((key) => !passed.has(key));
}
