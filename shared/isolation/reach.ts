import type { Place } from '../contract/chain.ts';
import { changeCatalogue } from './change-catalogue.ts';
import type { Reach } from './change-facts.ts';
import {
  type ComponentKey,
  type Components,
  chainKey,
  componentAt,
  linkKey,
  linkMeant,
  neighboursOf,
  relationOf,
  type Scope,
  upstreamIn,
} from './components.ts';
import type { TestKind } from './effect-table.ts';
import { sendsBeside } from './sources-formats.ts';

/** What a change, or playing another source, reaches in one way: components, or none. */
export function reachOf(
  components: Components,
  scope: Scope,
  { test, target }: { test: TestKind; target: Place },
  reach: Reach,
): Iterable<ComponentKey> {
  if (reach === 'anywhere') return scope.path;
  if (reach === 'between') return changeCatalogue[test].takesOut(components, scope, target);
  if (reach === 'whole') return [chainKey];
  if (reach === 'passedLess') return sendsBeside(components, scope, target) === 'less' ? scope.path : [];
  if (reach === 'passedNotKnown')
    return sendsBeside(components, scope, target) === 'notKnown' ? scope.path : [];
  const at = targetOf(components, test, target);
  switch (reach) {
    case 'target':
      return [at];
    case 'ends': {
      const link = target.kind === 'port' ? linkMeant(components.chain, target) : null;
      if (target.kind !== 'port') return neighboursOf(components, at);
      return link === null ? [] : [linkKey(link.id)];
    }
    case 'upstream':
      return upstreamIn(components, at);
    case 'downstream':
      return limitReachesOn(components, test, at)
        ? components.keys.filter((key) => relationOf(components, at, key) === 'downstream')
        : [];
  }
}

function targetOf({ chain }: Components, test: TestKind, target: Place): ComponentKey {
  const link = changeCatalogue[test].target === 'link' ? linkMeant(chain, target) : null;
  return link === null ? componentAt(target) : linkKey(link.id);
}

/** A lower rate asked for at a device's input holds beyond it only where the device passes on what it gets. */
function limitReachesOn(components: Components, test: TestKind, at: ComponentKey): boolean {
  if (!changeCatalogue[test].isPassedOn) return true;
  const device = components.known.get(at)?.device;
  return device != null && !device.processesPicture && device.outputFormat === null;
}
