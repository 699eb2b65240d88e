import type { TriageRecord, Watch } from '../../shared/contract/triage.ts';
import {
  judgeRetest,
  type RetestJudgement,
  type RetestOptions,
  type WatchRecord,
} from '../../shared/isolation/retest-statistics.ts';
import { message } from '../../shared/message/message.ts';
import { baselineWatches, minutesBetween, minutesOf, occurrencesIn, occurrencesOf } from './record.ts';

/** Triggers are typed by hand: case and spaces don't make another one. */
const triggerKey = (watch: Watch): string => (watch.trigger ?? '').trim().replace(/\s+/g, ' ').toLowerCase();
const kindOf = (watch: Watch): string => (watch.mode === 'time' ? 'time' : `trigger ${triggerKey(watch)}`);

const sum = (watches: readonly Watch[], of: (watch: Watch) => number): number =>
  watches.reduce((total, watch) => total + of(watch), 0);

/** Ended watches of one mode as the statistics take them. */
export function watchRecordOf(mode: Watch['mode'], watches: readonly Watch[]): WatchRecord {
  const occurrences = occurrencesIn(watches).length;
  return mode === 'time'
    ? { mode, minutes: sum(watches, minutesOf), occurrences }
    : { mode, tries: sum(watches, (watch) => watch.tries), failures: occurrences };
}

/** Minutes of watching, from the first watch's start, at which the fault came; the pauses between watches left out. */
function occurrenceTimesMin(watches: readonly Watch[]): number[] {
  let before = 0;
  return watches.flatMap((watch) => {
    const start = before;
    before += minutesOf(watch);
    return occurrencesOf(watch).map(({ at }) => start + minutesBetween(watch.startedAt, at));
  });
}

const ended = (watch: Watch): boolean => watch.endedAt !== null;
/** Something can be said of it: it lasted, or tries were made. */
const saysSomething = (watch: Watch): boolean =>
  ended(watch) && (watch.mode === 'time' ? minutesOf(watch) > 0 : watch.tries > 0);

/** Ended watches that can be judged, of those given. */
export const usable = (watches: readonly Watch[]): Watch[] => watches.filter(saysSomething);

/** The chance taken, and the revision of the figures that it is from. */
export const figuresOf = ({ settings }: TriageRecord) => ({
  level: settings.risk,
  figures: settings.revision,
});

/**
 * Judges watches with a change in place, or after a remedy, against the watches of this round before it: watches over
 * time with watches over time, tries with tries of the same trigger. One kind of watch in which the fault came makes
 * `persists`; else one that was quiet long enough makes `cleared`.
 */
export function judgeWatches(record: TriageRecord, watches: readonly Watch[]): RetestJudgement {
  const toJudge = usable(watches);
  const kinds = new Set(toJudge.map(kindOf));
  const judgements = [...kinds].flatMap((kind) => judgeKind(record, kind, toJudge));
  const deciding =
    judgements.find(({ verdict }) => verdict === 'persists') ??
    judgements.find(({ verdict }) => verdict === 'cleared') ??
    judgements[0];
  if (deciding === undefined) {
    const reasons = [message('nothingWatchedYet')];
    return { verdict: 'inconclusive', riskOfBeingFooled: null, needed: null, reasons, warnings: [] };
  }
  const rest = judgements.filter((judgement) => judgement !== deciding);
  return {
    ...deciding,
    reasons: [deciding, ...rest].flatMap(({ reasons }) => reasons),
    warnings: [deciding, ...rest].flatMap(({ warnings }) => warnings),
  };
}

/** The watches of this round that a watch is to be compared with, and how: the same mode, if it can be the same trigger. */
export function baselineFor(
  record: TriageRecord,
  watch: Watch,
): { baseline: WatchRecord; options: RetestOptions } {
  const sameMode = usable(baselineWatches(record)).filter(({ mode }) => mode === watch.mode);
  const sameKind = sameMode.filter((each) => kindOf(each) === kindOf(watch));
  const watches = sameKind.length > 0 ? sameKind : sameMode;
  return {
    baseline: watchRecordOf(watch.mode, watches),
    options: {
      risk: record.settings.risk,
      ...(watch.mode === 'time' ? { occurrenceTimesMin: occurrenceTimesMin(watches) } : {}),
      sameTrigger: watches === sameKind || watches.length === 0,
    },
  };
}

function judgeKind(record: TriageRecord, kind: string, watches: readonly Watch[]): RetestJudgement[] {
  const [first, ...rest] = watches.filter((watch) => kindOf(watch) === kind);
  if (first === undefined) return [];
  const { baseline, options } = baselineFor(record, first);
  return [judgeRetest(baseline, watchRecordOf(first.mode, [first, ...rest]), options)];
}
