import type { RefObject } from 'preact';
import { useEffect } from 'preact/hooks';

/** Two fingers, or the wheel with Ctrl, zoom by a factor; one finger moves the pane as everywhere. */
export function usePinch(pane: RefObject<HTMLElement>, zoomBy: (factor: number) => void): void {
  useEffect(() => {
    const element = pane.current;
    if (element === null) return undefined;
    let apart: number | null = null;
    const distance = ({ touches: [one, two] }: TouchEvent): number | null =>
      one === undefined || two === undefined
        ? null
        : Math.hypot(one.clientX - two.clientX, one.clientY - two.clientY);
    const onTouch = (event: TouchEvent) => {
      const now = distance(event);
      if (now === null) {
        apart = null;
        return;
      }
      event.preventDefault();
      if (apart !== null && apart > 0) zoomBy(now / apart);
      apart = now;
    };
    const onWheel = (event: WheelEvent) => {
      if (!event.ctrlKey) return;
      event.preventDefault();
      zoomBy(event.deltaY < 0 ? 1.1 : 1 / 1.1);
    };
    element.addEventListener('touchstart', onTouch, { passive: false });
    element.addEventListener('touchmove', onTouch, { passive: false });
    element.addEventListener('touchend', onTouch);
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => {
      element.removeEventListener('touchstart', onTouch);
      element.removeEventListener('touchmove', onTouch);
      element.removeEventListener('touchend', onTouch);
      element.removeEventListener('wheel', onWheel);
    };
  });
}
