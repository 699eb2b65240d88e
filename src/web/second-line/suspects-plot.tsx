import { percent } from '../words/percent.ts';
import { said } from '../words/sentence.tsx';
import { clockTime, number } from '../words/times.ts';
import type { SuspectsOverTime } from './suspects-over-time.ts';
import { useWidth } from './use-width.ts';

/** Each line has a letter, a mark and a dash of its own: colour is not needed to tell them apart. */
export const letters = ['A', 'B', 'C', 'D', 'E', 'F'];
const dashes = ['', '9 4', '2 4', '12 4 2 4', '5 5', '1 5'];
const [top, bottom, left] = [14, 44, 52];
const height = 204;
const labelGap = 16;

/** By chance, or by the logarithm of odds, where what is nearly sure or nearly ruled out can be told apart. */
export type Scale = 'chance' | 'odds';
const marked: Record<Scale, readonly number[]> = {
  chance: [0, 0.25, 0.5, 0.75, 1],
  odds: [0.001, 0.01, 0.1, 0.5, 0.9, 0.99, 0.999],
};
const logOdds = (chance: number): number => Math.log(chance / (1 - chance));
/** Beyond this nothing is told apart any more: a thousand to one. */
const mostOdds = logOdds(0.999);
/** From 0 to 1, from below. */
const heightOf: Record<Scale, (chance: number) => number> = {
  chance: (chance) => chance,
  odds: (chance) => (Math.max(-mostOdds, Math.min(mostOdds, logOdds(chance))) / mostOdds + 1) / 2,
};

/** How likely each suspect was after each result, in steps from left to right, with the time of each. */
export function SuspectsPlot({
  over,
  label,
  scale,
  zone,
}: {
  over: SuspectsOverTime;
  label: string;
  scale: Scale;
  zone: string;
}) {
  const [pane, width] = useWidth();
  const { stages, lines } = over;
  const right = width < 500 ? 72 : 84;
  const x = (at: number) => left + (at * (width - left - right)) / Math.max(1, stages.length - 1);
  const y = (chance: number) => top + (1 - heightOf[scale](chance)) * (height - top - bottom);
  const ends = spread(lines.map(({ chances }) => y(chances.at(-1) ?? 0)));
  const every = Math.ceil((stages.length * 44) / Math.max(1, width - left - right));
  return (
    <div ref={pane} class="plot">
      <svg role="img" aria-label={label} viewBox={`0 0 ${width} ${height}`} width={width} height={height}>
        {marked[scale].map((chance) => (
          <g key={chance} class="plot-grid">
            <line x1={left} x2={width - right} y1={y(chance)} y2={y(chance)} />
            <text x={left - 6} y={y(chance) + 4} text-anchor="end">
              {number(chance * 100, 1)} %
            </text>
          </g>
        ))}
        {stages.map(({ key, at: moment, text }, at) => (
          <g key={key} class="plot-grid">
            {text !== null && <title>{said(text).text}</title>}
            <line x1={x(at)} x2={x(at)} y1={height - bottom} y2={height - bottom + 5} />
            {at % every === 0 && (
              <text x={x(at)} y={height - bottom + 18} text-anchor="middle">
                {at}
              </text>
            )}
            {at % every === 0 && moment !== null && (
              <text x={x(at)} y={height - bottom + 34} text-anchor="middle">
                {clockTime(moment, zone)}
              </text>
            )}
          </g>
        ))}
        {lines.map(({ key, name, chances }, nth) => (
          <g key={key} class={`plot-line plot-line-${nth}`}>
            <title>{said(name).text}</title>
            <polyline
              points={chances.map((chance, at) => `${x(at)},${y(chance)}`).join(' ')}
              stroke-dasharray={dashes[nth]}
            />
            {chances.map((chance, at) => (
              <PointMark key={stages[at]?.key} nth={nth} x={x(at)} y={y(chance)} />
            ))}
            <text x={width - right + 10} y={(ends[nth] ?? 0) + 4}>
              {letters[nth]} {percent(chances.at(-1) ?? 0)}
            </text>
          </g>
        ))}
      </svg>
    </div>
  );
}

/** The mark of a line: a circle, a square, a triangle, a diamond, a cross, a bar. */
export function PointMark({ nth, x, y }: { nth: number; x: number; y: number }) {
  const shapes = [
    'M-4 0a4 4 0 1 0 8 0a4 4 0 1 0 -8 0z',
    'M-4-4h8v8h-8z',
    'M0-5l5 9h-10z',
    'M0-5l5 5l-5 5l-5-5z',
    'M-4-4l8 8m0-8l-8 8',
    'M0-5v10',
  ];
  return <path class="plot-point" transform={`translate(${x} ${y})`} d={shapes[nth % shapes.length] ?? ''} />;
}

/** Moves labels apart that would lie on each other, and keeps their order. */
function spread(wanted: readonly number[]): number[] {
  const order = wanted.map((y, at) => ({ y, at })).sort((a, b) => a.y - b.y);
  const placed: number[] = [];
  let free = Number.NEGATIVE_INFINITY;
  for (const { y, at } of order) {
    placed[at] = Math.max(y, free);
    free = (placed[at] ?? y) + labelGap;
  }
  const below = free - labelGap - (height - bottom + 4);
  return below > 0 ? placed.map((y) => y - below) : placed;
}
