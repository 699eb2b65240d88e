import type { TriageRecord, Watch } from '../../shared/contract/triage.ts';
import {
  judgeRetest,
  type RetestJudgement,
  type RetestOptions,
  type WatchRecord,
} from '../../shared/isolation/retest-statistics.ts';
import { burstsOf, independentOf } from '../../shared/isolation/rhythm.ts';
import { type Message, message } from '../../shared/message/message.ts';
import { coldMinutesOf, minutesCounted, startingOccurrence, warmFromMin, whyNotCounted } from './counting.ts';
import { baselineWatches, minutesBetween, minutesOf, occurrencesIn, occurrencesOf } from './record.ts';

/** Triggers are typed by hand: case and spaces don't make another one. One that has a name is told by it. */
const triggerKey = ({ trigger, triggerKind }: Watch): string =>
  triggerKind !== null && triggerKind !== 'other'
    ? triggerKind
    : (trigger ?? '').trim().replace(/\s+/g, ' ').toLowerCase();

/** By what a watch counts: a watch over time of a fault that is always there is a look at it. */
const modeIn = ({ symptom: { pattern } }: TriageRecord, { mode }: Watch): Watch['mode'] =>
  pattern.kind === 'always' && mode === 'time' ? 'look' : mode;

const kindOf = (record: TriageRecord, watch: Watch): string => {
  const mode = modeIn(record, watch);
  return mode === 'trigger' ? `trigger ${triggerKey(watch)}` : mode;
};

const sum = (watches: readonly Watch[], of: (watch: Watch) => number): number =>
  watches.reduce((total, watch) => total + of(watch), 0);

/** Ended watches that count alike as the statistics take them. */
export function watchRecordOf(record: TriageRecord, watches: readonly Watch[]): WatchRecord {
  const [first] = watches;
  const mode = first === undefined ? 'time' : modeIn(record, first);
  const { kind } = record.symptom.pattern;
  switch (mode) {
    case 'time':
      return inTime(record, watches);
    case 'trigger':
      return { mode, tries: sum(watches, ({ tries }) => tries), failures: occurrencesIn(watches).length };
    case 'look': {
      const bad = watches.filter((watch) => occurrencesOf(watch).length > 0).length;
      // A fault that comes and goes may be away from a look by chance, as it may from a try.
      return kind === 'always'
        ? { mode, looks: watches.length, bad }
        : { mode: 'trigger', tries: watches.length, failures: bad };
    }
  }
}

function inTime(record: TriageRecord, watches: readonly Watch[]): WatchRecord {
  const minutes = sum(watches, (watch) => minutesCounted(record, watch));
  const times = timesOfCounting(record, watches);
  const counts = { mode: 'time', minutes, occurrences: times.length } as const;
  if (times.length < 2) return counts;
  return { ...counts, independent: independentOf(times, minutes, record.symptom.pattern.kind) };
}

/** Counted minutes, from the first watch's start, at which the fault came; the pauses between watches left out. */
function occurrenceTimesMin(record: TriageRecord, watches: readonly Watch[]): number[] {
  const starting = startingOccurrence(record)?.occurrence;
  let before = 0;
  return watches.flatMap((watch) => {
    const start = before - coldMinutesOf(record, watch);
    before += minutesCounted(record, watch);
    return occurrencesOf(watch)
      .filter((occurrence) => occurrence !== starting)
      .map(({ at }) => Math.max(0, start + minutesBetween(watch.startedAt, at)));
  });
}

/** The times of what is counted: of each burst the first, where the fault comes in bursts. */
function timesOfCounting(record: TriageRecord, watches: readonly Watch[]): number[] {
  const times = occurrenceTimesMin(record, watches);
  return record.symptom.pattern.kind === 'bursts' ? burstsOf(times) : times;
}

const ended = (watch: Watch): boolean => watch.endedAt !== null;
/** Something can be said of it: it lasted, tries were made, or it was a look. */
const saysSomething = (watch: Watch): boolean => {
  if (!ended(watch)) return false;
  if (watch.mode === 'look') return true;
  return watch.mode === 'time' ? minutesOf(watch) > 0 : watch.tries > 0;
};

/** Ended watches that can be judged, of those given. */
export const usable = (watches: readonly Watch[]): Watch[] => watches.filter(saysSomething);

/** The chance taken, and the revision of the figures that it is from. */
export const figuresOf = ({ settings }: TriageRecord) => ({
  level: settings.risk,
  figures: settings.revision,
});

/**
 * Judges watches with a change in place, or after a remedy, against the watches of this round before it: watches over
 * time with watches over time, tries with tries of the same trigger, looks with looks. One kind of watch in which the
 * fault came makes `persists`; else one that was quiet long enough makes `cleared`. Quiet under other conditions than the
 * fault comes in counts for nothing, and the verdict says so.
 */
export function judgeWatches(record: TriageRecord, watches: readonly Watch[]): RetestJudgement {
  const made = usable(watches);
  const whyNot = [...new Map(made.flatMap((watch) => whyOf(record, watch))).values()];
  const toJudge = made.filter((watch) => whyNotCounted(record, watch) === null);
  const kinds = new Set(toJudge.map((watch) => kindOf(record, watch)));
  const judgements = [...kinds].flatMap((kind) => judgeKind(record, kind, toJudge));
  const deciding =
    judgements.find(({ verdict }) => verdict === 'persists') ??
    judgements.find(({ verdict }) => verdict === 'cleared') ??
    judgements[0];
  if (deciding === undefined) return nothingCounted(record, whyNot);
  const rest = judgements.filter((judgement) => judgement !== deciding);
  return {
    ...deciding,
    reasons: [deciding, ...rest].flatMap(({ reasons }) => reasons),
    warnings: [...whyNot, ...[deciding, ...rest].flatMap(({ warnings }) => warnings)],
  };
}

function whyOf(record: TriageRecord, watch: Watch): [string, Message][] {
  const why = whyNotCounted(record, watch);
  return why === null ? [] : [[why.code, why]];
}

/** No watch that counts: what it takes is what it takes from the start. */
function nothingCounted(record: TriageRecord, whyNot: readonly Message[]): RetestJudgement {
  const reasons = whyNot.length === 0 ? [message('nothingWatchedYet')] : [...whyNot];
  return {
    verdict: 'inconclusive',
    riskOfBeingFooled: null,
    needed: whyNot.length === 0 ? null : fullNeedOf(record),
    reasons,
    warnings: [],
  };
}

/** What a quiet retest takes in all, by the watches before any change; null where they give no measure. */
export function fullNeedOf(record: TriageRecord): RetestJudgement['needed'] {
  const watches = baselineKind(record);
  if (watches.length === 0) return null;
  const baseline = watchRecordOf(record, watches);
  return judgeRetest(baseline, nothingOf(baseline.mode), { risk: record.settings.risk }).needed;
}

function nothingOf(mode: WatchRecord['mode']): WatchRecord {
  switch (mode) {
    case 'time':
      return { mode, minutes: 0, occurrences: 0 };
    case 'trigger':
      return { mode, tries: 0, failures: 0 };
    case 'look':
      return { mode, looks: 0, bad: 0 };
  }
}

/** The watches before any change that count alike and in which the fault was seen most; all of a kind, none where there are none. */
export function baselineKind(record: TriageRecord): Watch[] {
  const watches = countedBaseline(record);
  const kinds = [...new Set(watches.map((watch) => kindOf(record, watch)))].map((kind) =>
    watches.filter((watch) => kindOf(record, watch) === kind),
  );
  // Of kinds in which it was seen alike, a watch over time comes first.
  const rank = (of: readonly Watch[]) => occurrencesIn(of).length + (of[0]?.mode === 'time' ? 0.5 : 0);
  return kinds.toSorted((a, b) => rank(b) - rank(a))[0] ?? [];
}

/** Quiet before any change that was watched under other conditions than the fault comes in would make it look rarer. */
const countedBaseline = (record: TriageRecord): Watch[] =>
  usable(baselineWatches(record)).filter((watch) => whyNotCounted(record, watch) === null);

/** The watches of this round that a watch is to be compared with, and how: the same mode, if it can be the same trigger. */
export function baselineFor(
  record: TriageRecord,
  watch: Watch,
): { baseline: WatchRecord; options: RetestOptions } {
  const sameMode = countedBaseline(record).filter((each) => modeIn(record, each) === modeIn(record, watch));
  const sameKind = sameMode.filter((each) => kindOf(record, each) === kindOf(record, watch));
  const watches = sameKind.length > 0 ? sameKind : sameMode;
  return {
    baseline:
      watches.length === 0 ? nothingOf(watchRecordOf(record, [watch]).mode) : watchRecordOf(record, watches),
    options: {
      risk: record.settings.risk,
      sameTrigger: watches === sameKind || watches.length === 0,
    },
  };
}

function judgeKind(record: TriageRecord, kind: string, watches: readonly Watch[]): RetestJudgement[] {
  const ofKind = watches.filter((watch) => kindOf(record, watch) === kind);
  const [first] = ofKind;
  if (first === undefined) return [];
  const { baseline, options } = baselineFor(record, first);
  const judged = judgeRetest(baseline, watchRecordOf(record, ofKind), options);
  return [{ ...judged, reasons: [...judged.reasons, ...howCounted(record, first)] }];
}

/** What is to be known of how minutes and occurrences were counted. */
function howCounted(record: TriageRecord, watch: Watch): Message[] {
  if (modeIn(record, watch) !== 'time') return [];
  const { kind } = record.symptom.pattern;
  const after = warmFromMin(record);
  if (kind === 'warm' && after > 0) return [message('onlyWarmMinutes', { after })];
  if (kind !== 'bursts') return [];
  const before = baselineWatches(record).filter((each) => modeIn(record, each) === 'time');
  const occurrences = occurrencesIn(before).length;
  const bursts = timesOfCounting(record, before).length;
  return occurrences > bursts ? [message('burstsCounted', { occurrences, bursts })] : [];
}
