import { useState } from 'preact/hooks';
import type { Chain, Place } from '../../../../shared/contract/chain.ts';
import { connected, type Goal, ownerOf, type Start } from '../../place/connect.ts';
import { changed, noHistory, redone, undone } from '../../place/edit-history.ts';

/** A chain that is changed on its drawing: what is selected on it, what is about to be plugged, and every step. */
export type ChainEdits = {
  readonly chain: Chain;
  readonly place: Place | null;
  readonly start: Start | null;
  /** The device at which a socket is to be chosen; null: any. */
  readonly at: string | null;
  /** What was done last, to be read out. */
  readonly done: string;
  /** Counts what changes the panel, which is then brought into sight. */
  readonly turn: number;
  /** Shows a device, cable, or the chain itself (null). */
  select(place: Place | null): void;
  begin(start: Start): void;
  cancel(): void;
  narrow(deviceId: string): void;
  plug(goal: Goal, done: (chain: Chain) => string, from?: Chain): void;
  /** Typing: changes of the same step are undone together. */
  type(chain: Chain, step: string): void;
  change(chain: Chain, place: Place | null, done: string): void;
  readonly undo: (() => void) | null;
  readonly redo: (() => void) | null;
};

type Shown = { place: Place | null; start: Start | null; at: string | null; done: string; turn: number };

/** @param said what is read out after a step back */
export function useChainEdits(chain: Chain, onChange: (chain: Chain) => void, said: string): ChainEdits {
  const [history, setHistory] = useState(noHistory);
  const [shown, setShown] = useState<Shown>({ place: null, start: null, at: null, done: '', turn: 0 });
  const show = (part: Partial<Shown>): void =>
    setShown({ ...shown, start: null, at: null, ...part, turn: shown.turn + 1 });
  const put = (next: Chain, place: Place | null, done: string): void => {
    setHistory(changed(history, chain, null));
    onChange(next);
    show({ place, done });
  };
  const go = (found: ReturnType<typeof undone>) =>
    found === null
      ? null
      : (): void => {
          setHistory(found.history);
          onChange(found.chain);
          show({ place: isThere(found.chain, shown.place) ? shown.place : null, done: said });
        };
  return {
    chain,
    ...shown,
    select: (place) => show({ place: place === null ? null : ownerOf(place), done: '' }),
    begin: (start) => show({ start, done: '' }),
    cancel: () => show({}),
    narrow: (at) => show({ start: shown.start, at }),
    plug: (goal, done, from = chain) => {
      if (shown.start === null) return;
      const next = connected(from, shown.start, goal);
      put(next.chain, next.place, done(next.chain));
    },
    type: (next, step) => {
      setHistory(changed(history, chain, step));
      onChange(next);
    },
    change: put,
    undo: go(undone(history, chain)),
    redo: go(redone(history, chain)),
  };
}

function isThere(chain: Chain, place: Place | null): boolean {
  if (place === null || place.kind === 'chain') return true;
  return place.kind === 'link'
    ? chain.links.some(({ id }) => id === place.linkId)
    : chain.devices.some(({ id }) => id === place.deviceId);
}
