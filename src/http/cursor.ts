import type { z } from 'zod';
import { message } from '../../shared/message/index.ts';
import { type Refused, refused } from './problem.ts';

/** A page's cursor: where the last row of the page before stood in the order, opaque to the caller. */
export const encodeCursor = (position: unknown): string =>
  Buffer.from(JSON.stringify(position)).toString('base64url');

/** The position in a cursor; null without one; a refusal for one that this list never gave. */
export function decodeCursor<Position>(
  cursor: string | undefined,
  form: z.ZodType<Position>,
): Position | null | Refused {
  if (cursor === undefined) return null;
  try {
    const parsed = form.safeParse(JSON.parse(Buffer.from(cursor, 'base64url').toString('utf8')));
    if (parsed.success) return parsed.data;
  } catch {
    // not JSON: refused below like any other foreign cursor
  }
  return refused('invalid-input', message('cursorForeign'), {
    errors: [{ pointer: 'cursor', ...message('cursorForeign') }],
  });
}

/** Cuts a list that was read with one row too many into a page and the cursor of the next. */
export function pageFrom<Row, Item>(
  rows: readonly Row[],
  limit: number,
  { positionOf, view }: { positionOf: (row: Row) => unknown; view: (row: Row) => Item },
): { items: Item[]; next: string | null } {
  const kept = rows.slice(0, limit);
  const last = kept.at(-1);
  const next = rows.length > limit && last !== undefined ? encodeCursor(positionOf(last)) : null;
  return { items: kept.map(view), next };
}

/** Text for a LIKE pattern that is meant literally. */
export const literalLike = (text: string): string => text.replaceAll(/[\\%_]/g, '\\$&');
