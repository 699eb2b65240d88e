import type { RefObject } from 'preact';
import { useEffect, useLayoutEffect, useMemo, useState } from 'preact/hooks';
import type { Chain } from '../../../shared/contract/chain.ts';
import { fitScale, type Layout, type Window } from './fit.ts';
import { type Marks, signedLinks, weightsOf } from './marks.ts';

/** Share of the screen's height that a drawing takes at most, and its bounds in CSS pixels; assumed. */
const mostOfScreen = 0.62;
const [lowest, highest] = [300, 660];

export type Laid = { layout: Layout; window: Window };

/** The chain laid out for the room that there is; null until it is computed. Its code is a chunk of its own. */
export function useLayout(
  pane: RefObject<HTMLElement>,
  { chain, marks, opened }: { chain: Chain; marks: Marks; opened: ReadonlySet<string> },
): Laid | null {
  const room = useRoom(pane);
  const [laid, setLaid] = useState<Laid | null>(null);
  const key = JSON.stringify([[...weightsOf(chain, marks)], [...signedLinks(chain, marks)]]);
  const wanted = useMemo(
    () => ({ weights: weightsOf(chain, marks), signed: signedLinks(chain, marks), opened }),
    [chain, key, opened],
  );
  useEffect(() => {
    if (room === null) return undefined;
    let isWanted = true;
    void import('./layout.ts').then(({ layOut }) => {
      if (!isWanted) return;
      performance.mark('chain-drawing-begins');
      const layout = layOut(chain, room, wanted);
      const height = Math.min(room.height, Math.ceil(layout.height * fitScale(layout, room)));
      const next = { layout, window: { width: room.width, height } };
      // What was typed of a device moves nothing: whoever looks closer goes on looking there.
      setLaid((before) => (JSON.stringify(before) === JSON.stringify(next) ? before : next));
    });
    return () => {
      isWanted = false;
    };
  }, [chain, wanted, room]);
  useLayoutEffect(() => {
    // For whoever wants to know how long it takes, in the browser's own tools (User Timing).
    if (laid !== null) performance.measure('chain-drawing', 'chain-drawing-begins');
  }, [laid]);
  return laid;
}

/**
 * Wider than any system's scroll bar, CSS pixels; assumed. A bar that comes with one layout and goes with the next would
 * else keep both going for ever; the drawing is scaled for so little.
 */
const scrollBar = 20;

/** How wide the pane is, and how high it may become. */
function useRoom(pane: RefObject<HTMLElement>): Window | null {
  const [room, setRoom] = useState<Window | null>(null);
  useLayoutEffect(() => {
    const element = pane.current;
    if (element === null) return undefined;
    const look = () => {
      const width = element.clientWidth;
      // A phone's bars come and go while it is scrolled: the height is looked at only where the width is another.
      const height = Math.round(Math.max(lowest, Math.min(highest, innerHeight * mostOfScreen)));
      setRoom((before) =>
        width === 0 || (before !== null && Math.abs(before.width - width) <= scrollBar)
          ? before
          : { width, height },
      );
    };
    const observer = new ResizeObserver(look);
    observer.observe(element);
    look();
    return () => observer.disconnect();
  }, []);
  return room;
}
