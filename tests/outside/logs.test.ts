import { execFileSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type ClockReference,
  compileClock,
  compileRecognition,
  createLogReader,
  type LogReading,
  precursors,
  readStamp,
} from '../../shared/logs/index.ts';
import { seededRandom, xoshiro128 } from '../../shared/logs/seeded-random.ts';

const utcOf = (line: string): string | null => {
  const stamp = readStamp(line);
  return stamp?.base === 'utc' ? new Date(stamp.ms).toISOString() : null;
};

const exampleWords = [
  'su root',
  'do nuts',
  'event log entry',
  'examplepriority 32473',
  'bfg',
  'folks',
  'host bridge',
];
const withExamples = compileRecognition([
  {
    kind: 'example',
    all: [[...exampleWords, 'protocol family', 'starting version']],
    example: 'BFG',
    note: '',
  },
]);

/** Reads a log with one more row, which finds the words of the examples below. */
function read(text: string, reference: ClockReference = {}): LogReading {
  const clock = compileClock(reference);
  if (!clock.ok || !withExamples.ok) throw new Error('The test’s own clock or row is refused.');
  const reader = createLogReader({ clock: clock.clock, recognition: withExamples.recognition });
  reader.push(text);
  return reader.finish();
}

describe('RFC 5424', () => {
  // Section 6.2.3.1, examples 1 to 4; the same moments in UTC.
  it.each([
    ['1985-04-12T23:20:50.52Z', '1985-04-12T23:20:50.520Z'],
    ['1985-04-12T19:20:50.52-04:00', '1985-04-12T23:20:50.520Z'],
    ['2003-10-11T22:14:15.003Z', '2003-10-11T22:14:15.003Z'],
    ['2003-08-24T05:14:15.000003-07:00', '2003-08-24T12:14:15.000Z'],
  ])('time stamp %s', (stamp, utc) => {
    expect(utcOf(`<165>1 ${stamp} 192.0.2.1 myproc 8710 - - m`)).toBe(utc);
    expect(readStamp(`<165>1 ${stamp} 192.0.2.1 myproc 8710 - - m`)?.format).toBe('rfc5424');
  });

  // Example 5 of the same section has nanoseconds, which a sender must not write. Read, it is still that moment.
  it('time stamp with more digits than allowed', () => {
    expect(readStamp('<165>1 2003-08-24T05:14:15.000000003-07:00 h a - - - m')?.ms).toBeCloseTo(
      1_061_727_255_000,
      3,
    );
  });

  // Section 6.2.3: a sender that can't tell the time writes the NILVALUE.
  it('no time stamp', () => {
    expect(readStamp('<34>1 - mymachine.example.com su - ID47 - m')).toBeNull();
  });

  // Section 6.5, examples 1 to 4.
  it('messages', () => {
    const structured = '[exampleSDID@32473 iut="3" eventSource="Application" eventID="1011"]';
    const reading = read(
      [
        "<34>1 2003-10-11T22:14:15.003Z mymachine.example.com su - ID47 - \uFEFF'su root' failed for lonvick on /dev/pts/8",
        "<165>1 2003-08-24T05:14:15.000003-07:00 192.0.2.1 myproc 8710 - - %% It's time to make the do-nuts.",
        `<165>1 2003-10-11T22:14:15.003Z mymachine.example.com evntslog - ID47 ${structured} \uFEFFAn application event log entry...`,
        `<165>1 2003-10-11T22:14:15.003Z mymachine.example.com evntslog - ID47 ${structured}[examplePriority@32473 class="high"]`,
      ].join('\n'),
    );
    expect([reading.formats.rfc5424, reading.unparsed]).toEqual([4, 0]);
    expect(reading.events.map(({ kind, time }) => [kind, time])).toEqual([
      ['example', '2003-10-11T22:14:15.003Z'],
      ['example', '2003-08-24T12:14:15.000Z'],
      ['example', '2003-10-11T22:14:15.003Z'],
      ['example', '2003-10-11T22:14:15.003Z'],
    ]);
  });
});

describe('RFC 3164, section 5.4', () => {
  // The RFC is of August 2001, which gives its examples their year; it gives them no zone.
  const reference = { takenAt: '2001-08-31T00:00:00Z', zone: 'UTC' };
  it.each([
    [
      "<34>Oct 11 22:14:15 mymachine su: 'su root' failed for lonvick on /dev/pts/8",
      '2000-10-11T22:14:15.000Z',
    ],
    ['<13>Feb  5 17:32:18 10.0.0.99 Use the BFG!', '2001-02-05T17:32:18.000Z'],
    [
      "<165>Aug 24 05:34:00 CST 1987 mymachine myproc[10]: %% It's time to make the do-nuts.  %%  Ingredients: Mix=OK, Jelly=OK # Devices: Mixer=OK, Jelly_Injector=OK, Frier=OK # Transport: Conveyer1=OK, Conveyer2=OK # %%",
      '2001-08-24T05:34:00.000Z',
    ],
    [
      "<0>Oct 22 10:52:12 scapegoat 1990 Oct 22 10:52:01 TZ-6 scapegoat.dmz.example.org 10.1.2.3 sched[0]: That's All Folks!",
      '2000-10-22T10:52:12.000Z',
    ],
  ])('%s', (line, utc) => {
    const reading = read(line, reference);
    expect(reading.formats.rfc3164).toBe(1);
    expect(reading.events.map(({ time }) => time)).toEqual([utc]);
  });

  // Example 4 as it was sent: by the RFC it has no valid time stamp, so that a relay has to add one.
  it('a message without a valid time stamp', () => {
    const reading = read(
      "<0>1990 Oct 22 10:52:01 TZ-6 scapegoat.dmz.example.org 10.1.2.3 sched[0]: That's All Folks!",
      reference,
    );
    expect([reading.unparsed, reading.events[0]?.time]).toEqual([1, null]);
  });
});

describe('RFC 3339, section 5.8', () => {
  it.each([
    ['1985-04-12T23:20:50.52Z', '1985-04-12T23:20:50.520Z'],
    ['1996-12-19T16:39:57-08:00', '1996-12-20T00:39:57.000Z'],
    // A leap second, counted as the second after it, as POSIX does.
    ['1990-12-31T23:59:60Z', '1991-01-01T00:00:00.000Z'],
    ['1990-12-31T15:59:60-08:00', '1991-01-01T00:00:00.000Z'],
    ['1937-01-01T12:00:27.87+00:20', '1937-01-01T11:40:27.870Z'],
  ])('%s', (stamp, utc) => {
    expect(utcOf(`${stamp} message`)).toBe(utc);
  });
});

// The Linux kernel's Documentation/ABI/testing/dev-kmsg, its example of three records.
describe('the kernel’s record form', () => {
  it('gives the microseconds since boot', () => {
    const reading = read(
      [
        '7,160,424069,-;pci_root PNP0A03:00: host bridge window [io  0x0000-0x0cf7] (ignored)',
        ' SUBSYSTEM=acpi',
        ' DEVICE=+acpi:PNP0A03:00',
        '6,339,5140900,-;NET: Registered protocol family 10',
        '30,340,5690716,-;udevd[80]: starting version 181',
      ].join('\n'),
      { bootedAt: '2026-11-25T10:00:00Z' },
    );
    expect([reading.formats.kernel, reading.unparsed]).toEqual([3, 2]);
    expect(reading.events.filter(({ kind }) => kind === 'example').map(({ time }) => time)).toEqual([
      '2026-11-25T10:00:00.424Z',
      '2026-11-25T10:00:05.140Z',
      '2026-11-25T10:00:05.690Z',
    ]);
  });
});

// GNU coreutils' date and the system's time zone database, as a second reader of the same stamps.
describe('GNU date', () => {
  const datesOf = (lines: readonly string[]): number[] =>
    execFileSync('date', ['-u', '-f', '-', '+%s.%3N'], { input: lines.join('\n'), encoding: 'utf8' })
      .trim()
      .split('\n')
      .map((seconds) => Math.round(Number(seconds) * 1000));
  const moments = fc.sample(
    fc.date({ min: new Date('1991-01-01'), max: new Date('2037-01-01'), noInvalidDate: true }),
    { numRuns: 300, seed: 5424 },
  );
  const month = (date: Date): string => date.toUTCString().slice(8, 11);
  const forms: Record<string, (date: Date) => string> = {
    'ISO with an offset': (date) => date.toISOString().replace('Z', '+05:45'),
    'ISO with a comma': (date) => date.toISOString().replace('.', ','),
    'month, day, year': (date) =>
      `${month(date)} ${date.getUTCDate()} ${date.getUTCFullYear()} ${date.toISOString().slice(11, 19)}`,
    asctime: (date) =>
      `${date.toUTCString().slice(0, 3)} ${month(date)} ${String(date.getUTCDate()).padStart(2)} ${date.toISOString().slice(11, 19)} ${date.getUTCFullYear()}`,
  };

  it.each(Object.keys(forms))('reads the same moments in the form %s', (form) => {
    const lines = moments.map((date) => forms[form]?.(date) ?? '');
    expect(lines.map((line) => readStamp(line)?.ms)).toEqual(datesOf(lines));
  });

  it.each(['Europe/Oslo', 'America/New_York', 'Australia/Sydney', 'Asia/Kathmandu'])(
    'puts local times of %s at the same moments',
    (zone) => {
      const told = moments.map((date) => date.toISOString().slice(0, 19).replace('T', ' '));
      const expected = datesOf(told.map((local) => `TZ="${zone}" ${local}`));
      const ours = told.map((local) => read(`${local} BFG`, { zone }).events[0]?.time ?? '');
      expect(ours.map((time) => Date.parse(time))).toEqual(expected);
    },
  );
});

// Blackman and Vigna's reference code xoshiro128starstar.c 1.1, its output from the state 1, 2, 3, 4.
it('the random numbers are those of the reference code', () => {
  const next = xoshiro128([1, 2, 3, 4]);
  expect(Array.from({ length: 8 }, next)).toEqual([
    11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849,
  ]);
});

describe('the permutation test, against exact enumeration', () => {
  const windowS = 30;
  const blockS = 600;
  const blocks = 12;
  const startMs = Date.UTC(2026, 10, 25);
  const isoAt = (second: number): string => new Date(startMs + second * 1000).toISOString();

  /** Whether each second of the log lies within the window after one of the moments, which are whole seconds. */
  function shadowOf(moments: readonly number[]): boolean[] {
    const shadow = new Array<boolean>(blocks * blockS).fill(false);
    for (const moment of moments) shadow.fill(true, moment, Math.min(shadow.length, moment + windowS));
    return shadow;
  }

  /** Chance that at least `observed` of the occurrences are preceded: the sum over all 2^n ways they can be. */
  function exactP(chances: readonly number[], observed: number): number {
    let total = 0;
    for (let way = 0; way < 2 ** chances.length; way += 1) {
      const preceded = chances.map((_, index) => ((way >> index) & 1) === 1);
      if (preceded.filter(Boolean).length < observed) continue;
      total += chances.reduce(
        (product, chance, index) => product * (preceded[index] ? chance : 1 - chance),
        1,
      );
    }
    return total;
  }

  it('gives the exact p-value within its sampling error', () => {
    const permutations = 20_000;
    let compared = 0;
    for (const seed of [1, 2, 3, 4, 5, 6]) {
      const random = seededRandom(seed);
      const draw = (below: number): number => Math.floor(random() * below);
      const events = Array.from({ length: 20 * seed }, () => 1 + draw(blocks * blockS - 2));
      const isEvent = new Set(events);
      const occurrences = Array.from({ length: blocks }, (_, block) => {
        const near = events.find((event) => event > block * blockS && event < (block + 1) * blockS - 10);
        let second = near !== undefined && draw(3) === 0 ? near + 5 : block * blockS + 1 + draw(blockS - 2);
        while (isEvent.has(second)) second += 1;
        return second;
      });
      const stamped = events.map((second): [number, string] => [second, 'BFG']);
      for (let second = 0; second <= blocks * blockS; second += 10) stamped.push([second, 'alive']);
      stamped.sort((a, b) => a[0] - b[0]);
      const reading = read(stamped.map(([second, message]) => `${isoAt(second)} ${message}`).join('\n'));
      const { kinds } = precursors(
        reading,
        occurrences.map((second) => ({ at: isoAt(second) })),
        { windowS, blockS, settleS: 0, permutations, seed },
      );

      const shadow = shadowOf(events);
      const beyond = shadowOf(occurrences);
      const chances = Array.from({ length: blocks }, (_, block) => {
        const free = shadow
          .slice(block * blockS, (block + 1) * blockS)
          .filter((_, index) => !beyond[block * blockS + index]);
        return free.filter(Boolean).length / free.length;
      });
      const preceded = occurrences.filter((second) => shadow[second - 1]).length;
      const exact = exactP(chances, preceded);
      const deviation = Math.sqrt((exact * (1 - exact)) / permutations);
      expect(kinds[0]?.preceded).toBe(preceded);
      expect(Math.abs((kinds[0]?.pValue ?? 2) - exact)).toBeLessThan(4.5 * deviation + 1 / permutations);
      expect(kinds[0]?.expected).toBeCloseTo(
        chances.reduce((sum, chance) => sum + chance, 0),
        1,
      );
      compared += 1;
    }
    expect(compared).toBe(6);
  });
});
