import { describe, expect, it } from 'vitest';
import { findingAsToday } from '../../shared/audit/stored-finding.ts';
import { finding } from '../../shared/contract/chain.ts';
import { message } from '../../shared/message/index.ts';
import { frozenRows, readFrozenDatabase } from '../frozen/frozen-1.ts';

type Stored = Parameters<typeof findingAsToday>[0];
type Prerequisites = { prerequisites: { findings: Stored[] } };

const stored = frozenRows(readFrozenDatabase(), 'packet').flatMap(
  ({ case_file: file }) => (file as Prerequisites).prerequisites.findings,
);

describe('a finding that version 1 stored', () => {
  it('is read as today’s, with each sentence as it was written', () => {
    expect(stored.length).toBeGreaterThan(40);
    for (const old of stored) {
      const today = findingAsToday(old);
      expect(finding.parse(today)).toEqual(today);
      expect(today.text).toEqual(message('asWritten', { sentence: old.text as string }));
      const care = 'caution' in old && old.caution !== null ? [old.caution] : [];
      expect(today.cautions).toEqual(care.map((sentence) => message('asWritten', { sentence })));
      expect(findingAsToday(today)).toBe(today);
    }
  });
});
