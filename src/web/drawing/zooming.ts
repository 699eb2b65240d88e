import { select } from 'd3-selection';
import { type D3ZoomEvent, zoom, zoomIdentity, zoomTransform } from 'd3-zoom';
import type { View } from './view.ts';

type Options = {
  scales: readonly [smallest: number, largest: number];
  hold: (view: View) => View;
  /** Whether a gesture begins with this event; else it is the page's. */
  isOurs: (event: Event) => boolean;
  onMove: (view: View) => void;
  onRest: () => void;
};
/** Fingers, mouse and wheel on one drawing. */
export type Zooming = { set(view: View): void; end(): void };

/** Lets a drawing be moved and enlarged by gestures; a pinch keeps what is under the fingers there. */
export function zoomOn(svg: SVGSVGElement, options: Options): Zooming {
  const selection = select<SVGSVGElement, unknown>(svg);
  const transformOf = ({ x, y, k }: View) => zoomIdentity.translate(x, y).scale(k);
  const behaviour = zoom<SVGSVGElement, unknown>()
    .scaleExtent([...options.scales])
    .constrain((transform) => transformOf(options.hold(transform)))
    .filter((event: Event) => options.isOurs(event))
    .on('zoom', ({ transform }: D3ZoomEvent<SVGSVGElement, unknown>) => options.onMove(transform))
    .on('end', () => options.onRest());
  selection.call(behaviour);
  return {
    set: (view) => {
      const now = zoomTransform(svg);
      if (now.x === view.x && now.y === view.y && now.k === view.k) return;
      selection.call(behaviour.transform, transformOf(view));
    },
    end: () => void selection.on('.zoom', null),
  };
}
