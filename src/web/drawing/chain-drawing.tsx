import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Chain, Place } from '../../../shared/contract/chain.ts';
import { Button } from '../parts/button.tsx';
import { drawingWords } from './words.ts';
import './drawing.css';
import { DeviceShape } from './device-shape.tsx';
import type { Layout } from './layout.ts';
import { LinkShape } from './link-shape.tsx';
import { type Mark, type Marks, markSigns, marksAt } from './marks.ts';
import { usePinch } from './use-pinch.ts';

type Properties = {
  chain: Chain;
  marks?: Marks;
  selected?: Place | null;
  /** A device or cable was tapped, or chosen by keyboard. */
  onSelect?: (place: Place) => void;
};
/** Letters get no smaller than this share of their natural 13 px when a drawing is fitted in; assumed. */
const smallestFit = 0.75;
const [smallest, largest] = [0.3, 3];

/** A chain from its sources to its displays, to be moved and pinched. Its layout is computed in a chunk of its own. */
export function ChainDrawing({ chain, marks = {}, selected = null, onSelect }: Properties) {
  const t = drawingWords();
  const pane = useRef<HTMLDivElement>(null);
  const layout = useLayout(chain);
  const [scale, setScale] = useState(1);
  const fit = () => {
    if (layout === null || pane.current === null) return;
    const { clientWidth } = pane.current;
    setScale(Math.min(1, Math.max(smallestFit, clientWidth / layout.width)));
  };
  const showAll = () => {
    if (layout === null || pane.current === null) return;
    setScale(Math.max(smallest, Math.min(1.5, pane.current.clientWidth / layout.width)));
  };
  useEffect(fit, [layout]);
  useLayoutEffect(() => {
    // For whoever wants to know how long it takes, in the browser's own tools (User Timing).
    if (layout !== null) performance.measure('chain-drawing', 'chain-drawing-begins');
  }, [layout]);
  const zoomBy = (factor: number) => setScale((now) => Math.min(largest, Math.max(smallest, now * factor)));
  usePinch(pane, zoomBy);
  const names = useMemo(() => new Map(chain.devices.map(({ id, name }) => [id, name])), [chain]);
  if (layout === null) return <p role="status">{t.drawingNow} …</p>;
  const used = new Set<Mark>();
  const marksOf = (kind: 'device' | 'link', id: string): Mark[] => {
    const found = marksAt(marks, kind, id);
    for (const mark of found) used.add(mark);
    return found;
  };
  const shapes = (
    <>
      {layout.links.map((line) => (
        <LinkShape
          key={line.id}
          line={line}
          marks={marksOf('link', line.id)}
          label={t.link(
            line.id,
            { from: names.get(line.from) ?? line.from, to: names.get(line.to) ?? line.to },
            String(chain.links.find(({ id }) => id === line.id)?.lengthM ?? ''),
          )}
          isSelected={selected?.kind === 'link' && selected.linkId === line.id}
          onSelect={onSelect}
        />
      ))}
      {layout.devices.map((box) => {
        const device = chain.devices.find(({ id }) => id === box.id);
        return device === undefined ? null : (
          <DeviceShape
            key={box.id}
            box={box}
            device={device}
            marks={marksOf('device', box.id)}
            isSelected={selected?.kind === 'device' && selected.deviceId === box.id}
            onSelect={onSelect}
          />
        );
      })}
    </>
  );
  return (
    <div class="drawing">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by keyboard */}
      <div class="drawing-window" ref={pane} tabIndex={0}>
        {/* biome-ignore lint/a11y/useSemanticElements: HTML has no group for a drawing; its parts are buttons */}
        <svg
          role="group"
          aria-label={t.drawing(chain.name, chain.devices.length, chain.links.length)}
          width={layout.width * scale}
          height={layout.height * scale}
          viewBox={`0 0 ${layout.width} ${layout.height}`}
        >
          {shapes}
        </svg>
      </div>
      <div class="row not-printed">
        <Button onClick={() => zoomBy(1.25)} aria-label={t.larger}>
          +
        </Button>
        <Button onClick={() => zoomBy(0.8)} aria-label={t.smaller}>
          −
        </Button>
        <Button onClick={showAll}>{t.whole}</Button>
        {[...used].map((mark) => (
          <span key={mark}>
            <strong aria-hidden="true">{markSigns[mark]}</strong> {t.marks[mark]}
          </span>
        ))}
      </div>
    </div>
  );
}

/** Upright on a narrow screen, lying on a wide one; null until it is computed. */
function useLayout(chain: Chain): Layout | null {
  const [layout, setLayout] = useState<Layout | null>(null);
  useEffect(() => {
    let wanted = true;
    const wide = matchMedia('(min-width: 60rem)');
    const draw = async () => {
      const { layOut } = await import('./layout.ts');
      if (!wanted) return;
      performance.mark('chain-drawing-begins');
      setLayout(layOut(chain, wide.matches ? 'across' : 'down'));
    };
    void draw();
    wide.addEventListener('change', draw);
    return () => {
      wanted = false;
      wide.removeEventListener('change', draw);
    };
  }, [chain]);
  return layout;
}
