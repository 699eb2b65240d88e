import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readStamp } from '../../shared/logs/index.ts';
import { readText, timesOf } from './read-text.ts';

const utc = (text: string): number => Date.parse(text);

describe('the stamp of a line', () => {
  it.each([
    ['2026-11-25T10:00:00.250+01:00 message', '2026-11-25T09:00:00.250Z'],
    ['2026-11-25T10:00:00,250Z message', '2026-11-25T10:00:00.250Z'],
    ['2026-11-25 10:00:00 +0100 message', '2026-11-25T09:00:00Z'],
    ['2026-11-25 10:00:00 UTC message', '2026-11-25T10:00:00Z'],
    ['[2026-11-25T10:00:00Z] message', '2026-11-25T10:00:00Z'],
    ['INFO [main] 2026-11-25T10:00:00Z message', '2026-11-25T10:00:00Z'],
    ['<13>2026-11-25T10:00:00-05 message', '2026-11-25T15:00:00Z'],
    ['20261125T100000Z message', '2026-11-25T10:00:00Z'],
  ])('in ISO form with a zone: %s', (line, expected) => {
    expect(readStamp(line)).toEqual({ format: 'iso', base: 'utc', ms: utc(expected) });
  });

  it.each([
    ['2026/11/25 10:00:00.5 message', '2026-11-25T10:00:00.500Z'],
    ['2026-11-25 10:00 message', '2026-11-25T10:00:00Z'],
    ['2026-11-25T10:00', '2026-11-25T10:00:00Z'],
    ['2026-11-25 10:00:00 -5 dB message', '2026-11-25T10:00:00Z'],
  ])('in ISO form without a zone: %s', (line, expected) => {
    expect(readStamp(line)).toEqual({ format: 'iso', base: 'local', ms: utc(expected) });
  });

  it('in the form of RFC 3164, the day padded with a space, a zero or nothing', () => {
    const fifth = {
      format: 'rfc3164',
      base: 'yearless',
      ms: utc('2000-02-05T17:32:18Z') - utc('2000-01-01T00:00:00Z'),
    };
    for (const day of [' 5', '05', '5']) expect(readStamp(`Feb ${day} 17:32:18 host message`)).toEqual(fifth);
  });

  it('with month and day and a year, or a fraction of a second', () => {
    expect(readStamp('Nov 25 2026 10:00:00.125: message')).toEqual({
      format: 'rfc3164',
      base: 'local',
      ms: utc('2026-11-25T10:00:00.125Z'),
    });
  });

  it('in the form of asctime, in brackets or not', () => {
    const expected = { format: 'ctime', base: 'local', ms: utc('2026-11-25T10:00:00Z') };
    expect(readStamp('[Wed Nov 25 10:00:00 2026] message')).toEqual(expected);
    expect(readStamp('Wed Nov 25 10:00:00 2026 message')).toEqual(expected);
  });

  it('in seconds since boot, with a priority before or not', () => {
    const expected = { format: 'kernel', base: 'boot', ms: 12_345.678 };
    for (const line of [
      '[   12.345678] m',
      '<6>[   12.345678] m',
      '6,17,12345678,-;m',
      '6,17,12345678,c,caller=T1;m',
    ])
      expect(readStamp(line)).toEqual(expected);
  });

  it.each([
    '{"time":"2026-11-25T10:00:00Z","msg":"m"}',
    '{"level":30,"ts":1795600800,"msg":"m"}',
    '{"level":30,"time":1795600800000,"msg":"m"}',
    '{"@timestamp":"2026-11-25T11:00:00+01:00"}',
    '{"nested":{"a":[1]},"t":1795600800000000}',
    '{"note":"a \\" quote","timestamp":"1795600800"}',
    '{ "date" : "2026-11-25T10:00:00Z" }',
    '{"time":"soon","ts":1795600800000000000}',
  ])('under the usual keys of a JSON line: %s', (line) => {
    expect(readStamp(line)).toEqual({ format: 'json', base: 'utc', ms: utc('2026-11-25T10:00:00Z') });
  });

  it.each([
    '',
    'no time here',
    '2026-13-25T10:00:00Z',
    '2026-02-29T10:00:00Z',
    '2026-11-25T24:00:00Z',
    '2026-11-25T10:60:00Z',
    'Feb 30 10:00:00 host m',
    'Foo 25 10:00:00 host m',
    '[Wed Nov 31 10:00:00 2026] m',
    '[12] m',
    '<34>1 - host app - - - m',
    '{"time":12.5}',
    '{"time":true}',
    '{"time":',
    '{}',
    '[]',
    '<>',
    '<1',
  ])('is none in %j', (line) => {
    expect(readStamp(line)).toBeNull();
  });

  it('reads back every moment that ISO 8601 can write, with every offset', () => {
    fc.assert(
      fc.property(
        fc.date({ min: new Date('1001-01-01'), max: new Date('9998-12-31'), noInvalidDate: true }),
        fc.integer({ min: -18 * 60, max: 18 * 60 }),
        (moment, offsetMin) => {
          const local = new Date(moment.getTime() + offsetMin * 60_000).toISOString().slice(0, -1);
          const [hours, minutes] = [Math.floor(Math.abs(offsetMin) / 60), Math.abs(offsetMin) % 60];
          const offset = `${offsetMin < 0 ? '-' : '+'}${String(hours).padStart(2, '0')}:${String(minutes).padStart(2, '0')}`;
          expect(readStamp(`${local}${offset} m`)?.ms).toBe(moment.getTime());
        },
      ),
    );
  });
});

describe('a file of mixed forms', () => {
  const mixed = [
    '<34>1 2026-11-25T10:00:00Z host app - - - rx1: sync lost',
    '<34>Nov 25 10:00:01 host app: rx1: sync lost',
    '2026-11-25 10:00:02 rx1: sync lost',
    '{"time":"2026-11-25T10:00:03Z","msg":"rx1: sync lost"}',
    '[Wed Nov 25 10:00:04 2026] rx1: sync lost',
    '[    5.000000] rx1: sync lost',
    '    at rx1: sync lost',
  ];

  it('is read line by line, and counted by form', () => {
    const reading = readText(mixed.join('\n'), {
      takenAt: '2026-11-25T12:00:00Z',
      bootedAt: '2026-11-25T10:00:00Z',
    });
    expect(reading.formats).toMatchObject({ rfc5424: 1, rfc3164: 1, iso: 1, json: 1, ctime: 1, kernel: 1 });
    expect([reading.lines, reading.unparsed]).toEqual([7, 1]);
    expect(timesOf(reading)).toEqual(
      [0, 1, 2, 3, 4, 5, 5].map((second) => `2026-11-25T10:00:0${second}.000Z`),
    );
    expect(reading.events.map(({ timeFrom }) => timeFrom)).toEqual([...Array(6).fill('line'), 'lineBefore']);
  });

  it('tolerates colours, NULs left by a power cut, tabs and carriage returns', () => {
    const reading = readText(
      '\u0000\u0000\u001b[32m2026-11-25T10:00:00Z\u001b[0m rx1:\tsync lost\u0007\r\n\r\n \t\r\n\u001b[0m\nand so on',
    );
    expect(timesOf(reading)).toEqual(['2026-11-25T10:00:00.000Z']);
    expect(reading.events[0]?.excerpt).toBe('2026-11-25T10:00:00Z rx1: sync lost');
    expect(reading.unparsed).toBe(1);
  });
});
