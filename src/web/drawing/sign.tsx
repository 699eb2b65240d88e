import { type Mark, markSigns } from './marks.ts';

/** The signs of the marks at a place, side by side. */
export function Signs({ marks, x, y }: { marks: readonly Mark[]; x: number; y: number }) {
  return (
    <>
      {marks.map((mark, at) => (
        <g key={mark} class="drawing-sign" transform={`translate(${x - at * 22} ${y})`}>
          <circle r="10" />
          <text y="5">{markSigns[mark]}</text>
        </g>
      ))}
    </>
  );
}
