import { addresses, addressOf } from './addresses.ts';
import type { ProblemKind } from './problem-kinds.ts';

/** The `type` of a problem (RFC 9457): an address that the server explains. */
export const typeOfKind = (kind: ProblemKind): string => addressOf(addresses.problem, { kind });

/** The kind out of a problem's `type`; null where it is none of ours. A newer server may have kinds that nobody knows here. */
export const kindOfType = (type: string): ProblemKind | null => {
  const [, kind = null] = /^\/problems\/([a-z-]+)$/.exec(type) ?? [];
  return kind as ProblemKind | null;
};
