import type pg from 'pg';
import type { Tenant } from '../../src/database/index.ts';

export type Rows = Record<string, unknown>[];
export type Sql = (text: string, values?: unknown[]) => Promise<pg.QueryResult>;

/**
 * Runs plain SQL as one of the roles, as a request's transaction begins it, and undoes it. Each statement that fails is
 * undone alone, so that many can be tried.
 * @param tenant null: app.org and app.member are not set.
 */
export async function asRole<T>(
  pool: pg.Pool,
  role: 'halfsplit_request' | 'halfsplit_lookup' | 'halfsplit_provision',
  tenant: Tenant | null,
  work: (sql: Sql) => Promise<T>,
): Promise<T> {
  const client = await pool.connect();
  const sql: Sql = async (text, values) => {
    await client.query('savepoint one');
    try {
      return await client.query(text, values);
    } catch (error) {
      await client.query('rollback to savepoint one');
      throw error;
    }
  };
  try {
    await client.query('begin');
    if (tenant !== null) {
      const values = [tenant.orgId, tenant.memberId ?? ''];
      await client.query(
        "select set_config('app.org', $1, true), set_config('app.member', $2, true)",
        values,
      );
    }
    await client.query("select set_config('role', $1, true)", [role]);
    return await work(sql);
  } finally {
    await client.query('rollback');
    client.release();
  }
}

/** PostgreSQL's error code of a statement that must fail; `succeeded` when it doesn't. */
export const codeOf = (statement: Promise<unknown>): Promise<string> =>
  statement.then(
    () => 'succeeded',
    (error: unknown) => (error instanceof Error && 'code' in error ? String(error.code) : String(error)),
  );

/** https://www.postgresql.org/docs/15/errcodes-appendix.html */
export const insufficientPrivilege = '42501';
export const uniqueViolation = '23505';
export const checkViolation = '23514';
export const foreignKeyViolation = '23503';
