import type { LanguageTag } from '../../../shared/contract/language-names.ts';
import type { TimelineEntry } from '../../../shared/contract/ticket.ts';
import { inWords, wordsOf } from './summary/tongue.ts';
import { valueWordsOf } from './summary/value-words.ts';

/** The timeline as comma-separated values (RFC 4180), for a spreadsheet. Times are UTC, ISO 8601. */
export function timelineCsv(entries: readonly TimelineEntry[], language: LanguageTag): string {
  const kinds = valueWordsOf({ language }).timelineKinds;
  return [
    wordsOf({ language }).timeline.heads,
    ...entries.map(({ at, kind, actorName, text }) => [
      at,
      kinds[kind],
      actorName,
      inWords({ language }, text),
    ]),
  ]
    .map((row) => `${row.map(cell).join(',')}\r\n`)
    .join('');
}

/** A cell that begins like a formula gets an apostrophe first, so that no spreadsheet runs what somebody typed. */
function cell(value: string): string {
  const plain = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
