import { Prisma } from './generated/client.ts';

/** A statement in SQL as `tx.sql` takes it: its values become parameters. */
export type Sql = <Row extends object>(
  text: TemplateStringsArray,
  ...values: readonly unknown[]
) => Promise<Row[]>;

/** Assumed: more kinds of statement than the program has; further ones are parsed each time. */
const mostNames = 500;

/** Names by text. A statement with a name is parsed and planned once a connection, and run by its name from then on. */
const names = new Map<string, string>();

/** The name that a statement is prepared under; empty where it is not. */
export function statementName(text: string): string {
  const known = names.get(text);
  if (known !== undefined) return known;
  if (names.size >= mostNames || isControl(text)) return '';
  const name = `halfsplit_${names.size}`;
  names.set(text, name);
  return name;
}

/** Savepoints and the like, of which there is nothing to plan. */
const isControl = (text: string): boolean => !/^\s*(select|insert|update|delete|with)\b/i.test(text);

/** SQLSTATE of an error of the database, whoever sent the statement: Prisma's client or `tx.sql`; null for any other error. */
export function sqlState(error: unknown): string | null {
  if (error instanceof Prisma.PrismaClientKnownRequestError) return stateTold(error);
  const { code, severity } = (error ?? {}) as { code?: unknown; severity?: unknown };
  return typeof code === 'string' && typeof severity === 'string' ? code : null;
}

/** Prisma has codes of its own for what it knows, and hands on the database's for the rest. */
function stateTold({ code, meta }: Prisma.PrismaClientKnownRequestError): string | null {
  const byCode: Readonly<Record<string, string>> = { P2002: '23505', P2003: '23503', P2034: '40001' };
  const { driverAdapterError } = (meta ?? {}) as {
    driverAdapterError?: { cause?: { kind?: string; originalCode?: string } };
  };
  const cause = driverAdapterError?.cause;
  if (cause?.kind === 'TransactionWriteConflict') return '40001';
  return byCode[code] ?? cause?.originalCode ?? null;
}
