import { useRef, useState } from 'preact/hooks';
import type { Chain, Place } from '../../../shared/contract/chain.ts';
import { Button } from '../parts/button.tsx';
import { DrawnParts, type DrawnProperties } from './drawn-parts.tsx';
import { type Marks, markSigns, usedMarks } from './marks.ts';
import { useLayout } from './use-layout.ts';
import { useView, type Viewing } from './use-view.ts';
import { centredOn, oneLarger, scaledTo, type View } from './view.ts';
import { drawingWords } from './words.ts';
import './drawing.css';

type Properties = {
  chain: Chain;
  marks?: Marks;
  selected?: Place | null;
  /** A device or cable was tapped, or chosen by keyboard. */
  onSelect?: (place: Place) => void;
};
const nothingOpened: ReadonlySet<string> = new Set();

/**
 * A chain from its sources to its displays. All of it lies in its window at first, what matters large and other branches
 * folded; it is moved and enlarged by fingers, mouse, buttons and keys, and says more the larger it is.
 */
export function ChainDrawing({ chain, marks = {}, selected = null, onSelect }: Properties) {
  const t = drawingWords();
  const pane = useRef<HTMLDivElement>(null);
  const [opened, setOpened] = useState(nothingOpened);
  const laid = useLayout(pane, { chain, marks, opened });
  return (
    <div class="drawing">
      <div class="drawing-room" ref={pane}>
        {laid === null ? (
          <p role="status">{t.drawingNow} …</p>
        ) : (
          <Drawn
            {...{ chain, marks, selected, onSelect, laid }}
            onOpen={(deviceIds) => setOpened(new Set([...opened, ...deviceIds]))}
            onFold={opened.size === 0 ? null : () => setOpened(nothingOpened)}
          />
        )}
      </div>
    </div>
  );
}

function Drawn(properties: DrawnProperties) {
  const t = drawingWords();
  const { chain, marks, laid, onFold } = properties;
  const { layout, window } = laid;
  const svg = useRef<SVGSVGElement>(null);
  const world = useRef<SVGGElement>(null);
  const viewing = useView({ svg, world }, layout, window);
  const used = usedMarks(marks);
  const { x, y, k } = viewing.whole;
  const steps = useSteps(properties, viewing);
  return (
    <>
      {/* biome-ignore lint/a11y/useSemanticElements: HTML has no group for a drawing that is moved by keys */}
      <div
        class="drawing-window"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what can be moved has to be reached by keyboard
        tabIndex={0}
        role="group"
        aria-label={t.keys}
        onKeyDown={steps.onKey}
        onFocusIn={steps.bringIntoView}
      >
        {/* biome-ignore lint/a11y/useSemanticElements: HTML has no group for a drawing; its parts are buttons */}
        <svg
          ref={svg}
          role="group"
          aria-label={t.drawing(chain.name, chain.devices.length, chain.links.length)}
          viewBox={`0 0 ${window.width} ${window.height}`}
          style={{ maxWidth: `${window.width}px` }}
        >
          <g ref={world} class="drawing-world" style={{ '--whole': `translate(${x}px, ${y}px) scale(${k})` }}>
            <DrawnParts {...properties} detail={viewing.detail} />
          </g>
        </svg>
      </div>
      <div class="row not-printed">
        <Button onClick={steps.larger} aria-label={t.larger}>
          +
        </Button>
        <Button onClick={steps.smaller} aria-label={t.smaller} disabled={viewing.isWhole}>
          −
        </Button>
        <Button
          onClick={() => {
            onFold?.();
            viewing.show(viewing.whole);
          }}
          disabled={viewing.isWhole && onFold === null}
        >
          {t.whole}
        </Button>
      </div>
      {used.length > 0 && (
        <p class="row drawing-legend">
          {used.map((mark) => (
            <span key={mark}>
              <strong aria-hidden="true">{markSigns[mark]}</strong> {t.marks[mark]}
            </span>
          ))}
        </p>
      )}
    </>
  );
}

/** How far an arrow key moves the drawing, CSS pixels. */
const keyStep = 64;
const arrows: Readonly<Record<string, readonly [x: number, y: number]>> = {
  ArrowLeft: [keyStep, 0],
  ArrowRight: [-keyStep, 0],
  ArrowUp: [0, keyStep],
  ArrowDown: [0, -keyStep],
};

/** What buttons and keys do: each a step from the view that there is. */
function useSteps({ chain, selected, marks, laid: { layout, window } }: DrawnProperties, viewing: Viewing) {
  const middle = { x: window.width / 2, y: window.height / 2 };
  const show = (view: View) => viewing.show(view);
  const larger = async () => {
    const { namesAt, whatMatters } = await import('./names.ts');
    const k = oneLarger(viewing.now().k, namesAt(layout, chain));
    const point = viewing.isWhole ? whatMatters(layout, selected, marks) : null;
    show(point === null ? scaledTo(viewing.now(), k, middle) : centredOn(point, k, window));
  };
  const smaller = () => show(scaledTo(viewing.now(), viewing.now().k / 1.5, middle));
  const onKey = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const arrow = arrows[event.key];
    if (event.key === '+' || event.key === '=') void larger();
    else if (event.key === '-') smaller();
    else if (event.key === '0') show(viewing.whole);
    else if (arrow !== undefined && !viewing.isWhole) {
      const now = viewing.now();
      show({ ...now, x: now.x + arrow[0], y: now.y + arrow[1] });
    } else return;
    event.preventDefault();
  };
  /** What the keyboard comes to is moved into the window. */
  const bringIntoView = ({ target, currentTarget }: FocusEvent) => {
    if (viewing.isWhole || !(target instanceof SVGElement) || !(currentTarget instanceof Element)) return;
    const [part, pane] = [target.getBoundingClientRect(), currentTarget.getBoundingClientRect()];
    const by = (from: number, to: number, start: number, end: number): number =>
      from < start ? start - from + 8 : to > end ? end - to - 8 : 0;
    const dx = by(part.left, part.right, pane.left, pane.right);
    const dy = by(part.top, part.bottom, pane.top, pane.bottom);
    const now = viewing.now();
    if (dx !== 0 || dy !== 0) show({ ...now, x: now.x + dx, y: now.y + dy });
  };
  return { larger, smaller, onKey, bringIntoView };
}
