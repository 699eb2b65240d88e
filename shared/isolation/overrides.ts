import { type Message, message } from '../message/message.ts';
import { type FaultTable, faultTable } from './fault-table.ts';
import type { Origin, Row } from './figures.ts';

/** An organisation's own figures, by path: `linkWeights/contact/passiveCopper` → 3. */
export type Overrides = Readonly<Record<string, number>>;
export type OverrideFault = { path: string; fault: Message };
export type Figure = { path: string; figure: number; origin: Origin };

type Tree = { readonly [name: string]: Row | Tree };

const isRow = (node: Row | Tree): node is Row => 'figures' in node && 'origin' in node;

type Bounds = { holds(figure: number): boolean; fault: Message };
const within = (least: number, most: number) => (figure: number) => figure >= least && figure <= most;
const [mostMinutes, mostDoubt, mostWeight] = [10_000, 1000, 1000];
const chance: Bounds = {
  holds: (figure) => figure > 0 && figure < 1,
  fault: message('chanceOutOfBounds'),
};
const minutes: Bounds = {
  holds: within(0, mostMinutes),
  fault: message('minutesOutOfBounds', { most: mostMinutes }),
};
const doubt: Bounds = {
  holds: within(1, mostDoubt),
  fault: message('doubtOutOfBounds', { most: mostDoubt }),
};
const weight: Bounds = {
  holds: within(0, mostWeight),
  fault: message('weightOutOfBounds', { most: mostWeight }),
};
/** What lies under which path, the first that fits; anything else is a weight or a factor. */
const boundsUnder: readonly (readonly [string, Bounds])[] = [
  ['symptomChances', chance],
  ['contentChances', chance],
  ['patternChances', chance],
  ['triggerChances', chance],
  ['effects', chance],
  ['provocations', chance],
  ['coincidence', chance],
  ['menuStays', chance],
  ['readings', chance],
  ['witnesses', chance],
  ['weighing/outsideShare', chance],
  ['weighing/sources', chance],
  ['weighing/reports', chance],
  ['weighing/logsShow', chance],
  ['weighing/trust', chance],
  ['planning/naming/priorDoubt', doubt],
  ['planning/naming', chance],
  ['planning/handOver/sureness', chance],
  ['planning/twoFaults', chance],
  ['planning/furtherWatch', chance],
  ['planning', minutes],
  ['effort', minutes],
  ['changeMinutes', minutes],
];

/** Every figure of the table with its path and origin, in the table's order. */
export function listFigures(table: FaultTable): Figure[] {
  const found: Figure[] = [];
  const walk = (node: Row | Tree, path: string): void => {
    if (isRow(node)) {
      for (const [column, figure] of Object.entries(node.figures))
        if (figure !== undefined) found.push({ path: `${path}/${column}`, figure, origin: node.origin });
    } else
      for (const [name, child] of Object.entries(node)) walk(child, path === '' ? name : `${path}/${name}`);
  };
  walk(table as unknown as Tree, '');
  return found;
}

/**
 * The table with an organisation's figures in place of the built-in ones; a row they touch is marked `organisation`.
 * Refused as a whole, fault by fault, when a path doesn't exist or a figure is out of bounds: chances lie strictly
 * between 0 and 1 (nothing is ever certain), a doubt from 1 on, weights and factors between 0 and 1000.
 */
export function withOverrides(
  table: FaultTable,
  overrides: Overrides,
): { ok: true; table: FaultTable } | { ok: false; faults: OverrideFault[] } {
  const known = new Set(listFigures(table).map(({ path }) => path));
  const faults = Object.entries(overrides).flatMap(([path, figure]): OverrideFault[] => {
    if (!known.has(path)) return [{ path, fault: message('noSuchFigure') }];
    const bounds = boundsOf(path);
    return bounds.holds(figure) ? [] : [{ path, fault: bounds.fault }];
  });
  if (faults.length > 0) return { ok: false, faults };
  const replace = (node: Row | Tree, path: string): Row | Tree => {
    const below = Object.keys(overrides).filter((each) => each.startsWith(`${path}/`));
    if (path !== '' && below.length === 0) return node;
    if (!isRow(node))
      return Object.fromEntries(
        Object.entries(node).map(([name, child]) => [
          name,
          replace(child, path === '' ? name : `${path}/${name}`),
        ]),
      );
    const own = Object.fromEntries(below.map((each) => [each.slice(path.length + 1), overrides[each]]));
    return { origin: 'organisation', figures: { ...node.figures, ...own } } as Row;
  };
  return { ok: true, table: replace(table as unknown as Tree, '') as unknown as FaultTable };
}

const boundsOf = (path: string): Bounds =>
  boundsUnder.find(([start]) => `${path}/`.startsWith(`${start}/`))?.[1] ?? weight;

/** The table that holds for an organisation: with its own figures but those that no longer fit. */
export function tableOf(overrides: Overrides): FaultTable {
  const own = withOverrides(faultTable, overrides);
  if (own.ok) return own.table;
  const unfit = new Set(own.faults.map(({ path }) => path));
  const fitting = Object.entries(overrides).filter(([path]) => !unfit.has(path));
  const left = withOverrides(faultTable, Object.fromEntries(fitting));
  return left.ok ? left.table : faultTable;
}
