import { type Message, message } from '../message/index.ts';
import { coveredTime } from './covered-time.ts';
import type { LogEvent, LogReading } from './reading.ts';
import { isLoggedOf } from './same-occurrence.ts';
import { firstAtOrAfter } from './sorted.ts';

/** Whether the log has lines around the moment of one occurrence. */
export type OccurrenceCoverage = {
  /** As it was given. */
  at: string;
  /** `inGap`: the log is silent for longer than its rhythm explains; `outside`: before its start or after its end. */
  status: 'covered' | 'inGap' | 'outside' | 'noTimes';
  /** The event nearest to it, within the time allowed; null where the log shows nothing. */
  shows: LogEvent | null;
};

export type LogCoverage = {
  occurrences: OccurrenceCoverage[];
  covered: number;
  /** Every occurrence is covered; false with none given. */
  complete: boolean;
  sentence: Message;
};

/**
 * Tells which of the occurrences that a case claims lie in the time that a log covers, and whether the log shows
 * something there.
 */
export function coverage(reading: LogReading, occurrences: readonly { at: string }[]): LogCoverage {
  const stretches = coveredTime(reading);
  const events = reading.events
    .filter((event) => event.time !== null)
    .map((event) => ({ event, ms: Date.parse(event.time ?? '') }))
    .sort((a, b) => a.ms - b.ms);
  const times = events.map(({ ms }) => ms);
  const nearest = (at: string): LogEvent | null => {
    const ms = Date.parse(at);
    const after = firstAtOrAfter(times, ms);
    const [best] = [events[after - 1], events[after]]
      .filter((found) => found !== undefined)
      .filter(({ event }) => isLoggedOf(at, event.time ?? ''))
      .sort((a, b) => Math.abs(a.ms - ms) - Math.abs(b.ms - ms));
    return best?.event ?? null;
  };
  const judged = occurrences.map(({ at }): OccurrenceCoverage => {
    const ms = Date.parse(at);
    const status = statusOf(ms, stretches);
    return { at, status, shows: status === 'covered' ? nearest(at) : null };
  });
  const covered = judged.filter(({ status }) => status === 'covered').length;
  const shown = judged.filter(({ shows }) => shows !== null).length;
  return {
    occurrences: judged,
    covered,
    complete: judged.length > 0 && covered === judged.length,
    sentence: sentenceOn(judged, covered, shown),
  };
}

function statusOf(ms: number, stretches: ReturnType<typeof coveredTime>): OccurrenceCoverage['status'] {
  const first = stretches[0];
  const last = stretches.at(-1);
  if (first === undefined || last === undefined) return 'noTimes';
  if (!(ms >= first.fromMs && ms <= last.toMs)) return 'outside';
  return stretches.some(({ fromMs, toMs }) => ms >= fromMs && ms <= toMs) ? 'covered' : 'inGap';
}

function sentenceOn(judged: readonly OccurrenceCoverage[], covered: number, shown: number): Message {
  if (judged.length === 0) return message('nothingToCompareLogWith');
  if (judged.some(({ status }) => status === 'noTimes')) return message('noLineHasTime');
  const inGap = judged.filter(({ status }) => status === 'inGap').length;
  const outside = judged.length - covered - inGap;
  return message('logCoversOccurrences', { covered, of: judged.length, shown, inGap, outside });
}
