import type { TimelineEntry } from '../../../shared/contract/ticket.ts';
import { inEnglish } from './summary/parts.ts';

/** The timeline as comma-separated values (RFC 4180), for a spreadsheet. Times are UTC, ISO 8601. */
export const timelineCsv = (entries: readonly TimelineEntry[]): string =>
  [
    ['at', 'kind', 'who', 'what'],
    ...entries.map(({ at, kind, actorName, text }) => [at, kind, actorName, inEnglish(text)]),
  ]
    .map((row) => `${row.map(cell).join(',')}\r\n`)
    .join('');

/** A cell that begins like a formula gets an apostrophe first, so that no spreadsheet runs what somebody typed. */
function cell(value: string): string {
  const plain = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
