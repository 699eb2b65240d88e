import { useState } from 'preact/hooks';
import { SelectField } from '../parts/field.tsx';
import { dayAndTime } from '../words/times.ts';
import type { CaseFacts } from './case-facts.ts';
import { CasePart } from './case-part.tsx';
import { extentOf, type Lane, lanesOf, watchName } from './lanes.ts';
import { Table } from './table.tsx';
import { TimePlot } from './time-plot.tsx';
import { caseWords } from './words.ts';

/** Shown before and after what is zoomed to, as a share of it. */
const margin = 0.06;

/** Watches, changes, occurrences and what logs tell over one axis of time, as a whole or watch by watch. */
export function TimesPart({ facts: { ticket, chain, logs, zone } }: { facts: CaseFacts }) {
  const t = caseWords();
  const [zoom, setZoom] = useState('all');
  const now = new Date().toISOString();
  const lanes = lanesOf(ticket.triage, chain, logs);
  const whole = extentOf(lanes, now);
  if (whole === null)
    return (
      <CasePart id="times" title={t.timeLine}>
        <p>{t.noTimes}</p>
      </CasePart>
    );
  const watch = ticket.triage.watches.find(({ id }) => id === zoom);
  const shown =
    watch === undefined ? whole : { from: Date.parse(watch.startedAt), to: Date.parse(watch.endedAt ?? now) };
  const around = Math.max(60_000, (shown.to - shown.from) * margin);
  const [from, to] = [shown.from - around, shown.to + around];
  return (
    <CasePart id="times" title={t.timeLine}>
      <p class="soft">{t.howToReadTimes}</p>
      <div class="not-printed case-choice">
        <SelectField
          label={t.zoomTo}
          value={watch === undefined ? 'all' : zoom}
          onChoose={setZoom}
          options={[
            { value: 'all', label: t.everything },
            ...ticket.triage.watches.map((each, at) => ({
              value: each.id,
              label: t.watchNo(at + 1, watchName(each), dayAndTime(each.startedAt, zone)),
            })),
          ]}
        />
      </div>
      <TimePlot lanes={lanes} from={from} to={to} zone={zone} label={t.timePlot(lanes.length)} />
      <ul class="case-legend">
        {(['seen', 'proposed', 'withdrawn', 'event'] as const).map((tone) => (
          <li key={tone}>
            <svg aria-hidden="true" width="16" height="18" class={`plot-moment plot-moment-${tone}`}>
              <path transform="translate(8 11)" d={legendShapes[tone]} />
            </svg>
            {t.marks[tone]}
          </li>
        ))}
      </ul>
      <details>
        <summary>{t.asTable}</summary>
        <Table
          caption={t.timeLine}
          heads={[t.when, t.row, t.what]}
          rows={rowsOf(lanes, from, to).map(({ at, row, what }) => [dayAndTimeExact(at, zone), row, what])}
        />
      </details>
    </CasePart>
  );
}

const legendShapes = {
  seen: 'M0 4l-6-12h12z',
  proposed: 'M0 4l-6-12h12z',
  withdrawn: 'M-5-7l10 10m0-10l-10 10',
  event: 'M0-9v14',
} as const;

const dayAndTimeExact = (at: string, zone: string): string => `${dayAndTime(at, zone)}:${at.slice(17, 19)}`;

function rowsOf(lanes: readonly Lane[], from: number, to: number) {
  const t = caseWords();
  const rows = lanes.flatMap(({ name: row, spans, marks }) => [
    ...spans.map((span) => ({
      at: span.from,
      row,
      what: span.to === null ? t.runsStill(span.name) : t.lastsUntil(span.name, minutes(span.from, span.to)),
      ends: span.to,
    })),
    ...marks.map((mark) => ({ at: mark.at, row, what: mark.name, ends: mark.at })),
  ]);
  return rows
    .filter(({ at, ends }) => Date.parse(at) <= to && (ends === null || Date.parse(ends) >= from))
    .sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
}

const minutes = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / 60_000;
