import type { FastifyInstance } from 'fastify';
import { memberRoles } from '../../shared/contract/primitives.ts';
import { commandRoles } from '../../state-machines/index.ts';
import { access } from '../http/index.ts';

type Operation = { summary?: string; 'x-roles'?: readonly string[] };
type Description = { paths?: Record<string, Record<string, Operation>> };

const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [row(head), row(head.map(() => '---')), ...rows.map(row)].join('\n');
const marks = (allowed: readonly string[]): string[] =>
  memberRoles.map((role) => (allowed.includes(role) ? 'yes' : ''));

/** The tables that the README prints from code, each between its own pair of markers. */
export function readmeTables(app: FastifyInstance): Record<'roles' | 'commands' | 'api', string> {
  const { paths = {} } = app.swagger() as Description;
  const operations = Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => [
      `\`${method.toUpperCase()} ${path}\``,
      operation.summary ?? '',
      (operation['x-roles'] ?? []).join(', '),
    ]),
  );
  return {
    roles: table(
      ['may', ...memberRoles],
      Object.entries(access).map(([permission, roles]) => [permission, ...marks(roles)]),
    ),
    commands: table(
      ['command', ...memberRoles],
      Object.entries(commandRoles).map(([type, roles]) => [`\`${type}\``, ...marks(roles)]),
    ),
    api: table(['route', 'what', 'for'], operations),
  };
}

/** The text with each table put between `<!-- name -->` and `<!-- /name -->`. @throws when a marker is missing. */
export function withTables(text: string, tables: Record<string, string>): string {
  return Object.entries(tables).reduce((current, [name, content]) => {
    const [open, close] = [`<!-- ${name} -->`, `<!-- /${name} -->`];
    const from = current.indexOf(open);
    const to = current.indexOf(close);
    if (from === -1 || to === -1) throw new Error(`the text has no ${open} … ${close}`);
    return `${current.slice(0, from + open.length)}\n${content}\n${current.slice(to)}`;
  }, text);
}
