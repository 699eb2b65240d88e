import { describe, expect, it } from 'vitest';
import { coverage } from '../../shared/logs/index.ts';
import { message } from '../../shared/message/index.ts';
import { at, logOf } from './log-of.ts';
import { readText } from './read-text.ts';

const claimed = (...seconds: number[]) => seconds.map((second) => ({ at: at(second) }));

describe('whether a log covers occurrences', () => {
  const reading = logOf([[700, 'rx1: sync lost']], 3600, [1200, 1800]);

  it('tells for each, and what the log shows there', () => {
    const judged = coverage(reading, claimed(704, 1000, 1500, 4000, -5));
    expect(judged.occurrences.map(({ status, shows }) => [status, shows?.kind ?? null])).toEqual([
      ['covered', 'syncLost'],
      ['covered', null],
      ['inGap', null],
      ['outside', null],
      ['outside', null],
    ]);
    expect([judged.covered, judged.complete]).toEqual([2, false]);
    const values = { covered: 2, of: 5, shown: 1, inGap: 1, outside: 2 };
    expect(judged.sentence).toEqual(message('logCoversOccurrences', values));
  });

  it('is complete when all are, and never with none', () => {
    expect(coverage(reading, claimed(704, 1000)).complete).toBe(true);
    expect(coverage(reading, []).complete).toBe(false);
  });

  it('takes an event for the occurrence only nearby, and leaves a person time to say so', () => {
    const shown = (second: number) => coverage(reading, claimed(second)).occurrences[0]?.shows?.kind ?? null;
    expect([694, 696, 700, 716, 718].map(shown)).toEqual([null, 'syncLost', 'syncLost', 'syncLost', null]);
  });

  it('can’t be told for a log without times', () => {
    const judged = coverage(readText('rx1: sync lost'), claimed(704));
    expect(judged.occurrences[0]?.status).toBe('noTimes');
    expect(judged.sentence).toEqual(message('noLineHasTime'));
  });

  it('is false for a moment that can’t be read', () => {
    expect(coverage(reading, [{ at: 'soon' }]).covered).toBe(0);
  });
});
