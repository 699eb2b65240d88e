import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileClock } from '../../shared/logs/index.ts';
import { message } from '../../shared/message/index.ts';
import { readText, timesOf } from './read-text.ts';

const lost = (...stamps: string[]): string => stamps.map((stamp) => `${stamp} rx1: sync lost\n`).join('');

describe('stamps without a zone', () => {
  it('are taken as UTC, and a note says so', () => {
    const reading = readText(lost('2026-07-01 12:00:00'));
    expect(timesOf(reading)).toEqual(['2026-07-01T12:00:00.000Z']);
    expect(reading.clock).toEqual({ zone: 'assumed', skewS: null });
    expect(reading.notes.map(({ code }) => code)).toContain('linesWithoutZone');
  });

  it('are read in the zone given, summer time and all', () => {
    const reading = readText(lost('2026-07-01 12:00:00', '2026-12-01 12:00:00'), { zone: 'Europe/Oslo' });
    expect(timesOf(reading)).toEqual(['2026-07-01T10:00:00.000Z', '2026-12-01T11:00:00.000Z']);
    expect(reading.notes.map(({ code }) => code)).not.toContain('linesWithoutZone');
  });

  it('are told apart in the hour that clocks go through twice, by their order', () => {
    const stamps = ['02:15:00', '02:45:00', '02:10:00', '02:50:00', '03:05:00'].map(
      (clock) => `2026-10-25 ${clock}`,
    );
    expect(timesOf(readText(lost(...stamps), { zone: 'Europe/Oslo' }))).toEqual([
      '2026-10-25T00:15:00.000Z',
      '2026-10-25T00:45:00.000Z',
      '2026-10-25T01:10:00.000Z',
      '2026-10-25T01:50:00.000Z',
      '2026-10-25T02:05:00.000Z',
    ]);
  });

  it('keep their own zone where they name one', () => {
    expect(timesOf(readText(lost('2026-07-01T12:00:00+09:00'), { zone: 'Europe/Oslo' }))).toEqual([
      '2026-07-01T03:00:00.000Z',
    ]);
  });

  it('agree with the date library of the platform at every moment of a year in several zones', () => {
    const zones = ['Europe/Oslo', 'America/New_York', 'Australia/Lord_Howe', 'Asia/Kathmandu', 'UTC'];
    fc.assert(
      fc.property(fc.constantFrom(...zones), fc.integer({ min: 0, max: 365 * 24 * 60 }), (zone, minute) => {
        const moment = new Date(Date.UTC(2026, 0, 1) + minute * 60_000);
        const timeZone = zone;
        const parts = new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short', timeStyle: 'medium' });
        const told = parts.format(moment);
        const read = Date.parse(timesOf(readText(lost(told), { zone }))[0] ?? '');
        // An hour that comes twice can't be told from one line alone.
        expect([told, parts.format(new Date(read))]).toEqual([told, told]);
      }),
      { numRuns: 300 },
    );
  });
});

describe('several moments that are known', () => {
  const knownMoments = [
    { logTime: '2026-11-25T20:00:00Z', trueTime: '2026-11-25T20:00:34Z' },
    { logTime: '2026-11-25T08:00:00Z', trueTime: '2026-11-25T08:00:10Z' },
  ];
  const read = (...stamps: string[]) => timesOf(readText(lost(...stamps), { knownMoments }));

  it('put what lies between them where a clock that drifts evenly puts it', () => {
    expect(read('2026-11-25T08:00:00Z', '2026-11-25T14:00:00Z', '2026-11-25T20:00:00Z')).toEqual([
      '2026-11-25T08:00:10.000Z',
      '2026-11-25T14:00:22.000Z',
      '2026-11-25T20:00:34.000Z',
    ]);
  });

  it('let it drift on beyond them by what clocks drift, and no more', () => {
    const [before, after] = read('2026-11-25T05:13:20Z', '2026-11-25T22:46:40Z');
    expect(before).toBe('2026-11-25T05:13:29.000Z');
    expect(after).toBe('2026-11-25T22:47:15.000Z');
  });

  it('keep the order of lines, whatever was read off within a second', () => {
    const drifts = fc.record({
      offS: fc.integer({ min: -3600, max: 3600 }),
      driftPpm: fc.integer({ min: -900, max: 900 }),
      atMin: fc.array(fc.integer({ min: 1, max: 2000 }), { minLength: 2, maxLength: 6 }),
    });
    fc.assert(
      fc.property(drifts, ({ offS, driftPpm, atMin }) => {
        const from = Date.UTC(2026, 10, 25);
        const iso = (ms: number) => new Date(Math.round(ms)).toISOString();
        const trueOf = (min: number) => from + min * 60_000 * (1 + driftPpm / 1e6) + offS * 1000;
        const moments = atMin.map((min) => ({
          logTime: iso(from + min * 60_000),
          trueTime: iso(trueOf(min)),
        }));
        const stamps = atMin.toSorted((a, b) => a - b).map((min) => iso(from + min * 60_000));
        const told = timesOf(readText(lost(...stamps), { knownMoments: moments })).map((at) =>
          Date.parse(at ?? ''),
        );
        expect(told).toEqual(told.toSorted((a, b) => a - b));
        for (const [at, min] of atMin.toSorted((a, b) => a - b).entries())
          expect(Math.abs((told[at] ?? 0) - trueOf(min))).toBeLessThan(2);
      }),
      { numRuns: 100 },
    );
  });
});

describe('a moment that is known', () => {
  it('sets a wrong clock right, also where stamps name a zone', () => {
    const reading = readText(lost('2026-11-25T09:00:00Z', '2026-11-25T09:05:00Z'), {
      knownMoments: [{ logTime: '2026-11-25T09:00:00Z', trueTime: '2026-11-25T14:32:10+01:00' }],
    });
    expect(timesOf(reading)).toEqual(['2026-11-25T13:32:10.000Z', '2026-11-25T13:37:10.000Z']);
    expect(reading.clock.skewS).toBe(4 * 3600 + 32 * 60 + 10);
  });

  it('stands in for the zone, and then leaves stamps that name one alone', () => {
    const reading = readText(lost('2026-11-25 09:00:00', '2026-11-25T09:00:00Z'), {
      knownMoments: [{ logTime: '2026-11-25 09:00:00 anything', trueTime: '2026-11-25T08:00:30Z' }],
    });
    expect(timesOf(reading)).toEqual(['2026-11-25T08:00:30.000Z', '2026-11-25T09:00:00.000Z']);
  });

  it('corrects within the zone given, summer time and all', () => {
    const reading = readText(lost('2026-11-25 12:00:00', '2026-07-01 12:00:00'), {
      zone: 'Europe/Oslo',
      knownMoments: [{ logTime: '2026-11-25 12:00:00', trueTime: '2026-11-25T11:00:20Z' }],
    });
    expect(timesOf(reading)).toEqual(['2026-11-25T11:00:20.000Z', '2026-07-01T10:00:20.000Z']);
  });

  it('gives stamps without a year theirs', () => {
    const reading = readText(lost('Dec 31 23:59:50', 'Jan  1 00:00:10'), {
      knownMoments: [{ logTime: 'Jan  1 00:00:00', trueTime: '2027-01-01T00:00:02Z' }],
    });
    expect(timesOf(reading)).toEqual(['2026-12-31T23:59:52.000Z', '2027-01-01T00:00:12.000Z']);
  });
});

describe('stamps without a year', () => {
  it('have no date while nothing is known', () => {
    const reading = readText(lost('Nov 25 10:00:00'));
    expect(timesOf(reading)).toEqual([null]);
    expect(reading.span).toBeNull();
    expect(reading.notes.map(({ code }) => code)).toContain('linesWithoutYear');
  });

  it('end at the latest when the log was taken', () => {
    expect(timesOf(readText(lost('Nov 25 10:00:00'), { takenAt: '2026-11-25T12:00:00Z' }))).toEqual([
      '2026-11-25T10:00:00.000Z',
    ]);
    expect(timesOf(readText(lost('Nov 27 10:00:00'), { takenAt: '2026-11-25T12:00:00Z' }))).toEqual([
      '2025-11-27T10:00:00.000Z',
    ]);
  });

  it('go on over new year, more than once', () => {
    const stamps = [
      'Mar  1 00:00:00',
      'Nov 25 10:00:00',
      'Jan  2 10:00:00',
      'Dec 24 10:00:00',
      'Jan  3 10:00:00',
    ];
    expect(timesOf(readText(lost(...stamps), { takenAt: '2026-11-25T12:00:00Z' }))).toEqual([
      '2024-03-01T00:00:00.000Z',
      '2024-11-25T10:00:00.000Z',
      '2025-01-02T10:00:00.000Z',
      '2025-12-24T10:00:00.000Z',
      '2026-01-03T10:00:00.000Z',
    ]);
  });

  it('allow a line of the old year that comes late', () => {
    const stamps = ['Dec 31 23:59:58', 'Jan  1 00:00:01', 'Dec 31 23:59:59', 'Jan  1 00:00:02'];
    expect(timesOf(readText(lost(...stamps), { takenAt: '2026-11-25T12:00:00Z' }))).toEqual([
      '2025-12-31T23:59:58.000Z',
      '2026-01-01T00:00:01.000Z',
      '2025-12-31T23:59:59.000Z',
      '2026-01-01T00:00:02.000Z',
    ]);
  });

  it('aren’t put a year off by a clock that starts at 1 January until it is set', () => {
    const stamps = ['Nov 25 09:00:00', 'Jan  1 00:00:04', 'Jan  1 00:00:09', 'Nov 25 10:00:00'];
    expect(timesOf(readText(lost(...stamps), { takenAt: '2026-11-25T12:00:00Z' }))).toEqual([
      '2026-11-25T09:00:00.000Z',
      null,
      null,
      '2026-11-25T10:00:00.000Z',
    ]);
  });

  it('fall in a leap year where they tell of 29 February', () => {
    expect(
      timesOf(readText(lost('Feb 29 10:00:00', 'Mar  1 10:00:00'), { takenAt: '2026-11-25T12:00:00Z' })),
    ).toEqual(['2024-02-29T10:00:00.000Z', '2024-03-01T10:00:00.000Z']);
  });
});

describe('seconds since boot', () => {
  const log = lost('[   10.0]', '[   70.5]');

  it('have no time while nothing is known', () => {
    const reading = readText(log);
    expect(timesOf(reading)).toEqual([null, null]);
    expect(reading.notes.map(({ code }) => code)).toContain('linesSinceStartOnly');
  });

  it('count from the start of the device, or from a moment that is known', () => {
    const expected = ['2026-11-25T10:00:10.000Z', '2026-11-25T10:01:10.500Z'];
    expect(timesOf(readText(log, { bootedAt: '2026-11-25T11:00:00+01:00' }))).toEqual(expected);
    expect(
      timesOf(
        readText(log, { knownMoments: [{ logTime: '[   70.5] x', trueTime: '2026-11-25T10:01:10.5Z' }] }),
      ),
    ).toEqual(expected);
  });

  it('starting over is a restart, and only the last start is tied to a time', () => {
    const reading = readText(`${log}${lost('[    0.2]', '[   30.0]')}`, { bootedAt: '2026-11-25T10:00:00Z' });
    expect(reading.boots).toBe(2);
    expect(reading.events.map(({ kind, time, line }) => [kind, time, line])).toEqual([
      ['syncLost', null, 1],
      ['syncLost', null, 2],
      ['restart', '2026-11-25T10:00:00.200Z', 3],
      ['syncLost', '2026-11-25T10:00:00.200Z', 3],
      ['syncLost', '2026-11-25T10:00:30.000Z', 4],
    ]);
    expect(reading.notes).toContainEqual(message('deviceStartedAnew', { starts: 2 }));
  });

  it('out of order by a little are no restart', () => {
    expect(readText(lost('[   10.0]', '[    9.8]', '[   10.1]')).boots).toBe(1);
  });
});

describe('a clock that was never set', () => {
  it('gives no times, and a note', () => {
    const reading = readText(
      `${lost('1970-01-01 00:00:20')}continued: sync lost\n${lost('2026-11-25 10:00:00')}`,
    );
    expect(timesOf(reading)).toEqual([null, null, '2026-11-25T10:00:00.000Z']);
    expect(reading.span?.from).toBe('2026-11-25T10:00:00.000Z');
    expect(reading.notes.map(({ code }) => code)).toContain('linesOfUnsetClock');
  });
});

describe('a clock reference that can’t be', () => {
  it.each([
    [{ zone: 'Nowhere/Atlantis' }, 'zoneUnknown'],
    [{ zone: 'local' }, 'zoneUnknown'],
    [{ zone: '' }, 'zoneUnknown'],
    [{ takenAt: 'yesterday' }, 'logTakenAtUnreadable'],
    [{ takenAt: '2026-11-25T10:00:00' }, 'logTakenAtUnreadable'],
    [{ bootedAt: '' }, 'deviceStartUnreadable'],
    [{ knownMoments: [{ logTime: 'noon', trueTime: '2026-11-25T10:00:00Z' }] }, 'noTimeInLine'],
    [
      { knownMoments: [{ logTime: '2026-11-25T10:00:00Z', trueTime: '2026-11-25 10:00' }] },
      'knownMomentUnreadable',
    ],
    [
      {
        bootedAt: '2026-11-25T10:00:00Z',
        knownMoments: [{ logTime: '[ 1.0]', trueTime: '2026-11-25T10:00:00Z' }],
      },
      'twoMomentsSinceStart',
    ],
    [
      {
        knownMoments: [
          { logTime: '2026-11-25T10:00:00Z', trueTime: '2026-11-25T10:00:01Z' },
          { logTime: 'Nov 25 10:00:00', trueTime: '2026-11-25T10:00:12Z' },
        ],
      },
      'twoMomentsOfClock',
    ],
  ])('is refused: %j', (reference, why) => {
    const result = compileClock(reference);
    expect(result).toMatchObject({ ok: false, why: { code: why } });
  });
});
