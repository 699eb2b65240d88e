import { describe, expect, it } from 'vitest';
import { kindWords, proposeOccurrences } from '../../shared/logs/index.ts';
import { message } from '../../shared/message/index.ts';
import { at, logOf } from './log-of.ts';

const watch = { startedAt: at(600), endedAt: at(1800) };
const briefly = ({ at: moment, durationS }: { at: string; durationS: number | null }) => [moment, durationS];

describe('occurrences proposed from a log', () => {
  it('are those inside the watch, with how long they lasted and where they stand in the file', () => {
    const reading = logOf([
      [300, 'rx1: sync lost'],
      [303, 'rx1: sync found'],
      [700, 'rx1: sync lost'],
      [704.5, 'rx1: sync found'],
      [1200, 'rx1: sync lost'],
      [1202, 'rx1: sync found'],
      [1900, 'rx1: sync lost'],
    ]);
    const { proposed, coveredMin, watchMin, notes } = proposeOccurrences(reading, watch);
    expect(proposed).toEqual([
      {
        at: at(700),
        durationS: 4.5,
        kinds: ['syncLost'],
        lines: [73],
        excerpt: `${at(700)} rx1: sync lost`,
        description: message('logShows', {
          first: kindWords('syncLost'),
          excerpt: `${at(700)} rx1: sync lost`,
        }),
      },
      expect.objectContaining({ at: at(1200), durationS: 2 }),
    ]);
    expect([coveredMin, watchMin, notes]).toEqual([20, 20, []]);
  });

  it('are one where the events come in a burst, and over when the last is', () => {
    const reading = logOf([
      [700, 'tx0: hot plug detect low'],
      [700.4, 'rx1: sync lost'],
      [703, 'tx0: content protection authentication failed'],
      [704, 'tx0: hot plug detect high'],
      [706, 'rx1: sync found'],
      [711, 'tx0: content protection authenticated'],
    ]);
    const { proposed } = proposeOccurrences(reading, watch);
    expect(proposed.map(briefly)).toEqual([[at(700), 11]]);
    expect(proposed[0]?.kinds).toEqual(['hotPlugDown', 'syncLost', 'authenticationFailed']);
    expect(proposed[0]?.description).toMatchObject({
      code: 'logShowsInTurn',
      values: { first: kindWords('hotPlugDown'), next: ['syncLost', 'authenticationFailed'].map(kindWords) },
    });
  });

  it('are one while the picture stays away, however long the retries take', () => {
    const retries = [740, 780, 820].map(
      (second) => [second, 'content protection authentication failed'] as const,
    );
    const reading = logOf([
      [700, 'rx1: sync lost'],
      ...retries,
      [860, 'authentication done'],
      [861, 'sync found'],
    ]);
    expect(proposeOccurrences(reading, watch).proposed.map(briefly)).toEqual([[at(700), 161]]);
  });

  it('are apart where the log never says that anything is over, with no telling how long', () => {
    const reading = logOf([700, 705, 800].map((second) => [second, 'rx1: sync lost']));
    expect(proposeOccurrences(reading, watch).proposed.map(briefly)).toEqual([
      [at(700), null],
      [at(800), null],
    ]);
    expect(proposeOccurrences(reading, watch, { debounceS: 2 }).proposed).toHaveLength(3);
  });

  it('don’t count what began before the watch', () => {
    const reading = logOf([
      [595, 'rx1: sync lost'],
      [601, 'rx1: sync lost'],
      [605, 'rx1: sync found'],
    ]);
    expect(proposeOccurrences(reading, watch).proposed).toEqual([]);
  });

  it('may be of the kinds asked for', () => {
    const reading = logOf([
      [700, 'rx1: video format changed'],
      [900, 'rx1: sync lost'],
    ]);
    const { proposed } = proposeOccurrences(reading, watch, { faultKinds: ['formatChange'] });
    expect(proposed.map(briefly)).toEqual([[at(700), null]]);
  });

  it('go up to the log’s end while the watch is running', () => {
    const reading = logOf([[3000, 'rx1: sync lost']]);
    const running = proposeOccurrences(reading, { startedAt: at(600), endedAt: null });
    expect([running.proposed.length, running.watchMin]).toEqual([1, 50]);
  });

  it('come with what the log doesn’t cover of the watch', () => {
    const { coveredMin, notes } = proposeOccurrences(logOf([], 3600, [900, 1500]), watch);
    expect(coveredMin).toBe(10);
    expect(notes).toEqual([message('logCoversPartOfWatch', { covered: 10, watch: 20 })]);
    const elsewhere = proposeOccurrences(logOf([], 300), watch);
    expect([elsewhere.coveredMin, elsewhere.notes.length]).toEqual([0, 1]);
  });
});
