import type { Chain, Link } from '../contract/chain.ts';
import { linkEnds } from './look-up.ts';

/** A way round: `linkIds[n]` leads from `deviceIds[n]` to the next device, the last one back to the first. */
export type Loop = { deviceIds: string[]; linkIds: string[] };
type Edge = { link: Link; from: string; to: string };

/**
 * Loops in which the signal of a chain goes round: a short one for each group of devices that feed each other, and
 * each link from a device to itself. A link laid down the wrong way round counts as its ports say; one between
 * two inputs or two outputs, or to something unknown, doesn't count.
 */
export function loopsOf(chain: Chain): Loop[] {
  const edges = chain.links.flatMap((link) => edgeOf(chain, link));
  const self = edges.filter((edge) => edge.from === edge.to);
  const loops = self.map(({ link, from }): Loop => ({ deviceIds: [from], linkIds: [link.id] }));
  const explained = new Set<string>();
  let rest = withoutLooseEnds(edges.filter((edge) => edge.from !== edge.to));
  for (const edge of rest) {
    const back = shortestWay(rest, edge.to, edge.from);
    if (back === null) continue;
    const round = [edge, ...back];
    loops.push({ deviceIds: round.map(({ from }) => from), linkIds: round.map(({ link }) => link.id) });
    for (const id of feedEachOther(rest, edge.from)) explained.add(id);
    rest = rest.filter(({ from }) => !explained.has(from));
  }
  return loops;
}

function edgeOf(chain: Chain, link: Link): Edge[] {
  const from = link.from.deviceId;
  const to = link.to.deviceId;
  const ends = linkEnds(chain, link);
  if (ends === null) return [];
  if (from === to) return [{ link, from, to }];
  if (ends.output.direction === ends.input.direction) return [];
  return ends.output.direction === 'output' ? [{ link, from, to }] : [{ link, from: to, to: from }];
}

/** Edges between devices that are both fed and feed something: an edge of a loop always is one. */
function withoutLooseEnds(edges: Edge[]): Edge[] {
  const feeding = new Set(edges.map(({ from }) => from));
  const fed = new Set(edges.map(({ to }) => to));
  const kept = edges.filter(({ from, to }) => fed.has(from) && feeding.has(to));
  return kept.length === edges.length ? kept : withoutLooseEnds(kept);
}

function shortestWay(edges: Edge[], start: string, goal: string): Edge[] | null {
  const cameBy = new Map<string, Edge | null>([[start, null]]);
  for (const device of cameBy.keys()) {
    if (device === goal) break;
    for (const edge of edges) if (edge.from === device && !cameBy.has(edge.to)) cameBy.set(edge.to, edge);
  }
  if (!cameBy.has(goal)) return null;
  const way: Edge[] = [];
  for (let edge = cameBy.get(goal); edge != null; edge = cameBy.get(edge.from)) way.unshift(edge);
  return way;
}

function feedEachOther(edges: Edge[], deviceId: string): Set<string> {
  const after = spread(edges, deviceId, (edge) => [edge.from, edge.to]);
  const before = spread(edges, deviceId, (edge) => [edge.to, edge.from]);
  return new Set([...after].filter((id) => before.has(id)));
}

function spread(edges: Edge[], start: string, step: (edge: Edge) => [string, string]): Set<string> {
  const found = new Set([start]);
  for (const device of found)
    for (const edge of edges) {
      const [from, to] = step(edge);
      if (from === device) found.add(to);
    }
  return found;
}
