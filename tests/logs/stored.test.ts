import { describe, expect, it } from 'vitest';
import { logFinding } from '../../shared/contract/log-findings.ts';
import { logFindingAsToday, readingAsToday } from '../../shared/logs/index.ts';
import { message } from '../../shared/message/index.ts';
import { frozenRows, readFrozenDatabase } from '../frozen/frozen-1.ts';

type Found = Parameters<typeof logFindingAsToday>[0];
type Read = Parameters<typeof readingAsToday>[0];

const database = readFrozenDatabase();
const found = frozenRows(database, 'packet').flatMap(
  ({ case_file: file }) => (file as { logs?: Found[] }).logs ?? [],
);
const read = frozenRows(database, 'evidence').flatMap(({ facts }) => {
  const { log } = (facts ?? {}) as { log?: Read };
  return log === undefined ? [] : [log];
});
const written = (sentence: unknown) => message('asWritten', { sentence: sentence as string });

describe('what version 1 stored of a log', () => {
  it('is found to say today what it said then', () => {
    expect(found.length).toBeGreaterThan(0);
    for (const old of found) {
      const today = logFindingAsToday(old);
      expect(logFinding.parse(today)).toEqual(today);
      expect(today.coverage.sentence).toEqual(written(old.coverage.sentence));
      expect(today.notes).toEqual(old.notes.map(written));
      expect(today.events.map(({ words }) => words)).toEqual(old.events.map(({ words }) => written(words)));
      expect(logFindingAsToday(today)).toEqual(today);
    }
  });

  it('is read with its notes as they were written', () => {
    expect(read.length).toBeGreaterThan(0);
    for (const old of read) expect(readingAsToday(old).notes).toEqual(old.notes.map(written));
  });
});
