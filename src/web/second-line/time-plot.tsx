import { clockTime, day, dayAndTime, dayKey } from '../words/times.ts';
import type { Lane, LaneMark, LaneSpan } from './lanes.ts';
import { useWidth } from './use-width.ts';

const rowHeight = 40;
const axisHeight = 34;
const side = 10;
const minuteMs = 60_000;
/** Minutes between two marks of the axis. */
const steps = [1, 2, 5, 10, 15, 30, 60, 120, 180, 360, 720, 1440, 2880, 10_080];

type Properties = {
  lanes: readonly Lane[];
  /** Milliseconds since 1970. */
  from: number;
  to: number;
  zone: string;
  label: string;
};
/** Rows over one axis of time: spans as bars, moments as marks. */
export function TimePlot({ lanes, from, to, zone, label }: Properties) {
  const [pane, width] = useWidth();
  const length = Math.max(minuteMs, to - from);
  const x = (moment: number) => side + ((moment - from) / length) * (width - 2 * side);
  const height = lanes.length * rowHeight + axisHeight;
  const ticks = ticksFor(from, from + length, Math.max(2, Math.floor(width / 76)));
  const isOneDay =
    dayKey(new Date(from).toISOString(), zone) === dayKey(new Date(from + length).toISOString(), zone);
  return (
    <div ref={pane} class="plot">
      <svg role="img" aria-label={label} viewBox={`0 0 ${width} ${height}`} width={width} height={height}>
        {ticks.map((moment) => (
          <g key={moment} class="plot-grid">
            <line x1={x(moment)} x2={x(moment)} y1={0} y2={height - axisHeight + 4} />
            <text x={x(moment)} y={height - axisHeight + 18} text-anchor="middle">
              {clockTime(new Date(moment).toISOString(), zone)}
            </text>
          </g>
        ))}
        <text class="plot-note" x={side} y={height - 2}>
          {isOneDay ? day(new Date(from).toISOString(), zone) : spanOfDays(from, from + length, zone)}
        </text>
        {lanes.map((lane, row) => (
          <g key={lane.id} class="plot-row" transform={`translate(0 ${row * rowHeight})`}>
            <line class="plot-floor" x1={side} x2={width - side} y1={rowHeight - 4} y2={rowHeight - 4} />
            {lane.spans.map((span) => (
              <Bar key={span.id} span={span} x={x} from={from} to={from + length} />
            ))}
            {lane.marks
              .filter(({ at }) => Date.parse(at) >= from && Date.parse(at) <= from + length)
              .map((mark) => (
                <Moment key={mark.id} mark={mark} x={x(Date.parse(mark.at))} zone={zone} />
              ))}
            <text class="plot-name" x={side} y="12">
              {lane.name}
            </text>
          </g>
        ))}
      </svg>
    </div>
  );
}

function Bar({
  span,
  x,
  from,
  to,
}: {
  span: LaneSpan;
  x: (moment: number) => number;
  from: number;
  to: number;
}) {
  const begins = Math.max(from, Date.parse(span.from));
  const ends = Math.min(to, span.to === null ? to : Date.parse(span.to));
  if (ends < from || begins > to) return null;
  const wide = Math.max(2, x(ends) - x(begins));
  // A name that would not fit is left to the table; its number usually does.
  const fits = Math.floor((wide - 8) / 7);
  const shown =
    span.name.length <= fits
      ? span.name
      : (span.name.split(' ')[0] ?? '').length <= fits && fits >= 1
        ? (span.name.split(' ')[0] ?? '')
        : '';
  return (
    <g class={`plot-bar plot-bar-${span.tone}`}>
      <title>{span.name}</title>
      <rect x={x(begins)} y="16" width={wide} height="20" />
      {span.tone !== 'covered' && span.tone !== 'gap' && shown !== '' && (
        <text x={x(begins) + 4} y="30">
          {shown}
        </text>
      )}
    </g>
  );
}

const markShapes: Record<LaneMark['tone'], string> = {
  seen: 'M0 4l-6-12h12z',
  proposed: 'M0 4l-6-12h12z',
  withdrawn: 'M-5-7l10 10m0-10l-10 10',
  event: 'M0-9v14',
};
function Moment({ mark, x, zone }: { mark: LaneMark; x: number; zone: string }) {
  return (
    <g class={`plot-moment plot-moment-${mark.tone}`} transform={`translate(${x} 29)`}>
      <title>{`${dayAndTime(mark.at, zone)} ${mark.name}`}</title>
      <path d={markShapes[mark.tone]} />
    </g>
  );
}

const spanOfDays = (from: number, to: number, zone: string): string =>
  `${dayAndTime(new Date(from).toISOString(), zone)} – ${dayAndTime(new Date(to).toISOString(), zone)}`;

/** Round moments between two, at most so many. */
function ticksFor(from: number, to: number, most: number): number[] {
  const step = (steps.find((minutes) => (to - from) / (minutes * minuteMs) <= most) ?? 10_080) * minuteMs;
  const ticks: number[] = [];
  for (let at = Math.ceil(from / step) * step; at <= to; at += step) ticks.push(at);
  return ticks;
}
