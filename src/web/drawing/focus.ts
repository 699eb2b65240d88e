import type { Chain } from '../../../shared/contract/chain.ts';

/** How much a device matters on the drawing, by its id; one that is missing counts as nothing special. */
export type Weights = ReadonlyMap<string, number>;

/** What a device without a weight counts on a way: of two ways that matter the same, the longer one is drawn large. */
const anyDevice = 0.001;

/**
 * The devices that are drawn large: along the way from a source to a display that matters most, then what else has a
 * weight, heaviest first, at most so many. Loops are walked once round.
 */
export function focusOf(chain: Chain, weights: Weights, most: number): Set<string> {
  const of = (id: string): number => anyDevice + (weights.get(id) ?? 0);
  const focus = new Set(heaviestPart(heaviestWay(chain, of), of, most));
  const others = [...weights].filter(([id, weight]) => weight > 0 && !focus.has(id));
  for (const [id] of others.toSorted(([, one], [, other]) => other - one)) {
    if (focus.size >= most) break;
    if (chain.devices.some((device) => device.id === id)) focus.add(id);
  }
  return focus;
}

type Way = { weight: number; next: string | null };

function heaviestWay(chain: Chain, of: (id: string) => number): string[] {
  const after = new Map<string, string[]>(chain.devices.map(({ id }) => [id, []]));
  for (const { from, to } of chain.links)
    if (after.has(to.deviceId)) after.get(from.deviceId)?.push(to.deviceId);
  const known = new Map<string, Way | 'inProgress'>();
  const wayFrom = (id: string): Way => {
    const found = known.get(id);
    if (found === 'inProgress') return { weight: 0, next: null };
    if (found !== undefined) return found;
    known.set(id, 'inProgress');
    let best: Way = { weight: 0, next: null };
    for (const next of after.get(id) ?? []) {
      const { weight } = wayFrom(next);
      if (weight > best.weight) best = { weight, next };
    }
    const way = { weight: best.weight + of(id), next: best.next };
    known.set(id, way);
    return way;
  };
  const starts = chain.devices.map(({ id }) => ({ id, weight: wayFrom(id).weight }));
  const [start] = starts.toSorted((one, other) => other.weight - one.weight);
  const way: string[] = [];
  for (let id = start?.id ?? null; id !== null && !way.includes(id); id = wayFrom(id).next) way.push(id);
  return way;
}

/** The stretch of a way, so many devices long, that weighs most; the first of those that weigh the same. */
function heaviestPart(way: readonly string[], of: (id: string) => number, most: number): string[] {
  const weightFrom = (start: number): number =>
    way.slice(start, start + most).reduce((sum, id) => sum + of(id), 0);
  let best = 0;
  for (let start = 1; start + most <= way.length; start += 1)
    if (weightFrom(start) > weightFrom(best) + anyDevice / 2) best = start;
  return way.slice(best, best + most);
}
