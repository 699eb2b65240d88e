import { dirname, join, normalize } from 'node:path';
import ts from 'typescript';

/** One table of the data model: its name in SQL, its relations (field → the other table), its JSON columns. */
export type Table = {
  readonly sqlName: string;
  readonly relations: ReadonlyMap<string, string>;
  readonly json: ReadonlySet<string>;
};
/** Tables by the name that the client of the database has for them. */
export type Tables = ReadonlyMap<string, Table>;

/** How a line of code touches a table: `joined` from a query of another one, `parsed` a JSON column of it. */
export type TableUse = {
  readonly file: string;
  readonly line: number;
  readonly table: string;
  readonly how: 'read' | 'joined' | 'written' | 'parsed';
};

const clientName = (model: string): string => `${model[0]?.toLowerCase()}${model.slice(1)}`;

/** The tables that a Prisma schema describes. */
export function tablesIn(schema: string): Tables {
  const models = [...schema.matchAll(/^model (\w+) \{\n([\s\S]*?)^\}/gm)];
  const names = new Set(models.map(([, name]) => name ?? ''));
  return new Map(
    models.map(([, name = '', body = '']) => {
      const fields = [...body.matchAll(/^ {2}(\w+)\s+(\w+)(?:\[\]|\?)?(?=\s|$)/gm)];
      const relations = fields.flatMap(([, field = '', type = '']): [string, string][] =>
        names.has(type) ? [[field, clientName(type)]] : [],
      );
      const json = fields.flatMap(([, field = '', type]) => (type === 'Json' ? [field] : []));
      const sqlName = /@@map\("(\w+)"\)/.exec(body)?.[1] ?? name;
      return [clientName(name), { sqlName, relations: new Map(relations), json: new Set(json) }];
    }),
  );
}

/**
 * Every use of a table in the given files: by the database client, in its nested writes and joins, and in SQL.
 * Constants that a query is put together from are followed into the file that declares them; results of functions
 * are not.
 * @param files their text, by path from the root
 */
export function tableUses(files: ReadonlyMap<string, string>, tables: Tables): TableUse[] {
  const sources = new Map(
    [...files].map(([file, text]) => [file, ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true)]),
  );
  return [...sources.values()].flatMap((source) => new Reader(source, sources, tables).uses());
}

const readMethod = /^(find|count$|aggregate$|groupBy$)/;
const writeMethod = /^(create|update|upsert|delete)/;
const sqlStart = /^(\s|--.*\n)*(select|insert|update|delete|with|truncate|merge|copy|lock|alter|drop)\s/i;
const sqlWrite =
  /\b(?:(?:insert|merge)\s+into|update|delete\s+from|truncate(?:\s+table)?|copy|(?:lock|alter|drop)\s+table)\s+(?:only\s+)?/;
/** Functions and tags that take SQL. */
const takesSql = /^(sql|query|exec|raw|\$(query|execute)Raw(Unsafe)?)$/;
const writingKeys = new Set(['data', 'create', 'update', 'connect', 'connectOrCreate', 'upsert', 'delete']);

class Reader {
  readonly #source: ts.SourceFile;
  readonly #sources: ReadonlyMap<string, ts.SourceFile>;
  readonly #tables: Tables;
  readonly #found: TableUse[] = [];
  /** `{ snapshot: stored }`: the column by the name that it is given. */
  readonly #renamed = new Map<string, string>();

  constructor(source: ts.SourceFile, sources: ReadonlyMap<string, ts.SourceFile>, tables: Tables) {
    this.#source = source;
    this.#sources = sources;
    this.#tables = tables;
  }

  uses(): TableUse[] {
    this.#visit(this.#source);
    const queried = new Set(this.#found.map(({ table }) => table));
    this.#visitParsers(this.#source, queried);
    return this.#found;
  }

  #add(node: ts.Node, table: string, how: TableUse['how']): void {
    const { line } = this.#source.getLineAndCharacterOfPosition(node.getStart());
    this.#found.push({ file: this.#source.fileName, line: line + 1, table, how });
  }

  #visit(node: ts.Node): void {
    if (ts.isPropertyAccessExpression(node)) this.#visitAccess(node);
    if (ts.isBindingElement(node) && node.propertyName !== undefined)
      this.#renamed.set(node.name.getText(), node.propertyName.getText());
    this.#visitHandedOn(node);
    if (ts.isStringLiteralLike(node) || ts.isTemplateExpression(node)) this.#visitSql(node);
    ts.forEachChild(node, (child) => this.#visit(child));
  }

  /** `….ticket.findMany(…)`. A table that is handed on without a method counts as written. */
  #visitAccess(access: ts.PropertyAccessExpression): void {
    const table = access.name.text;
    if (!this.#tables.has(table)) return;
    const method = ts.isPropertyAccessExpression(access.parent) ? access.parent.name.text : '';
    const call = access.parent.parent;
    if (ts.isCallExpression(call) && (readMethod.test(method) || writeMethod.test(method))) {
      this.#add(access, table, readMethod.test(method) ? 'read' : 'written');
      for (const argument of call.arguments) this.#visitQuery(argument, { table, at: access, writes: false });
    } else if (ts.isIdentifier(access.expression) && access.expression.text === 'tx') {
      this.#add(access, table, 'written');
    }
  }

  /** Relations in what a query asks for (`include`, `select`, `where`, …) or writes (`data`). */
  #visitQuery(node: ts.Node, of: { table: string; at: ts.Node; writes: boolean }): void {
    if (ts.isObjectLiteralExpression(node)) {
      for (const property of node.properties) this.#visitProperty(property, of);
    } else if (ts.isIdentifier(node)) {
      const value = this.#valueOf(this.#source.fileName, node.text);
      if (value !== null) this.#visitQuery(value, of);
    } else if (holdsQuery(node)) {
      ts.forEachChild(node, (child) => this.#visitQuery(child, of));
    }
  }

  #visitProperty(property: ts.ObjectLiteralElementLike, of: { table: string; at: ts.Node; writes: boolean }) {
    if (ts.isSpreadAssignment(property)) return this.#visitQuery(property.expression, of);
    const key = property.name !== undefined && ts.isIdentifier(property.name) ? property.name.text : '';
    const value = ts.isPropertyAssignment(property) ? property.initializer : property.name;
    const related = this.#tables.get(of.table)?.relations.get(key);
    if (related !== undefined) this.#add(of.at, related, of.writes ? 'written' : 'joined');
    if (value === undefined) return;
    this.#visitQuery(value, {
      ...of,
      table: related ?? of.table,
      writes: of.writes || (related === undefined && writingKeys.has(key)),
    });
  }

  /** A table's name anywhere in SQL is a use of it: no column of ours is called like one. */
  #visitSql(node: ts.StringLiteralLike | ts.TemplateExpression): void {
    const text = ts.isTemplateExpression(node)
      ? [node.head.text, ...node.templateSpans.map((span) => span.literal.text)].join('?')
      : node.text;
    if (!isHandedOverAsSql(node) && !sqlStart.test(text)) return;
    for (const [table, { sqlName }] of this.#tables) {
      const name = `(?<![\\w"'.])(?:"?public"?\\s*\\.\\s*)?"?${sqlName}"?(?![\\w"'.(]|\\s*\\.)`;
      if (new RegExp(`${sqlWrite.source}${name}`, 'i').test(text)) this.#add(node, table, 'written');
      else if (new RegExp(name, 'i').test(text)) this.#add(node, table, 'read');
    }
  }

  /** `tx['ticket']` and `const { ticket } = tx`: a table that is handed on. */
  #visitHandedOn(node: ts.Node): void {
    if (ts.isElementAccessExpression(node) && isTransaction(node.expression)) {
      const key = node.argumentExpression;
      for (const table of this.#tables.keys())
        if (!ts.isStringLiteralLike(key) || key.text === table) this.#add(node, table, 'written');
    }
    if (!ts.isBindingElement(node) || !ts.isObjectBindingPattern(node.parent)) return;
    const table = (node.propertyName ?? node.name).getText();
    const of = node.parent.parent;
    const from = ts.isVariableDeclaration(of)
      ? of.initializer
      : ts.isBindingElement(of)
        ? of.propertyName
        : of;
    if (this.#tables.has(table) && from !== undefined && isTransaction(from))
      this.#add(node, table, 'written');
  }

  /** `row.snapshot as …` and `form.parse(row.snapshot)`, where the file queries the table that has the column. */
  #visitParsers(node: ts.Node, queried: ReadonlySet<string>): void {
    const parsed = parsedExpression(node);
    const name = parsed === null ? null : columnName(parsed);
    const column = name === null ? null : (this.#renamed.get(name) ?? name);
    for (const table of queried) {
      if (column !== null && this.#tables.get(table)?.json.has(column)) this.#add(node, table, 'parsed');
    }
    ts.forEachChild(node, (child) => this.#visitParsers(child, queried));
  }

  /** What a constant is declared as, here or where it is imported from; null where that can't be told. */
  #valueOf(file: string, name: string): ts.Expression | null {
    const source = this.#sources.get(file);
    for (const statement of source?.statements ?? []) {
      if (ts.isVariableStatement(statement)) {
        const declared = statement.declarationList.declarations.find(
          ({ name: own }) => ts.isIdentifier(own) && own.text === name,
        );
        if (declared?.initializer !== undefined) return declared.initializer;
      }
      const from = importedFrom(statement, name);
      if (from !== null) return this.#valueOf(normalize(join(dirname(file), from.file)), from.name);
    }
    return null;
  }
}

/** What a query's object may stand in. */
const holdsQuery = (node: ts.Node): boolean =>
  ts.isArrayLiteralExpression(node) ||
  ts.isSpreadElement(node) ||
  ts.isAsExpression(node) ||
  ts.isSatisfiesExpression(node) ||
  ts.isParenthesizedExpression(node) ||
  ts.isConditionalExpression(node);

/** Where an import or a re-export gets a name from. */
function importedFrom(statement: ts.Statement, name: string): { file: string; name: string } | null {
  const isImport = ts.isImportDeclaration(statement);
  if (!isImport && !ts.isExportDeclaration(statement)) return null;
  const module = statement.moduleSpecifier;
  const names = isImport ? statement.importClause?.namedBindings : statement.exportClause;
  if (module === undefined || !ts.isStringLiteral(module) || !module.text.startsWith('.')) return null;
  if (names === undefined || !(ts.isNamedImports(names) || ts.isNamedExports(names))) return null;
  const specifiers: readonly (ts.ImportSpecifier | ts.ExportSpecifier)[] = [...names.elements];
  const specifier = specifiers.find((each) => each.name.text === name);
  return specifier === undefined
    ? null
    : { file: module.text, name: (specifier.propertyName ?? specifier.name).text };
}

/** Whether a text stands in what is handed to the database, or is SQL by its tag. */
function isHandedOverAsSql(node: ts.Node): boolean {
  if (ts.isTaggedTemplateExpression(node.parent)) return takesSql.test(lastName(node.parent.tag));
  for (let at = node; at.parent !== undefined && !ts.isStatement(at); at = at.parent) {
    const call = at.parent;
    if (ts.isCallExpression(call) && call.expression !== at) return takesSql.test(lastName(call.expression));
  }
  return false;
}

const lastName = (expression: ts.Expression): string =>
  ts.isPropertyAccessExpression(expression) ? expression.name.text : expression.getText();

/** `tx` or `context.tx`, as every use case calls its transaction. */
const isTransaction = (node: ts.Node): boolean => /(^|\.)tx$/.test(node.getText());

function parsedExpression(node: ts.Node): ts.Expression | null {
  if (ts.isAsExpression(node) || ts.isTypeAssertionExpression(node)) return bare(node.expression);
  if (!ts.isCallExpression(node) || !ts.isPropertyAccessExpression(node.expression)) return null;
  const [argument] = node.arguments;
  return /^(safeP|p)arse$/.test(node.expression.name.text) && argument !== undefined ? bare(argument) : null;
}

/** The expression without parentheses, `?? …`, a cast, or a way through text. */
function bare(node: ts.Expression): ts.Expression {
  if (ts.isParenthesizedExpression(node) || ts.isAsExpression(node) || ts.isNonNullExpression(node))
    return bare(node.expression);
  if (ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.QuestionQuestionToken)
    return bare(node.left);
  const [argument] = ts.isCallExpression(node) ? node.arguments : [];
  const isText = ts.isCallExpression(node) && /^JSON\.(stringify|parse)$/.test(node.expression.getText());
  return isText && argument !== undefined ? bare(argument) : node;
}

function columnName(expression: ts.Expression): string | null {
  if (ts.isPropertyAccessExpression(expression)) return expression.name.text;
  return ts.isIdentifier(expression) ? expression.text : null;
}
