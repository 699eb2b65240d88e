import type { RefObject } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Layout, Window } from './fit.ts';
import { held, isAtEdge, isWhole, largestScale, type View, wholeView } from './view.ts';
import type { Zooming } from './zooming.ts';

type Elements = { svg: RefObject<SVGSVGElement>; world: RefObject<SVGGElement> };
/** What a drawing shows of itself, and how that is changed by buttons and keys. */
export type Viewing = {
  /** The scale that what is written is chosen for; follows the view in steps, and exactly once it rests. */
  detail: number;
  isWhole: boolean;
  /** All of the drawing. */
  whole: View;
  now(): View;
  show(view: View): void;
};

/** Between these shares of the scale it was chosen for, what is written stays as it is while fingers move. */
const [chosenFrom, chosenTo] = [0.7, 1.4];

/** Keeps the view of a drawing; begins with all of it, and again with every other layout. */
export function useView({ svg, world }: Elements, layout: Layout, window: Window): Viewing {
  const whole = wholeView(layout, window);
  const view = useRef(whole);
  const zooming = useRef<Zooming | null>(null);
  const [detail, setDetail] = useState(whole.k);
  const chosen = useRef(detail);
  const choose = (k: number) => {
    chosen.current = k;
    setDetail(k);
  };
  const move = (next: View) => {
    view.current = next;
    world.current?.setAttribute('transform', `translate(${next.x} ${next.y}) scale(${next.k})`);
    const share = next.k / chosen.current;
    if (share < chosenFrom || share > chosenTo) choose(next.k);
  };
  const show = (wanted: View) => {
    const next = isWhole(wanted, whole) ? whole : held(wanted, layout, window);
    move(next);
    choose(next.k);
    zooming.current?.set(next);
  };
  useLayoutEffect(() => {
    // What still moves the layout before knows no other whole than that one's, and would come back to it.
    zooming.current?.end();
    zooming.current = null;
    show(whole);
  }, [layout, window.width, window.height]);
  useEffect(() => {
    const element = svg.current;
    if (element === null) return undefined;
    let isWanted = true;
    const begin = async () => {
      const { zoomOn } = await import('./zooming.ts');
      if (!isWanted) return;
      zooming.current = zoomOn(element, {
        scales: [whole.k, largestScale],
        hold: (next) => held(next, layout, window),
        isOurs: (event) => isOurs(event, element, isWhole(view.current, whole)),
        onMove: move,
        onRest: () => {
          if (isWhole(view.current, whole) && !isSame(view.current, whole)) show(whole);
          else if (view.current.k !== chosen.current) choose(view.current.k);
        },
      });
      zooming.current.set(view.current);
      element.dataset.zooms = '';
    };
    // Its code comes once the drawing is in sight: the buttons and keys do without.
    const sight = new IntersectionObserver((entries) => {
      if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
      sight.disconnect();
      void begin();
    });
    sight.observe(element);
    const stopLetting = letPageScroll(element, (dy) =>
      isAtEdge(view.current, dy, { drawing: layout.height, window: window.height }),
    );
    return () => {
      isWanted = false;
      sight.disconnect();
      stopLetting();
      zooming.current?.end();
      zooming.current = null;
    };
  }, [layout, window.width, window.height]);
  return { detail, isWhole: isWhole({ ...whole, k: detail }, whole), whole, now: () => view.current, show };
}

/**
 * Two fingers are always the drawing's; one is, once there is something to move to. The wheel is with Ctrl (which is
 * also what a touch pad's pinch sends), or once the drawing was pressed.
 */
function isOurs(event: Event, element: Element, showsWhole: boolean): boolean {
  if (event instanceof WheelEvent)
    return event.ctrlKey || element.parentElement?.contains(document.activeElement) === true;
  if ('touches' in event) return (event as TouchEvent).touches.length > 1 || !showsWhole;
  return event instanceof MouseEvent && event.button === 0 && !event.ctrlKey;
}

/** One finger that moves up or down past the drawing's edge moves the page, as anywhere on it. */
function letPageScroll(element: SVGSVGElement, isAtEdgeBy: (dy: number) => boolean): () => void {
  const parent = element.parentElement;
  let start: { x: number; y: number } | null = null;
  let isPages: boolean | null = null;
  const onStart = ({ touches }: TouchEvent) => {
    const [one] = touches;
    start = touches.length === 1 && one !== undefined ? { x: one.clientX, y: one.clientY } : null;
    isPages = null;
  };
  const onMove = (event: TouchEvent) => {
    const [one] = event.touches;
    if (start === null || one === undefined) return;
    const [dx, dy] = [one.clientX - start.x, one.clientY - start.y];
    isPages ??= Math.abs(dy) > Math.abs(dx) && isAtEdgeBy(dy);
    if (isPages) event.stopPropagation();
  };
  parent?.addEventListener('touchstart', onStart, { capture: true, passive: true });
  parent?.addEventListener('touchmove', onMove, { capture: true, passive: true });
  return () => {
    parent?.removeEventListener('touchstart', onStart, { capture: true });
    parent?.removeEventListener('touchmove', onMove, { capture: true });
  };
}

const isSame = (one: View, other: View): boolean =>
  one.x === other.x && one.y === other.y && one.k === other.k;
