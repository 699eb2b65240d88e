import dagre from '@dagrejs/dagre';
import type { Chain } from '../../../shared/contract/chain.ts';
import {
  type Box,
  type Branch,
  type Direction,
  fitScale,
  type Layout,
  signsHeight,
  type Window,
  wordsHeight,
} from './fit.ts';
import { focusOf, type Weights } from './focus.ts';
import { type Bundle, type Fold, type Folded, foldedAround } from './fold.ts';

export type Wanted = {
  weights?: Weights;
  /** Devices out of branches that were opened. */
  opened?: ReadonlySet<string>;
  /** Cables that have signs, and need room for them. */
  signed?: ReadonlySet<string>;
};

/** Units are CSS pixels at a drawing's natural size. */
const card = { width: 150, height: 68 } as const;
const cableLabel = { width: 78, height: wordsHeight } as const;
/** With signs, and the bar below them. */
const signedLabel = { width: 96, height: wordsHeight + signsHeight + 8 } as const;
const headHeight = 26;
const gap = 6;
const margin = 14;
/** Sizes of devices in branches: the more there are, the smaller; assumed, by looking. */
const smallSizes = [
  { upTo: 12, width: 60, height: 28 },
  { upTo: 40, width: 44, height: 22 },
  { upTo: 100, width: 30, height: 16 },
  { upTo: Number.POSITIVE_INFINITY, width: 24, height: 13 },
] as const;

/** A chain is drawn whole while its cards are at least so wide on the screen, CSS pixels; assumed, by looking. */
const narrowestCard = 88;
const mostUnfolded = 24;
/** So many cards along what matters, or the next fewer, until they are that wide; assumed, by looking. */
const mostInFocus = [12, 9, 7, 5, 4, 3] as const;
/**
 * Places a chain so that all of it lies in the window: whole where its cards stay legible, else with the way that
 * matters large and the rest as branches. No two boxes overlap. From sources to displays, down or across, whichever
 * comes out larger. (Layered drawing after Sugiyama, by dagre.)
 */
export function layOut(chain: Chain, window: Window, wanted: Wanted = {}): Layout {
  const { weights = new Map(), opened, signed = new Set() } = wanted;
  const all = new Set(chain.devices.map(({ id }) => id));
  if (all.size <= mostUnfolded) {
    const whole = larger(foldedAround(chain, all), window, signed);
    if (all.size <= 2 || isLegible(whole, window)) return whole;
  }
  let best: Layout | null = null;
  let before: number | null = null;
  for (const most of mostInFocus) {
    const focus = focusOf(chain, weights, most);
    if (focus.size === before) continue;
    before = focus.size;
    const layout = larger(foldedAround(chain, new Set([...focus, ...(opened ?? [])])), window, signed);
    if (best === null || fitScale(layout, window) > fitScale(best, window)) best = layout;
    if (isLegible(best, window)) break;
  }
  return best ?? larger(foldedAround(chain, all), window, signed);
}

const isLegible = (layout: Layout, window: Window): boolean =>
  fitScale(layout, window) * card.width >= narrowestCard;

function larger(folded: Folded, window: Window, signed: ReadonlySet<string>): Layout {
  const [down, across] = [place(folded, 'down', signed), place(folded, 'across', signed)];
  return fitScale(across, window) > fitScale(down, window) ? across : down;
}

function place(folded: Folded, direction: Direction, signed: ReadonlySet<string>): Layout {
  const labelOf = ({ linkIds: [first = '', ...others] }: Bundle) =>
    others.length === 0 && signed.has(first) ? signedLabel : cableLabel;
  const graph = new dagre.graphlib.Graph({ multigraph: true });
  graph.setGraph({
    rankdir: direction === 'down' ? 'TB' : 'LR',
    nodesep: 18,
    ranksep: direction === 'down' ? 14 : 12,
    edgesep: 10,
    marginx: margin,
    marginy: margin,
  });
  const small = smallSize(folded);
  const grids = new Map(folded.folds.map((fold) => [fold.id, gridOf(fold, small, direction)]));
  for (const id of folded.cards) graph.setNode(id, { ...card });
  for (const [id, { width, height }] of grids) graph.setNode(id, { width, height });
  for (const bundle of folded.bundles)
    graph.setEdge(bundle.from, bundle.to, { ...labelOf(bundle), labelpos: 'c' }, bundle.id);
  for (const [from, to] of heldBelow(folded)) graph.setEdge(from, to, { weight: 0 }, `below ${to}`);
  dagre.layout(graph);
  const boxOf = (id: string): Box => {
    const { x, y, width, height } = graph.node(id);
    return { id, x: x - width / 2, y: y - height / 2, width, height };
  };
  const { width = 0, height = 0 } = graph.graph();
  return {
    width,
    height,
    direction,
    devices: folded.cards.map(boxOf),
    branches: folded.folds.map((fold) => branchAt(fold, boxOf(fold.id), small)),
    lines: folded.bundles.map((bundle) => {
      const { points, x, y } = graph.edge({ v: bundle.from, w: bundle.to, name: bundle.id });
      const middle = points[Math.floor(points.length / 2)] ?? { x: 0, y: 0 };
      const { width: wide, height: high } = labelOf(bundle);
      const label = {
        x: (x ?? middle.x) - wide / 2,
        y: (y ?? middle.y) - high / 2,
        width: wide,
        height: high,
      };
      return { ...bundle, points, label };
    }),
  };
}

/** Branches that hang on nothing drawn large come after the end of the way, not beside its beginning. */
function heldBelow({ cards, folds, bundles }: Folded): [from: string, to: string][] {
  const isCard = new Set(cards);
  const end = cards.find((id) => !bundles.some(({ from, to }) => from === id && isCard.has(to)));
  const hanging = new Set(bundles.flatMap(({ from, to }) => [from, to]));
  if (end === undefined) return [];
  return folds.filter(({ id }) => !hanging.has(id)).map(({ id }) => [end, id]);
}

type Size = { width: number; height: number };
const smallSize = ({ folds }: Folded): Size => {
  const count = folds.reduce((sum, { deviceIds }) => sum + deviceIds.length, 0);
  return smallSizes.find(({ upTo }) => count <= upTo) ?? smallSizes[3];
};

/** Wider than high where the chain goes down, so that a branch takes little of the way; and the other way round. */
function columnsOf(fold: Fold, small: Size, direction: Direction): number {
  const ratio = direction === 'down' ? 2.2 : 0.9;
  const columns = Math.sqrt((fold.deviceIds.length * (small.height + gap) * ratio) / (small.width + gap));
  return Math.max(1, Math.min(fold.deviceIds.length, Math.round(columns)));
}

/** A branch is never narrower than its own words: "14 devices". */
const narrowestBranch = 100;
function gridOf(fold: Fold, small: Size, direction: Direction): Size {
  const columns = columnsOf(fold, small, direction);
  const rows = Math.ceil(fold.deviceIds.length / columns);
  return {
    width: Math.max(narrowestBranch, columns * (small.width + gap) + gap),
    height: headHeight + rows * (small.height + gap) + gap,
  };
}

function branchAt(fold: Fold, frame: Box, small: Size): Branch {
  const columns = Math.max(1, Math.floor((frame.width - gap) / (small.width + gap)));
  const used = Math.min(columns, fold.deviceIds.length);
  const left = frame.x + (frame.width - used * (small.width + gap) + gap) / 2;
  return {
    ...fold,
    frame,
    head: { x: frame.x + gap, y: frame.y + 2, width: frame.width - 2 * gap, height: headHeight - 2 },
    devices: fold.deviceIds.map((id, at) => ({
      id,
      x: left + (at % columns) * (small.width + gap),
      y: frame.y + headHeight + Math.floor(at / columns) * (small.height + gap),
      ...{ width: small.width, height: small.height },
    })),
  };
}
