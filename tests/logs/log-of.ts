import type { LogReading } from '../../shared/logs/index.ts';
import { readText } from './read-text.ts';

/** 25 November 2026, 10:00 UTC, and so many seconds after. */
export function at(second: number): string {
  return new Date(Date.UTC(2026, 10, 25, 10) + Math.round(second * 1000)).toISOString();
}

/** What is said at which second; `alive` lines every 10 s up to `lengthS` keep the log without gaps, but for `silent`. */
export function logOf(
  said: readonly (readonly [second: number, message: string])[],
  lengthS = 3600,
  silent: readonly [from: number, to: number] = [0, 0],
): LogReading {
  const lines: [number, string][] = said.map(([second, message]) => [second, message]);
  for (let second = 0; second <= lengthS; second += 10) {
    if (second <= silent[0] || second >= silent[1]) lines.push([second, 'alive']);
  }
  lines.sort((a, b) => a[0] - b[0]);
  return readText(lines.map(([second, message]) => `${at(second)} ${message}`).join('\n'));
}
