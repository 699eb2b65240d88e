import type { Chain, Link } from '../../../shared/contract/chain.ts';

/** A branch that is drawn as one: its devices small, its own cables not at all. */
export type Fold = { id: string; deviceIds: readonly string[]; innerLinkIds: readonly string[] };
/** One cable, or several between the same two boxes of which one is a fold. */
export type Bundle = { id: string; from: string; to: string; linkIds: readonly string[] };
export type Folded = { cards: readonly string[]; folds: readonly Fold[]; bundles: readonly Bundle[] };

/**
 * Folds all devices that are not in focus: those that hang together and hang on the same devices in focus become one
 * branch. Every device is either a card or in one branch; cables that lead nowhere are left out.
 */
export function foldedAround(chain: Chain, focus: ReadonlySet<string>): Folded {
  const ids = new Set(chain.devices.map(({ id }) => id));
  const links = chain.links.filter(({ from, to }) => ids.has(from.deviceId) && ids.has(to.deviceId));
  const rest = chain.devices.filter(({ id }) => !focus.has(id)).map(({ id }) => id);
  const branches = new Map<string, string[]>();
  for (const part of partsOf(rest, links)) {
    const key = whereItHangs(new Set(part), links, focus);
    branches.set(key, [...(branches.get(key) ?? []), ...part]);
  }
  const foldOf = new Map<string, string>();
  const folds = [...branches].map(([key, deviceIds]): Fold => {
    const id = `branch ${key}`;
    for (const deviceId of deviceIds) foldOf.set(deviceId, id);
    const own = new Set(deviceIds);
    const inner = links.filter(({ from, to }) => own.has(from.deviceId) && own.has(to.deviceId));
    return { id, deviceIds, innerLinkIds: inner.map((link) => link.id) };
  });
  return {
    cards: chain.devices.filter(({ id }) => focus.has(id)).map(({ id }) => id),
    folds,
    bundles: bundled(links, (deviceId) => foldOf.get(deviceId) ?? deviceId, new Set(branchIds(folds))),
  };
}

const branchIds = (folds: readonly Fold[]): string[] => folds.map(({ id }) => id);

/** The parts of some devices that hang together by cables among themselves, in the order of the devices. */
function partsOf(deviceIds: readonly string[], links: readonly Link[]): string[][] {
  const beside = new Map<string, string[]>(deviceIds.map((id) => [id, []]));
  for (const { from, to } of links) {
    if (!beside.has(from.deviceId) || !beside.has(to.deviceId)) continue;
    beside.get(from.deviceId)?.push(to.deviceId);
    beside.get(to.deviceId)?.push(from.deviceId);
  }
  const seen = new Set<string>();
  return deviceIds.flatMap((start) => {
    if (seen.has(start)) return [];
    seen.add(start);
    const part = [start];
    for (let at = 0; at < part.length; at += 1)
      for (const next of beside.get(part[at] ?? '') ?? [])
        if (!seen.has(next)) {
          seen.add(next);
          part.push(next);
        }
    return [part];
  });
}

function whereItHangs(part: ReadonlySet<string>, links: readonly Link[], focus: ReadonlySet<string>): string {
  const ends = links.flatMap(({ from, to }) => {
    if (part.has(from.deviceId) && focus.has(to.deviceId)) return [`before ${to.deviceId}`];
    if (part.has(to.deviceId) && focus.has(from.deviceId)) return [`after ${from.deviceId}`];
    return [];
  });
  return [...new Set(ends)].toSorted().join(', ');
}

function bundled(
  links: readonly Link[],
  boxOf: (deviceId: string) => string,
  branches: ReadonlySet<string>,
): Bundle[] {
  const found = new Map<string, Bundle & { linkIds: string[] }>();
  for (const { id, from, to } of links) {
    const [start, end] = [boxOf(from.deviceId), boxOf(to.deviceId)];
    if (start === end && branches.has(start)) continue;
    const isBundle = branches.has(start) || branches.has(end);
    const key = isBundle ? `${start} > ${end}` : `cable ${id}`;
    const bundle = found.get(key) ?? { id: key, from: start, to: end, linkIds: [] };
    bundle.linkIds.push(id);
    found.set(key, bundle);
  }
  return [...found.values()];
}

/** A branch with more devices than this is opened along its own longest way, the rest of it stays folded; assumed. */
const openedAtOnce = 10;

/** The devices that come out of a branch when it is opened. */
export function opened(
  chain: Chain,
  fold: Fold,
  focusOf: (chain: Chain, most: number) => Set<string>,
): Set<string> {
  if (fold.deviceIds.length <= openedAtOnce) return new Set(fold.deviceIds);
  const own = new Set(fold.deviceIds);
  const part = { ...chain, devices: chain.devices.filter(({ id }) => own.has(id)) };
  return focusOf(part, openedAtOnce);
}
