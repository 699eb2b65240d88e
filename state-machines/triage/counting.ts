import type { Occurrence, Pattern, TriageRecord, Watch } from '../../shared/contract/triage.ts';
import { changeCatalogue } from '../../shared/isolation/change-catalogue.ts';
import { type Message, message } from '../../shared/message/message.ts';
import {
  baselineWatches,
  isBaseline,
  minutesBetween,
  minutesOf,
  occurrencesOf,
  runningWatch,
} from './record.ts';

// How the fault comes says how it is watched for, and which watches say something: a fault that is always there by a
// look, one on a trigger by tries of it, one that comes when warm by minutes after warming up, and one that shows with one
// title only while that title plays.

/** The way in which a fault that comes like this is watched for. */
export function modeOfPattern({ kind }: Pattern): Watch['mode'] {
  if (kind === 'always') return 'look';
  return kind === 'trigger' ? 'trigger' : 'time';
}

/**
 * Minutes since power-on from which the fault comes: as told, or earlier where it was seen earlier; 0 where it does not
 * wait for that, or nothing is known.
 */
export function warmFromMin(record: TriageRecord): number {
  const { pattern } = record.symptom;
  if (pattern.kind !== 'warm') return 0;
  const earliest = Math.min(
    ...seenWarm(record).map((seen) => seen.sincePowerOnMin),
    pattern.afterMin ?? Infinity,
  );
  return Number.isFinite(earliest) ? earliest : 0;
}

/** An occurrence before any change, and how many minutes after power-on it was. */
type SeenWarm = { occurrence: Occurrence; sincePowerOnMin: number };

/** Those of which it was said how long everything had been on. */
const seenWarm = (record: TriageRecord): SeenWarm[] =>
  baselineWatches(record).flatMap((watch) => {
    const { sincePowerOnMin } = watch.conditions;
    if (sincePowerOnMin === null) return [];
    return occurrencesOf(watch).map((occurrence) => ({
      occurrence,
      sincePowerOnMin: sincePowerOnMin + minutesBetween(watch.startedAt, occurrence.at),
    }));
  });

/**
 * The occurrence before any change that says from when the fault is to be expected, where it came earlier than told, or
 * nothing was told. It is then none of those that are counted: over the time that begins with an occurrence, a rate with
 * it would be too high, and a retest too short. Null where it is as told, or one occurrence is all there is.
 */
export function startingOccurrence(record: TriageRecord): SeenWarm | null {
  const { pattern } = record.symptom;
  if (pattern.kind !== 'warm') return null;
  const seen = seenWarm(record).toSorted((a, b) => a.sincePowerOnMin - b.sincePowerOnMin);
  const [first] = seen;
  if (first === undefined || seen.length === 1) return null;
  return first.sincePowerOnMin < (pattern.afterMin ?? Number.POSITIVE_INFINITY) ? first : null;
}

/** In a longer pause between watches than this, things are switched off and nobody says so; minutes, assumed. */
const longestPauseMin = 240;

/**
 * Minutes for which everything has been on by now at the least: by what was said with the last watches, and by what was
 * switched off since. 0 where nothing says so.
 */
export function onForMin({ watches, changes }: TriageRecord, now: string): number {
  let [onSinceMs, lastMs] = [Number.POSITIVE_INFINITY, 0];
  for (const { startedAt, endedAt, conditions } of watches) {
    if (minutesBetween(new Date(lastMs).toISOString(), startedAt) > longestPauseMin)
      onSinceMs = Number.POSITIVE_INFINITY;
    if (conditions.sincePowerOnMin !== null)
      onSinceMs = Date.parse(startedAt) - conditions.sincePowerOnMin * 60_000;
    lastMs = Date.parse(endedAt ?? now);
  }
  const offMs = changes
    .filter(({ kind }) => changeCatalogue[kind].switchesOff)
    .flatMap(({ appliedAt, finishedAt }) => [appliedAt, finishedAt])
    .map((at) => (at === null ? 0 : Date.parse(at)));
  const nowMs = Date.parse(now);
  if (nowMs - lastMs > longestPauseMin * 60_000) return 0;
  return Math.max(0, (nowMs - Math.max(onSinceMs, ...offMs)) / 60_000);
}

/** Minutes from now on in which a fault that comes only when warm is not to be expected yet; with a watch that runs, of it. */
export function coldAheadMin(record: TriageRecord, now: string): number {
  const from = warmFromMin(record);
  if (from === 0) return 0;
  const running = runningWatch(record);
  if (running === null) return Math.max(0, from - onForMin(record, now));
  const { sincePowerOnMin } = running.conditions;
  return sincePowerOnMin === null
    ? 0
    : Math.max(0, from - sincePowerOnMin - minutesBetween(running.startedAt, now));
}

/**
 * Minutes of a watch, at its beginning, in which the fault was not to be expected yet. Where it was seen earlier than told,
 * or nothing was told, that occurrence says from when.
 */
export function coldMinutesOf(record: TriageRecord, watch: Watch): number {
  const { sincePowerOnMin } = watch.conditions;
  if (sincePowerOnMin === null) return 0;
  const from = isBaseline(record, watch) ? baselineFromMin(record) : warmFromMin(record);
  return Math.min(minutesOf(watch), Math.max(0, from - sincePowerOnMin));
}

/** Minutes since power-on from which a watch before any change counts. */
function baselineFromMin(record: TriageRecord): number {
  const { pattern } = record.symptom;
  if (pattern.kind !== 'warm') return 0;
  const starting = startingOccurrence(record);
  if (starting !== null) return starting.sincePowerOnMin;
  return warmFromMin(record) === pattern.afterMin ? pattern.afterMin : 0;
}

/** Minutes of a watch in which the fault could have come. */
export const minutesCounted = (record: TriageRecord, watch: Watch): number =>
  minutesOf(watch) - coldMinutesOf(record, watch);

/**
 * Why the fault's staying away from a watch says nothing; null where it says something. A fault that came is there,
 * however it was watched for.
 */
export function whyNotCounted(record: TriageRecord, watch: Watch): Message | null {
  const { pattern, onlyWith } = record.symptom;
  if (occurrencesOf(watch).length > 0) return null;
  if (pattern.kind === 'trigger' && watch.mode !== 'trigger')
    return message('needsTrigger', { trigger: pattern.trigger });
  const { asTold, sincePowerOnMin } = watch.conditions;
  if (onlyWith !== null && asTold !== true)
    return message(asTold === null ? 'contentNotSaid' : 'otherContentPlayed');
  if (pattern.kind !== 'warm' || watch.mode === 'trigger') return null;
  if (sincePowerOnMin === null) return message('timeOnNotSaid');
  return minutesCounted(record, watch) > 0 ? null : message('notWarmYet', { after: warmFromMin(record) });
}

/** Of watches, those that say something of whether the fault is there. */
export const counted = (record: TriageRecord, watches: readonly Watch[]): Watch[] =>
  watches.filter((watch) => whyNotCounted(record, watch) === null);
