import type { RefObject } from 'preact';
import { useEffect } from 'preact/hooks';

/** Assumed: what stands above a part has come by then, and moves it no more. */
const settlesMs = 3000;

/**
 * Keeps a part in sight that the address names (`#chain`), while what stands above it still comes; until somebody
 * scrolls or presses something themselves.
 */
export function useLedHere(part: RefObject<HTMLElement>, isWanted: boolean): void {
  useEffect(() => {
    if (!isWanted) return undefined;
    const lead = () => part.current?.scrollIntoView();
    // After the screen has put its heading in sight.
    const first = setTimeout(lead);
    const observer = new ResizeObserver(lead);
    observer.observe(document.body);
    const own = ['wheel', 'touchstart', 'pointerdown', 'keydown'] as const;
    const end = () => {
      clearTimeout(first);
      clearTimeout(last);
      observer.disconnect();
      for (const kind of own) removeEventListener(kind, end);
    };
    const last = setTimeout(end, settlesMs);
    for (const kind of own) addEventListener(kind, end, { passive: true });
    return end;
  }, [isWanted]);
}
