import type { Box } from './fit.ts';
import { type Mark, markSigns } from './marks.ts';

/** The signs of the marks at a place, side by side on its upper edge, from its right corner. */
export function Signs({ marks, box }: { marks: readonly Mark[]; box: Omit<Box, 'id'> }) {
  const size = Math.min(24, box.height * 0.6);
  return (
    <>
      {marks.map((mark, at) => (
        <g
          key={mark}
          class="drawing-sign"
          transform={`translate(${box.x + box.width - size * (0.55 + at * 1.1)} ${box.y})`}
        >
          <circle r={size / 2} />
          <text y={size * 0.27} font-size={size * 0.72}>
            {markSigns[mark]}
          </text>
        </g>
      ))}
    </>
  );
}
