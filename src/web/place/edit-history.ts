import type { Chain } from '../../../shared/contract/chain.ts';

/** How a chain came to be as it is on the screen: what undo and redo lead to. */
export type History = {
  readonly past: readonly Chain[];
  readonly undone: readonly Chain[];
  /** What was changed last: typing on in the same place is one step. */
  readonly step: string | null;
};
export const noHistory: History = { past: [], undone: [], step: null };

/** Assumed: nobody goes further back one by one. */
const mostSteps = 100;

/** After a change of `before`. Changes of the same step, one after the other, are undone together; null is one by itself. */
export function changed({ past, step: last }: History, before: Chain, step: string | null): History {
  if (step !== null && step === last && past.length > 0) return { past, undone: [], step };
  return { past: [...past, before].slice(-mostSteps), undone: [], step };
}

/** One step back from `now`; null where there is none. */
export function undone(history: History, now: Chain): { chain: Chain; history: History } | null {
  const chain = history.past.at(-1);
  if (chain === undefined) return null;
  return {
    chain,
    history: { past: history.past.slice(0, -1), undone: [...history.undone, now], step: null },
  };
}

/** One step forward again; null where nothing was undone. */
export function redone(history: History, now: Chain): { chain: Chain; history: History } | null {
  const chain = history.undone.at(-1);
  if (chain === undefined) return null;
  return {
    chain,
    history: { past: [...history.past, now], undone: history.undone.slice(0, -1), step: null },
  };
}
