/** `common practice`: a rule of thumb of the trade. `assumed`: made up by us. `organisation`: set by theirs. */
export type Origin = 'common practice' | 'assumed' | 'organisation';

/** One row of figures that share an origin; a column that isn't there has no figure. */
export type Row<Column extends string = string> = {
  readonly origin: Origin;
  readonly figures: Readonly<Partial<Record<Column, number>>>;
};

export const practice = <Column extends string>(figures: Partial<Record<Column, number>>): Row<Column> => ({
  origin: 'common practice',
  figures,
});
export const assumed = <Column extends string>(figures: Partial<Record<Column, number>>): Row<Column> => ({
  origin: 'assumed',
  figures,
});

/** Names for figures that are written as a plain row, in the order of the columns. */
export const columns =
  <Column extends string>(names: readonly Column[]) =>
  (...figures: number[]): Record<Column, number> =>
    Object.fromEntries(names.map((name, at) => [name, figures[at]])) as Record<Column, number>;

/** The figure in a column that the row is known to have. @throws where it has none */
export function figureOf<Column extends string>(row: Row<Column>, column: Column): number {
  const figure: number | undefined = row.figures[column];
  if (figure === undefined) throw new Error(`no figure ${column}`);
  return figure;
}

/** The figure in a column, else that of `any`, else null. */
export function figureIn(row: Row | undefined, column: string): number | null {
  return row?.figures[column] ?? row?.figures.any ?? null;
}
