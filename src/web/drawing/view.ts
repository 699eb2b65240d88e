import { fitScale, type Layout, type Window } from './fit.ts';

/** Where the drawing's origin lies in its window, CSS pixels, and how much it is enlarged. */
export type View = { x: number; y: number; k: number };
type Point = { x: number; y: number };

/** Nothing is enlarged more than this: the smallest device then fills a phone; assumed. */
export const largestScale = 12;

/** All of the drawing, in the middle of its window. */
export function wholeView(layout: Layout, window: Window): View {
  const k = fitScale(layout, window);
  return { x: (window.width - layout.width * k) / 2, y: (window.height - layout.height * k) / 2, k };
}

export const isWhole = ({ k }: View, whole: View): boolean => k <= whole.k * 1.005;

/** A view that never loses the drawing: it always reaches over the middle of the window. */
export function held({ x, y, k }: View, layout: Pick<Layout, 'width' | 'height'>, window: Window): View {
  const along = (at: number, size: number, room: number) =>
    Math.max(room / 2 - size * k, Math.min(room / 2, at));
  return { x: along(x, layout.width, window.width), y: along(y, layout.height, window.height), k };
}

/** The same point of the drawing stays at that point of the window. */
export function scaledTo({ x, y, k: before }: View, k: number, at: Point): View {
  return { x: at.x - ((at.x - x) / before) * k, y: at.y - ((at.y - y) / before) * k, k };
}

/** A point of the drawing in the middle of the window. */
export const centredOn = (point: Point, k: number, window: Window): View => ({
  x: window.width / 2 - point.x * k,
  y: window.height / 2 - point.y * k,
  k,
});

/** One step larger: to where every name can be read, then half as large again each time. */
export const oneLarger = (k: number, namesAt: number): number =>
  Math.min(largestScale, k < namesAt * 0.99 ? namesAt : k * 1.5);

/** Whether a finger that moves down (or up, below 0) by `dy` has nothing left to see, so that the page moves instead. */
export function isAtEdge({ y, k }: View, dy: number, heights: { drawing: number; window: number }): boolean {
  return dy > 0 ? y >= 0 : y + heights.drawing * k <= heights.window;
}
