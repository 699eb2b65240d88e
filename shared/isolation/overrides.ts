import { type FaultTable, faultTable } from './fault-table.ts';
import type { Origin, Row } from './figures.ts';

/** An organisation's own figures, by path: `linkWeights/contact/passiveCopper` → 3. */
export type Overrides = Readonly<Record<string, number>>;
export type OverrideFault = { path: string; text: string };
export type Figure = { path: string; figure: number; origin: Origin };

type Tree = { readonly [name: string]: Row | Tree };

const isRow = (node: Row | Tree): node is Row => 'figures' in node && 'origin' in node;

type Bounds = { holds(figure: number): boolean; text: string };
const chance: Bounds = {
  holds: (figure) => figure > 0 && figure < 1,
  text: 'A chance lies between 0 and 1, both left out.',
};
const minutes: Bounds = {
  holds: (figure) => figure >= 0 && figure <= 10_000,
  text: 'Minutes lie between 0 and 10000.',
};
const doubt: Bounds = {
  holds: (figure) => figure >= 1 && figure <= 1000,
  text: 'A doubt lies between 1 and 1000.',
};
const weight: Bounds = {
  holds: (figure) => figure >= 0 && figure <= 1000,
  text: 'A weight or factor lies between 0 and 1000.',
};
/** What lies under which path, the first that fits; anything else is a weight or a factor. */
const boundsUnder: readonly (readonly [string, Bounds])[] = [
  ['symptomChances', chance],
  ['contentChances', chance],
  ['momentChances', chance],
  ['effects', chance],
  ['coincidence', chance],
  ['menuStays', chance],
  ['weighing/outsideShare', chance],
  ['weighing/sources', chance],
  ['planning/naming/priorDoubt', doubt],
  ['planning/naming', chance],
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
    if (!known.has(path)) return [{ path, text: 'There is no such figure.' }];
    const text = outOfBounds(path, figure);
    return text === null ? [] : [{ path, text }];
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

function outOfBounds(path: string, figure: number): string | null {
  const [, bounds] = boundsUnder.find(([start]) => `${path}/`.startsWith(`${start}/`)) ?? ['', weight];
  return bounds.holds(figure) ? null : bounds.text;
}

/** The table that holds for an organisation: the built-in one where its figures no longer fit. */
export function tableOf(overrides: Overrides): FaultTable {
  const own = withOverrides(faultTable, overrides);
  return own.ok ? own.table : faultTable;
}
