import { pointerStep } from '../../../shared/contract/json-pointer.ts';
import type { Difference } from '../../../shared/contract/log-check.ts';

/** Where two JSON documents differ, innermost values by their JSON pointers (RFC 6901), in the order of their keys. */
export function jsonDifferences(stored: unknown, replayed: unknown, pointer = ''): Difference[] {
  if (!(isBranch(stored) && isBranch(replayed)) || Array.isArray(stored) !== Array.isArray(replayed)) {
    return Object.is(stored, replayed) ? [] : [{ pointer, ...sideOf({ stored }), ...sideOf({ replayed }) }];
  }
  const keys = new Set([...Object.keys(stored), ...Object.keys(replayed)]);
  return [...keys].flatMap((key) => jsonDifferences(stored[key], replayed[key], pointer + pointerStep(key)));
}

const isBranch = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;

/** What JSON has no value for is left out. */
const sideOf = (side: Partial<Record<'stored' | 'replayed', unknown>>): object =>
  Object.values(side)[0] === undefined ? {} : side;
