import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createLogReader, type LogReading, readLogFile, readStamp } from '../../shared/logs/index.ts';
import { clockOf, readText, timesOf } from './read-text.ts';

const utc = (text: string): number => Date.parse(text);

async function* inOne(text: string): AsyncIterable<Uint8Array> {
  yield new TextEncoder().encode(text);
}
const readFile = (lines: readonly string[], reference = {}): Promise<LogReading> =>
  readLogFile(() => inOne(lines.join('\n')), { clock: clockOf(reference) });

describe('the stamp of a line', () => {
  it.each([
    ['25.11.2026 10:00:00 m', 'local'],
    ['25.11.26 10:00:00 m', 'local'],
    ['25/11/2026 10:00:00 m', 'local'],
    ['11/25/2026 10:00:00 AM m', 'local'],
    ['25-11-2026 10:00:00.000 m', 'local'],
    ['[25/Nov/2026:11:00:00 +0100] m', 'utc'],
    ['25 Nov 2026 10:00:00 m', 'local'],
    ['25. November 2026 10:00:00 m', 'local'],
    ['25-Nov-26 10:00:00 m', 'local'],
    ['1795600800 m', 'utc'],
    ['1795600800.000 m', 'utc'],
    ['1795600800000 m', 'utc'],
    ['[1795600800.000] m', 'utc'],
  ])('in other orders and counts: %s', (line, base) => {
    expect(readStamp(line)).toMatchObject({ base, ms: utc('2026-11-25T10:00:00Z') });
  });

  it.each([
    ['3. März 2026 10:00 m', '2026-03-03T10:00:00Z'],
    ['3 Mrz 2026 10:00:00 m', '2026-03-03T10:00:00Z'],
    ['3. Mai 2026 10:00:00 m', '2026-05-03T10:00:00Z'],
    ['3 Okt 2026 10:00:00 m', '2026-10-03T10:00:00Z'],
    ['Dez  3 2026 10:00:00 m', '2026-12-03T10:00:00Z'],
    ['03.12.2026 12:30:00 am m', '2026-12-03T00:30:00Z'],
    ['03.12.2026 12:30:00 pm m', '2026-12-03T12:30:00Z'],
  ])('with months in German, and half days: %s', (line, expected) => {
    expect(readStamp(line)?.ms).toBe(utc(expected));
  });

  it.each([
    '32.11.2026 10:00:00 m',
    '31/31/2026 10:00:00 m',
    '29.02.2026 10:00:00 m',
    '25:61:00 m',
    '12:30 m',
    '1234 m',
    '192.168.1.10 m',
    '3/4 done',
  ])('is none in %j', (line) => {
    expect(readStamp(line)).toBeNull();
  });

  it('ends where its message begins, behind an umlaut too', () => {
    expect(readText('3. März 2026 10:00:00 rx1: sync lost').events).toMatchObject([{ kind: 'syncLost' }]);
  });

  it('tells every day in every order alike', () => {
    const two = (value: number) => String(value).padStart(2, '0');
    fc.assert(
      fc.property(
        fc.date({ min: new Date('2000-01-01'), max: new Date('2098-12-31'), noInvalidDate: true }),
        fc.constantFrom('.', '/', '-'),
        (date, mark) => {
          const ms = Math.floor(date.getTime() / 1000) * 1000;
          const [year, month, day] = [date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate()];
          const clock = new Date(ms).toISOString().slice(11, 19);
          expect(readStamp(`${two(day)}${mark}${two(month)}${mark}${year} ${clock} m`)?.ms ?? 0).toBe(
            mark === '.' || day > 12 || month > 12 || day === month
              ? ms
              : Date.UTC(year, month - 1, day) + (ms % 86_400_000),
          );
          if (day > 12) expect(readStamp(`${month}/${day}/${year} ${clock} m`)?.ms).toBe(ms);
        },
      ),
    );
  });
});

describe('the order of day and month', () => {
  const loss = 'rx1: sync lost';

  it('is told by any date that has one reading, wherever in the file', async () => {
    const reading = await readFile([`03/04/2026 10:00:00 ${loss}`, `03/14/2026 10:00:00 ${loss}`], {
      zone: 'UTC',
    });
    expect(timesOf(reading)).toEqual(['2026-03-04T10:00:00.000Z', '2026-03-14T10:00:00.000Z']);
    expect(reading.dayOrder?.told).toBe('monthFirst');
  });

  it('is told by going past midnight', async () => {
    const days = await readFile([`03/04/2026 23:59:59 ${loss}`, `04/04/2026 00:00:01 ${loss}`], {
      zone: 'UTC',
    });
    const months = await readFile([`03/04/2026 23:59:59 ${loss}`, `03/05/2026 00:00:01 ${loss}`], {
      zone: 'UTC',
    });
    expect(timesOf(days)[1]).toBe('2026-04-04T00:00:01.000Z');
    expect(timesOf(months)).toEqual(['2026-03-04T23:59:59.000Z', '2026-03-05T00:00:01.000Z']);
  });

  it('is asked of a person where it isn’t told, and nothing is guessed meanwhile', async () => {
    const lines = [`03/04/2026 10:00:00 ${loss}`, `03/04/2026 10:00:05 ${loss}`];
    const asking = await readFile(lines, { zone: 'UTC' });
    expect(timesOf(asking)).toEqual([null, null]);
    expect(asking.notes.map(({ code }) => code)).toContain('dayOrderUnknown');
    for (const [dayOrder, day] of [
      ['dayFirst', '2026-04-03'],
      ['monthFirst', '2026-03-04'],
    ]) {
      const answered = await readFile(lines, { zone: 'UTC', dayOrder });
      expect(timesOf(answered)[0]).toBe(`${day}T10:00:00.000Z`);
      expect(answered.notes.map(({ code }) => code)).not.toContain('dayOrderUnknown');
    }
  });
});

describe('times without a date', () => {
  it('are of the day on which the log was taken, and of those before it', () => {
    const text = ['22:00:00 rx1: sync lost', '23:59:59 rx1: sync found', '00:00:03.5 rx1: sync lost'].join(
      '\n',
    );
    expect(timesOf(readText(text, { zone: 'UTC', takenAt: '2026-11-25T08:00:00Z' }))).toEqual([
      '2026-11-24T22:00:00.000Z',
      '2026-11-24T23:59:59.000Z',
      '2026-11-25T00:00:03.500Z',
    ]);
  });

  it('have no time where nobody says when the log was taken', () => {
    const reading = readText('22:00:00 rx1: sync lost');
    expect(timesOf(reading)).toEqual([null]);
    expect(reading.notes.map(({ code }) => code)).toContain('linesWithoutDate');
  });

  it('can be set right by a moment that is known', () => {
    const moment = { logTime: '22:00:00', trueTime: '2026-11-24T22:00:40Z' };
    expect(timesOf(readText('22:00:00 rx1: sync lost', { zone: 'UTC', knownMoments: [moment] }))).toEqual([
      '2026-11-24T22:00:40.000Z',
    ]);
  });
});

describe('a line that says that the one before came again', () => {
  const after = (line: string) => {
    const reader = createLogReader();
    reader.push(`2026-11-25T10:00:00Z rx1: sync lost\n2026-11-25T10:00:09Z ${line}\n`);
    return reader.finish();
  };

  it('counts it so many times, and shows it once at the end', () => {
    const reading = after('last message repeated 3 times');
    expect(reading.eventCounts).toEqual({ syncLost: 4 });
    expect(reading.events.map(({ kind, time }) => [kind, time])).toEqual([
      ['syncLost', '2026-11-25T10:00:00.000Z'],
      ['syncLost', '2026-11-25T10:00:09.000Z'],
    ]);
  });

  it('says nothing where that was no event', () => {
    const reading = readText(
      '2026-11-25T10:00:00Z fan ok\n2026-11-25T10:00:09Z last message repeated 3 times',
    );
    expect(reading.events).toEqual([]);
  });
});
