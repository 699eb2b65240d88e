import { findDevice, findLink, linkEnds } from '../chain/graph.ts';
import type { Chain, Place } from '../contract/chain.ts';
import type { Case } from './case.ts';
import { changeCatalogue } from './change-catalogue.ts';
import type { TestKind } from './effect-table.ts';

/** What is set up once and then serves several tests: a ladder, an opened rack, a second person who was called in. */
export const clusters = ['ladder', 'rack', 'secondPerson'] as const;
export type Cluster = (typeof clusters)[number];

/** Minutes of a test's set-up that go on it, and are not paid again once it stands; assumed. */
const sharedMin: Record<Cluster, number> = { ladder: 5, rack: 4, secondPerson: 8 };
/** The share of a set-up that is the test's own at the least; assumed. */
const leastOwn = 0.4;

type Made = { test: TestKind; target: Place };

/** Whether hands go to sockets, plugs or mains, rather than to a remote control or a menu. */
const isByHand = (test: TestKind): boolean =>
  changeCatalogue[test].settings === null && changeCatalogue[test].byClient !== 'remoteControl';

/** Devices that one stands before: what is touched, and what a cable that is touched joins. */
function devicesAt(chain: Chain, target: Place) {
  if (target.kind === 'chain') return [];
  if (target.kind !== 'link') return [findDevice(chain, target.deviceId)];
  const link = findLink(chain, target.linkId);
  const ends = link === undefined ? null : linkEnds(chain, link);
  return ends === null ? [] : [ends.source, ends.sink];
}

/**
 * What a test at a place needs to be set up. A display is taken to hang high, and what stands between sources and displays
 * to be in a rack; assumed, since a chain does not say.
 */
export function clustersOf(chain: Chain, { test, target }: Made): Cluster[] {
  if (!isByHand(test)) return [];
  const roles = devicesAt(chain, target).map((device) => device?.role);
  return [
    ...(roles.includes('display') ? (['ladder'] as const) : []),
    ...(roles.some((role) => role !== undefined && role !== 'display' && role !== 'source')
      ? (['rack'] as const)
      : []),
    ...(peopleFor(chain, { test, target }) > 1 ? (['secondPerson'] as const) : []),
  ];
}

/** How many people a test at a place takes: what is heavy or high two, and a cable through a conduit one at each end. */
export function peopleFor(chain: Chain, { test, target }: Made): 1 | 2 {
  const { people, isPulled } = changeCatalogue[test];
  const link = target.kind === 'link' ? findLink(chain, target.linkId) : undefined;
  return isPulled && link?.route === 'inConduit' ? 2 : people;
}

/** What stands already: what the tests of this round needed. */
export const clustersStanding = ({ chain, results }: Pick<Case, 'chain' | 'results'>): Set<Cluster> =>
  new Set(
    results.flatMap((result) =>
      result.kind === 'test' || result.kind === 'outcome' ? clustersOf(chain, result) : [],
    ),
  );

/** Minutes of a set-up that are spared by what stands already. */
export function sparedMin(
  setupMin: number,
  needed: readonly Cluster[],
  standing: ReadonlySet<Cluster>,
): number {
  const shared = needed.reduce((sum, each) => sum + (standing.has(each) ? sharedMin[each] : 0), 0);
  return Math.min(shared, (1 - leastOwn) * setupMin);
}
