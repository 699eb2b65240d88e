import { readFile } from 'node:fs/promises';
import internals from '@prisma/internals';
import type pg from 'pg';

/** What a schema says of one table, in the catalog's words. Lists are sorted. */
export type TableDescription = {
  /** `type null|not null default` by column name. */
  columns: Record<string, string>;
  primaryKey: string;
  uniques: string[];
  indexes: string[];
  foreignKeys: string[];
};
export type SchemaDescription = Record<string, TableDescription>;

const { getDMMF } = internals;
type Datamodel = Awaited<ReturnType<typeof getDMMF>>['datamodel'];
type Model = Datamodel['models'][number];
type Field = Model['fields'][number];

export const schemaFile = new URL('../../prisma/schema.prisma', import.meta.url);

/** The tables that a Prisma schema asks for. */
export async function describePrismaSchema(datamodel: string): Promise<SchemaDescription> {
  const { models, indexes } = (await getDMMF({ datamodel })).datamodel;
  const columnsOf = (model: string, names: readonly string[]): string =>
    list(names.map((name) => columnName(one(fieldsOf(model), name))));
  const fieldsOf = (model: string) => one(models, model).fields;
  const indexesOf = (model: string, type: 'id' | 'unique' | 'normal'): string[] =>
    indexes
      .filter((index) => index.model === model && index.type === type)
      .map(({ fields }) =>
        columnsOf(
          model,
          fields.map(({ name }) => name),
        ),
      )
      .sort();
  const foreignKey = (model: Model, field: Field): string => {
    const target = one(models, field.type);
    const onDelete = field.relationOnDelete ?? (field.isRequired ? 'Restrict' : 'SetNull');
    return [
      columnsOf(model.name, field.relationFromFields ?? []),
      `-> ${target.dbName} ${columnsOf(target.name, field.relationToFields ?? [])}`,
      `delete ${onDelete} update ${field.relationOnUpdate ?? 'Cascade'}`,
    ].join(' ');
  };
  return Object.fromEntries(
    models.map((model) => [
      model.dbName ?? model.name,
      {
        columns: Object.fromEntries(
          model.fields
            .filter(({ kind }) => kind !== 'object')
            .map((field) => [columnName(field), columnText(field)]),
        ),
        primaryKey: indexesOf(model.name, 'id').join(),
        uniques: indexesOf(model.name, 'unique'),
        indexes: indexesOf(model.name, 'normal'),
        foreignKeys: model.fields
          .filter(({ relationFromFields }) => (relationFromFields ?? []).length > 0)
          .map((field) => foreignKey(model, field))
          .sort(),
      },
    ]),
  );
}

export const readPrismaSchema = (): Promise<string> => readFile(schemaFile, 'utf8');

const list = (names: readonly string[]): string => `(${names.join(', ')})`;
const columnName = (field: Field): string => field.dbName ?? field.name;

function one<Named extends { name: string }>(all: readonly Named[], name: string): Named {
  const found = all.find((each) => each.name === name);
  if (found === undefined) throw new Error(`The schema has no ${name}`);
  return found;
}

const nativeTypes: Record<string, string> = {
  'String Uuid': 'uuid',
  String: 'text',
  Int: 'integer',
  BigInt: 'bigint',
  Boolean: 'boolean',
  'DateTime Timestamptz 3': 'timestamp(3) with time zone',
  Json: 'jsonb',
};

function columnText(field: Field): string {
  const [native, parameters] = field.nativeType ?? [];
  const type = [field.type, native, ...(parameters ?? [])].filter(Boolean).join(' ');
  const parts = [
    nativeTypes[type] ?? `unknown to this check: ${type}`,
    field.isRequired ? 'not null' : 'null',
  ];
  if (field.hasDefaultValue) parts.push(`default ${defaultText(field.default)}`);
  return parts.join(' ');
}

function defaultText(value: Field['default']): string {
  if (typeof value === 'string') return `'${value}'::text`;
  if (typeof value === 'object' && 'name' in value && value.name === 'now') return 'CURRENT_TIMESTAMP';
  return String(value);
}

/**
 * The tables that a database has, Prisma's bookkeeping aside. Partial indexes are left out, since
 * Prisma has none, and those on trigrams, which are made only where the login may make the extension.
 */
export async function describeDatabase(client: pg.ClientBase): Promise<SchemaDescription> {
  const columns = await client.query<{ table: string; column: string; text: string }>(`
    select c.relname as "table", a.attname as "column",
      concat_ws(' ', format_type(a.atttypid, a.atttypmod), case when a.attnotnull then 'not null' else 'null' end,
        case when a.attgenerated = '' then 'default ' || pg_get_expr(d.adbin, d.adrelid) end) as text
    from pg_class c join pg_attribute a on a.attrelid = c.oid and a.attnum > 0 and not a.attisdropped
      left join pg_attrdef d on d.adrelid = c.oid and d.adnum = a.attnum
    where ${ourTables}`);
  const indexes = await client.query<{
    table: string;
    kind: 'primary' | 'unique' | 'plain';
    columns: string;
  }>(`
    select c.relname as "table",
      case when i.indisprimary then 'primary' when i.indisunique then 'unique' else 'plain' end as kind,
      (select '(' || string_agg(pg_get_indexdef(i.indexrelid, n::int, true), ', ' order by n) || ')'
        from generate_series(1, i.indnkeyatts) n) as columns
    from pg_class c join pg_index i on i.indrelid = c.oid join pg_class x on x.oid = i.indexrelid
      join pg_am m on m.oid = x.relam
    where ${ourTables} and m.amname <> 'gin' and i.indpred is null and i.indisvalid`);
  const foreignKeys = await client.query<{ table: string; text: string }>(`
    select c.relname as "table",
      format('%s -> %s %s delete %s update %s', ${columnNames('k.conkey', 'k.conrelid')}, k.confrelid::regclass,
        ${columnNames('k.confkey', 'k.confrelid')}, ${actionName('k.confdeltype')}, ${actionName('k.confupdtype')}) as text
    from pg_class c join pg_constraint k on k.conrelid = c.oid and k.contype = 'f'
    where ${ourTables}`);
  const tables = [...new Set(columns.rows.map(({ table }) => table))];
  return Object.fromEntries(
    tables.map((table) => {
      const here = <Row extends { table: string }>(rows: Row[]): Row[] =>
        rows.filter((row) => row.table === table);
      const indexesOf = (kind: string): string[] =>
        here(indexes.rows)
          .filter((index) => index.kind === kind)
          .map((index) => index.columns)
          .sort();
      return [
        table,
        {
          columns: Object.fromEntries(here(columns.rows).map(({ column, text }) => [column, text])),
          primaryKey: indexesOf('primary').join(),
          uniques: indexesOf('unique'),
          indexes: indexesOf('plain'),
          foreignKeys: here(foreignKeys.rows)
            .map(({ text }) => text)
            .sort(),
        },
      ];
    }),
  );
}

/** SQL condition on pg_class `c`: a table of ours. */
export const ourTables = `c.relkind in ('r', 'p') and c.relnamespace = 'public'::regnamespace
  and c.relname <> '_prisma_migrations'`;

const columnNames = (numbers: string, table: string): string =>
  `(select '(' || string_agg(a.attname, ', ' order by n.place) || ')'
    from unnest(${numbers}) with ordinality n (number, place)
    join pg_attribute a on a.attrelid = ${table} and a.attnum = n.number)`;

const actionName = (code: string): string =>
  `case ${code} when 'a' then 'NoAction' when 'r' then 'Restrict' when 'c' then 'Cascade' when 'n' then 'SetNull'
    else 'SetDefault' end`;
