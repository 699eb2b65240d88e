import type { Chain } from '../../../shared/contract/chain.ts';
import type { LogFinding } from '../../../shared/contract/log-findings.ts';
import type { TriageRecord, Watch } from '../../../shared/contract/triage.ts';
import { typedText } from '../parts/typed.tsx';
import { deviceWord, placeWord } from '../place/place-words.ts';
import { changeWords } from '../words/change-words.ts';
import { said } from '../words/sentence.tsx';
import { values } from './value-words.ts';
import { caseWords } from './words.ts';

/** `open`: it runs still. `dim`: withdrawn, or not confirmed. */
export type LaneSpan = {
  id: string;
  from: string;
  to: string | null;
  name: string;
  tone: 'watch' | 'voided' | 'change' | 'covered' | 'gap';
};
export type LaneMark = {
  id: string;
  at: string;
  name: string;
  tone: 'seen' | 'proposed' | 'withdrawn' | 'event';
};
/** One row of the time line. */
export type Lane = {
  id: string;
  name: string;
  spans: readonly LaneSpan[];
  marks: readonly LaneMark[];
};

/** More kinds of event than these share one row. */
const mostKinds = 6;

/** Everything of a case that has a time, in rows: watches, changes, what was seen, and what each log tells. */
export function lanesOf(record: TriageRecord, chain: Chain, logs: readonly LogFinding[]): Lane[] {
  const t = caseWords();
  return [
    {
      id: 'watches',
      name: t.watches,
      spans: record.watches.map((watch, at) => ({
        id: watch.id,
        from: watch.startedAt,
        to: watch.endedAt,
        name: `${at + 1} ${watchName(watch)}`,
        tone: watch.voided === null ? 'watch' : 'voided',
      })),
      marks: [],
    },
    {
      id: 'changes',
      name: t.changesInPlace,
      spans: record.changes.flatMap((change, at) =>
        change.appliedAt === null
          ? []
          : [
              {
                id: change.id,
                from: change.appliedAt,
                to: change.finishedAt,
                name: `${at + 1} ${changeWords(change)}: ${placeWord(chain, change.target)}`,
                tone: 'change' as const,
              },
            ],
      ),
      marks: [],
    },
    { id: 'seen', name: t.faultSeen, spans: [], marks: [...seen(record), ...proposed(logs)] },
    ...logs.flatMap((log) => logLanes(log, chain)),
  ];
}

/** What a watch was for; of one that was voided also why it does not count. */
export function watchName({ purpose, voided }: Watch): string {
  const name = values().purposes[purpose];
  return voided === null ? name : `${name} (${caseWords().doesNotCount}: ${typedText(voided.reason)})`;
}

const seen = (record: TriageRecord): LaneMark[] =>
  record.watches.flatMap(({ occurrences, voided }) =>
    occurrences.map(({ id, at, description, withdrawn }) => ({
      id,
      at,
      name: [
        withdrawn !== null
          ? caseWords().withdrawn
          : voided !== null
            ? caseWords().doesNotCount
            : caseWords().seen,
        typedText(description),
      ]
        .filter((part) => part !== '')
        .join(': '),
      tone: withdrawn === null && voided === null ? 'seen' : 'withdrawn',
    })),
  );

const proposed = (logs: readonly LogFinding[]): LaneMark[] =>
  logs.flatMap(({ evidenceId, watches }) =>
    watches.flatMap((watch) =>
      watch.proposed
        .filter(({ recordedAs }) => recordedAs === null)
        .map(({ at, description }) => ({
          id: `${evidenceId} ${watch.watchId} ${at}`,
          at,
          name: `${caseWords().proposed}: ${said(description).text}`,
          tone: 'proposed' as const,
        })),
    ),
  );

function logLanes({ evidenceId, deviceId, fileName, span, gaps, events }: LogFinding, chain: Chain): Lane[] {
  const device = deviceId === null ? (fileName ?? '') : deviceWord(chain, deviceId);
  const counts = new Map<string, number>();
  for (const { kind } of events) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  const usual = [...counts].sort((a, b) => b[1] - a[1]).map(([kind]) => kind);
  const kinds = usual.slice(0, usual.length > mostKinds ? mostKinds - 1 : mostKinds);
  const others = events.filter(({ kind }) => !kinds.includes(kind));
  return [
    {
      id: evidenceId,
      name: caseWords().logOf(device),
      spans: [
        ...(span === null
          ? []
          : [
              {
                id: `${evidenceId} span`,
                ...span,
                name: caseWords().covered,
                tone: 'covered' as const,
              },
            ]),
        ...gaps.map(({ from, to }) => ({
          id: `${evidenceId} ${from}`,
          from,
          to,
          name: caseWords().gap,
          tone: 'gap' as const,
        })),
      ],
      marks: [],
    },
    ...kinds.map((kind) => {
      const ofKind = events.filter((event) => event.kind === kind);
      return eventLane(`${evidenceId} ${kind}`, `${device}: ${wordsOfKind(ofKind)}`, ofKind);
    }),
    ...(others.length === 0
      ? []
      : [eventLane(`${evidenceId} others`, `${device}: ${caseWords().otherEvents}`, others)]),
  ];
}

const wordsOfKind = ([first]: LogFinding['events']): string =>
  first === undefined ? '' : said(first.words).text;

const eventLane = (id: string, name: string, events: LogFinding['events']): Lane => ({
  id,
  name,
  spans: [],
  marks: events.map(({ at, line, excerpt }) => ({ id: `${at} ${line}`, at, name: excerpt, tone: 'event' })),
});

/** The first and the last moment in the rows; null when nothing has a time. */
export function extentOf(lanes: readonly Lane[], now: string): { from: number; to: number } | null {
  const moments = lanes.flatMap(({ spans, marks }) => [
    ...spans
      .filter(({ tone }) => tone !== 'covered' && tone !== 'gap')
      .flatMap(({ from, to }) => [from, to ?? now]),
    ...marks.map(({ at }) => at),
  ]);
  if (moments.length === 0) return null;
  const numbers = moments.map((moment) => Date.parse(moment));
  return { from: Math.min(...numbers), to: Math.max(...numbers) };
}
