import type { Place } from '../../../shared/contract/chain.ts';
import type { Line } from './layout.ts';
import type { Mark } from './marks.ts';
import { selectable } from './selectable.ts';
import { Signs } from './sign.tsx';
import { drawingWords } from './words.ts';

type Properties = {
  line: Line;
  label: string;
  marks: readonly Mark[];
  isSelected: boolean;
  onSelect: ((place: Place) => void) | undefined;
};
/** A cable, with its name at its middle and a wide invisible band around it for fingers. */
export function LinkShape({ line, label, marks, isSelected, onSelect }: Properties) {
  const points = line.points.map(({ x, y }) => `${x},${y}`).join(' ');
  const said = marks.map((mark) => drawingWords().marks[mark]);
  return (
    <g class={['drawing-link', ...marks.map((mark) => `mark-${mark}`)].join(' ')}>
      <g
        class="drawing-press"
        {...selectable({ kind: 'link', linkId: line.id }, [label, ...said].join(', '), {
          isSelected,
          onSelect,
        })}
      >
        <polyline class="drawing-reach" points={points} />
        <polyline class="drawing-wire" points={points} />
        <g class="drawing-label" transform={`translate(${line.label.x} ${line.label.y})`}>
          <rect x={-line.id.length * 4 - 4} y="-10" width={line.id.length * 8 + 8} height="20" rx="4" />
          <text y="5">{line.id}</text>
        </g>
      </g>
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of shapes takes no focus */}
      <g aria-hidden="true">
        <Signs marks={marks} x={line.label.x + line.id.length * 4 + 18 * marks.length} y={line.label.y} />
      </g>
    </g>
  );
}
