import dagre from '@dagrejs/dagre';
import type { Chain } from '../../../shared/contract/chain.ts';

export type Box = { id: string; x: number; y: number; width: number; height: number };
export type Line = {
  id: string;
  from: string;
  to: string;
  points: readonly { x: number; y: number }[];
  label: { x: number; y: number };
};
export type Layout = { width: number; height: number; devices: readonly Box[]; links: readonly Line[] };

export type Direction = 'down' | 'across';

/** Sizes in units of the drawing, which are CSS pixels at its natural size. */
export const deviceSize = { width: 140, height: 64 } as const;
const labelSize = { width: 34, height: 24 } as const;

const known = new WeakMap<Chain, Partial<Record<Direction, Layout>>>();

/** As `place` does; a chain that is drawn again, with other marks or on another screen, is placed once. */
export function layOut(chain: Chain, direction: Direction): Layout {
  const ofChain = known.get(chain) ?? {};
  const layout = ofChain[direction] ?? place(chain, direction);
  known.set(chain, { ...ofChain, [direction]: layout });
  return layout;
}

/**
 * Places a chain in layers from its sources to its displays: `down` for a phone held upright, `across` for a desk.
 * No two devices overlap. (Layered drawing after Sugiyama, by dagre.)
 */
function place(chain: Chain, direction: Direction): Layout {
  const graph = new dagre.graphlib.Graph({ multigraph: true });
  graph.setGraph({
    rankdir: direction === 'down' ? 'TB' : 'LR',
    nodesep: 28,
    ranksep: 44,
    edgesep: 18,
    marginx: 12,
    marginy: 12,
  });
  const devices = new Set(chain.devices.map(({ id }) => id));
  for (const { id } of chain.devices) graph.setNode(id, { ...deviceSize });
  const links = chain.links.filter(({ from, to }) => devices.has(from.deviceId) && devices.has(to.deviceId));
  for (const { id, from, to } of links)
    graph.setEdge(from.deviceId, to.deviceId, { ...labelSize, labelpos: 'c' }, id);
  dagre.layout(graph);
  const { width = 0, height = 0 } = graph.graph();
  return {
    width,
    height,
    devices: chain.devices.map(({ id }) => {
      const { x, y } = graph.node(id);
      return { id, x, y, ...deviceSize };
    }),
    links: links.map(({ id, from, to }) => {
      const { points, x, y } = graph.edge({ v: from.deviceId, w: to.deviceId, name: id });
      const middle = points[Math.floor(points.length / 2)] ?? { x: 0, y: 0 };
      return {
        id,
        from: from.deviceId,
        to: to.deviceId,
        points,
        label: { x: x ?? middle.x, y: y ?? middle.y },
      };
    }),
  };
}
