import {
  type ClockReference,
  compileClock,
  createLogReader,
  type LogClock,
  type LogOptions,
  type LogReading,
} from '../../shared/logs/index.ts';

/** A clock that must be readable, or the test fails here. */
export function clockOf(reference: ClockReference): LogClock {
  const result = compileClock(reference);
  if (!result.ok) throw new Error(result.why.code);
  return result.clock;
}

/** Reads a log given as text, all in one piece. */
export function readText(
  text: string,
  reference: ClockReference = {},
  options: Omit<LogOptions, 'clock'> = {},
): LogReading {
  const reader = createLogReader({ ...options, clock: clockOf(reference) });
  reader.push(text);
  return reader.finish();
}

/** Times of the events, in the order of the file. */
export function timesOf(reading: LogReading): (string | null)[] {
  return reading.events.map(({ time }) => time);
}
