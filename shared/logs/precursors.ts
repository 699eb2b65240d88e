import { type Message, message } from '../message/index.ts';
import { clipped, coveredTime, lengthMs, type StretchMs, without } from './covered-time.ts';
import { kindWords } from './event-words.ts';
import type { LogReading } from './reading.ts';
import { seededRandom } from './seeded-random.ts';
import { firstAtOrAfter } from './sorted.ts';

export type PrecursorOptions = {
  /** How long before an occurrence counts as before it, seconds; 30 when left out (assumed). */
  windowS?: number;
  /** Rearrangements drawn; 1999 when left out, which gives p-values in steps of 0.0005. */
  permutations?: number;
  /** Same seed, same result; 1 when left out. */
  seed?: number;
  /** Occurrences are moved within blocks of this length, seconds; 20 windows when left out (assumed). */
  blockS?: number;
  /** What an occurrence itself brings about lasts this long beyond it, seconds; 30 when left out (assumed). */
  settleS?: number;
  /** Chance taken of calling regular what comes by chance, over all kinds together; 0.05 when left out. */
  risk?: number;
};

/** What is known of one kind of event as a forerunner of the fault. */
export type Precursor = {
  kind: string;
  /** Occurrences with at least one such event within the window before. */
  preceded: number;
  /** The same by chance, on average over the rearrangements. */
  expected: number;
  /** Median time by which the last such event came before, seconds; null with none. */
  leadS: number | null;
  /** Chance of at least as many where the kind has nothing to do with the fault, 0..1. */
  pValue: number;
  /** The same for the best of all kinds tested together; this is what counts. */
  correctedP: number;
  regular: boolean;
  sentence: Message;
};

export type Precursors = {
  /** Smallest corrected p-value first. */
  kinds: Precursor[];
  /** Occurrences that could be used. */
  occurrences: number;
  notes: Message[];
};

const fewestOccurrences = 3;
const mostOccurrences = 500;

/**
 * Looks for kinds of event that regularly come shortly before an occurrence of the fault.
 *
 * Permutation test: if a kind has nothing to do with the fault, an occurrence might as well have come at any other
 * moment nearby. So each is moved at random within its block of time (fixed blocks, so that busy evenings are only
 * compared with themselves; Amarasingham, Harrison, Hatsopoulos and Geman 2012, Journal of Neurophysiology 107), and
 * the occurrences preceded are counted again. The correction for the number of kinds is the single-step min-P
 * procedure of Westfall and Young 1993, Resampling-Based Multiple Testing, which takes account of kinds that come
 * together. Events that an occurrence brings about itself don't count as forerunners of the next; kinds with
 * more events than were kept aren't tested.
 *
 * @param occurrences `at` UTC ISO 8601; those outside the time that the log covers are left out, and said so
 */
export function precursors(
  reading: LogReading,
  occurrences: readonly { at: string; durationS?: number | null }[],
  options: PrecursorOptions = {},
): Precursors {
  const settings = settingsOf(options);
  const study = studyOf(reading, occurrences, settings);
  const notes = notesOn(study, occurrences.length, reading);
  if (study.places.length < fewestOccurrences) {
    notes.push(message('tooFewOccurrencesForHabit', { least: fewestOccurrences }));
    return { kinds: [], occurrences: study.places.length, notes };
  }
  const counts = rearrangedCounts(study, settings);
  const { single, corrected } = pValuesOf(counts, study.kinds.length);
  const kinds = study.kinds.map(({ kind, timesMs }, index) => {
    const column = counts.map((row) => row[index] as number);
    const [preceded = 0, ...drawn] = column;
    const expected = drawn.reduce((sum, count) => sum + count, 0) / drawn.length;
    const correctedP = corrected[index] as number;
    const found = {
      ...{ kind, preceded, expected, leadS: medianLeadS(timesMs, study.places, settings.windowMs) },
      ...{ pValue: single[index] as number, correctedP, regular: correctedP <= settings.risk },
    };
    return { ...found, sentence: sentenceOn(found, study, settings.windowMs) };
  });
  kinds.sort((a, b) => a.correctedP - b.correctedP || a.pValue - b.pValue || (a.kind < b.kind ? -1 : 1));
  return { kinds, occurrences: study.places.length, notes };
}

type Settings = {
  windowMs: number;
  permutations: number;
  seed: number;
  blockMs: number;
  settleMs: number;
  risk: number;
};

function settingsOf(options: PrecursorOptions): Settings {
  const windowMs = Math.max(0.001, options.windowS ?? 30) * 1000;
  return {
    windowMs,
    permutations: Math.max(1, Math.floor(options.permutations ?? 1999)),
    seed: options.seed ?? 1,
    blockMs: Math.max(windowMs, options.blockS === undefined ? 20 * windowMs : options.blockS * 1000),
    settleMs: (options.settleS ?? 30) * 1000,
    risk: options.risk ?? 0.05,
  };
}

/** An occurrence, and the stretches of its block in which it might as well have come. */
type Place = { atMs: number; free: readonly StretchMs[]; freeMs: number };
type Study = {
  places: Place[];
  kinds: { kind: string; timesMs: Float64Array }[];
  outside: number;
  inAftermath: number;
};

function studyOf(
  reading: LogReading,
  occurrences: readonly { at: string; durationS?: number | null }[],
  { windowMs, blockMs, settleMs }: Settings,
): Study {
  const covered = coveredTime(reading);
  const startMs = covered[0]?.fromMs ?? 0;
  const timed = occurrences
    .map(({ at, durationS }) => {
      const fromMs = Date.parse(at);
      return { fromMs, toMs: fromMs + (durationS ?? 0) * 1000 + settleMs };
    })
    .filter(({ fromMs }) => covered.some((stretch) => fromMs >= stretch.fromMs && fromMs <= stretch.toMs))
    .sort((a, b) => a.fromMs - b.fromMs);
  const outside = occurrences.length - timed.length;
  const apart: StretchMs[] = [];
  for (const one of timed) {
    const before = apart.at(-1);
    if (before === undefined || one.fromMs > before.toMs) apart.push({ ...one });
    else before.toMs = Math.max(before.toMs, one.toMs);
  }
  // Up to a window beyond, one would look back on time whose events are left out.
  const taken = apart.map(({ fromMs, toMs }) => ({ fromMs, toMs: toMs + windowMs }));
  const used = apart.slice(0, mostOccurrences);
  const places = used.map(({ fromMs: atMs }): Place => {
    const blockFromMs = startMs + Math.floor((atMs - startMs) / blockMs) * blockMs;
    const free = without(clipped(covered, { fromMs: blockFromMs, toMs: blockFromMs + blockMs }), taken);
    return { atMs, free, freeMs: lengthMs(free) };
  });
  return {
    places,
    kinds: kindsOf(reading, apart),
    outside,
    inAftermath: timed.length - apart.length,
  };
}

/** Times of events by kind, ascending, those left out that an occurrence began with or brought about. */
function kindsOf({ events, notKept }: LogReading, aftermath: readonly StretchMs[]): Study['kinds'] {
  const starts = aftermath.map(({ fromMs }) => fromMs);
  const isAftermath = (ms: number): boolean => {
    const next = firstAtOrAfter(starts, ms);
    if (starts[next] === ms) return true;
    const before = aftermath[next - 1];
    return before !== undefined && ms <= before.toMs;
  };
  const timesByKind = new Map<string, number[]>();
  for (const { kind, time } of events) {
    const ms = Date.parse(time ?? '');
    if (Number.isNaN(ms) || kind in notKept || isAftermath(ms)) continue;
    const times = timesByKind.get(kind);
    if (times === undefined) timesByKind.set(kind, [ms]);
    else times.push(ms);
  }
  return [...timesByKind].map(([kind, times]) => ({ kind, timesMs: Float64Array.from(times).sort() }));
}

/** For the occurrences as they were (first row) and each rearrangement, how many each kind preceded. */
function rearrangedCounts({ places, kinds }: Study, settings: Settings): Uint16Array[] {
  const random = seededRandom(settings.seed);
  const countAt = (momentsMs: readonly number[]): Uint16Array =>
    Uint16Array.from(kinds, ({ timesMs }) => {
      let preceded = 0;
      for (const ms of momentsMs) if (leadMs(timesMs, ms) <= settings.windowMs) preceded += 1;
      return preceded;
    });
  const rows = [countAt(places.map(({ atMs }) => atMs))];
  for (let draw = 0; draw < settings.permutations; draw += 1) {
    rows.push(countAt(places.map((place) => momentIn(place, random()))));
  }
  return rows;
}

/** Time since the last event before `ms`; infinite without one. */
function leadMs(timesMs: Float64Array, ms: number): number {
  const before = timesMs[firstAtOrAfter(timesMs, ms) - 1];
  return before === undefined ? Number.POSITIVE_INFINITY : ms - before;
}

/** The moment at `share` (0..1) of the time in which the occurrence might as well have come. */
function momentIn({ atMs, free, freeMs }: Place, share: number): number {
  let left = share * freeMs;
  for (const { fromMs, toMs } of free) {
    if (left < toMs - fromMs) return fromMs + left;
    left -= toMs - fromMs;
  }
  return atMs;
}

/** Every row, the first too, is one arrangement among all: no p-value is 0 (Phipson and Smyth 2010). */
function pValuesOf(
  counts: readonly Uint16Array[],
  kindCount: number,
): { single: number[]; corrected: number[] } {
  const shareAtLeast = Array.from({ length: kindCount }, (_, kind) => {
    const sorted = Float64Array.from(counts, (row) => row[kind] as number).sort();
    return (count: number): number => (sorted.length - firstAtOrAfter(sorted, count)) / sorted.length;
  });
  const smallest = Float64Array.from(counts, (row) =>
    shareAtLeast.reduce((least, share, kind) => Math.min(least, share(row[kind] as number)), 1),
  ).sort();
  const single = shareAtLeast.map((share, kind) => share(counts[0]?.[kind] ?? 0));
  const corrected = single.map((p) => countAtMost(smallest, p) / smallest.length);
  return { single, corrected };
}

function countAtMost(sorted: Float64Array, value: number): number {
  let index = firstAtOrAfter(sorted, value);
  while (index < sorted.length && (sorted[index] as number) <= value) index += 1;
  return index;
}

function medianLeadS(timesMs: Float64Array, places: readonly Place[], windowMs: number): number | null {
  const leads = places
    .map(({ atMs }) => leadMs(timesMs, atMs))
    .filter((lead) => lead <= windowMs)
    .sort((a, b) => a - b);
  const low = leads[Math.floor((leads.length - 1) / 2)];
  const high = leads[Math.floor(leads.length / 2)];
  return low === undefined || high === undefined ? null : (low + high) / 2000;
}

function sentenceOn(found: Omit<Precursor, 'sentence'>, { places, kinds }: Study, windowMs: number): Message {
  return message(found.regular ? 'kindComesRegularlyBefore' : 'kindComesBeforeByChance', {
    kind: kindWords(found.kind),
    within: windowMs / 1000,
    preceded: found.preceded,
    of: places.length,
    expected: found.expected,
    p: found.correctedP,
    kindsTested: kinds.length,
  });
}

function notesOn(study: Study, given: number, reading: LogReading): Message[] {
  const { outside, inAftermath } = study;
  const beyond = given - outside - inAftermath - study.places.length;
  const notes: [boolean, Message][] = [
    [outside > 0, message('occurrencesOutsideLog', { outside, of: given })],
    [inAftermath > 0, message('occurrencesWhileSettling', { occurrences: inAftermath })],
    [beyond > 0, message('onlyFirstOccurrencesUsed', { used: mostOccurrences })],
  ];
  const notKept = Object.keys(reading.notKept).map((kind) =>
    message('kindNotTested', { kind: kindWords(kind) }),
  );
  return [...notes.filter(([applies]) => applies).map(([, note]) => note), ...notKept];
}
