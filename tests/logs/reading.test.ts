import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chunksOf, createLogReader, kindWords, readLog } from '../../shared/logs/index.ts';
import { message } from '../../shared/message/index.ts';
import { clockOf, readText } from './read-text.ts';

const stampAt = (second: number): string =>
  new Date(Date.UTC(2026, 10, 25, 10) + second * 1000).toISOString();
const beats = (from: number, to: number, everyS: number, text = 'alive'): string => {
  let log = '';
  for (let second = from; second <= to; second += everyS) log += `${stampAt(second)} ${text}\n`;
  return log;
};

describe('gaps in a log', () => {
  it('are silences longer than its rhythm explains', () => {
    const reading = readText(beats(0, 1000, 10) + beats(1500, 2000, 10));
    expect(reading.span).toEqual({ from: stampAt(0), to: stampAt(2000) });
    expect(reading.gaps).toEqual([
      {
        from: stampAt(1000),
        to: stampAt(1500),
        lengthS: 500,
        afterLine: 101,
        beforeLine: 102,
        endsInRestart: false,
      },
    ]);
    expect(reading.gapThresholdS).toBe(60);
  });

  it('are no gaps where the log is always that quiet', () => {
    const reading = readText(beats(0, 40_000, 400));
    expect(reading.gaps).toEqual([]);
    expect(reading.gapThresholdS).toBeGreaterThan(2000);
  });

  it('say when a restart ended them', () => {
    const reading = readText(`${beats(0, 600, 10)}${stampAt(900)} cold boot\n${beats(901, 1500, 10)}`);
    expect(reading.gaps.map(({ lengthS, endsInRestart }) => [lengthS, endsInRestart])).toEqual([[300, true]]);
  });

  it('are none where another part of the file has lines', () => {
    const kernel = beats(0, 2000, 10).replaceAll(/^.* /gm, '');
    const seconds = kernel
      .split('\n')
      .map((line, index) => (line === '' ? '' : `[${index * 10}.000000] ${line}\n`));
    const reading = readText(beats(0, 500, 10) + beats(1500, 2000, 10) + seconds.join(''), {
      bootedAt: stampAt(0),
    });
    expect(reading.gaps).toEqual([]);
  });

  it('keep to bounded memory and stay true in a log of nothing but silences', () => {
    let log = '';
    for (let hour = 0; hour < 20_000; hour += 1) log += `${stampAt(hour * 3600)} alive\n`;
    const reading = readText(`${log}${stampAt(20_050 * 3600)} alive\n`);
    expect(reading.gaps.map(({ lengthS }) => lengthS)).toEqual([51 * 3600]);
  });

  it('come out the same in a log without years', () => {
    const dated = beats(0, 600, 10) + beats(2000, 2600, 10);
    const yearless = dated.replaceAll(/^2026-11-25T(\d\d:\d\d:\d\d).\d+Z/gm, 'Nov 25 $1');
    const reference = { takenAt: '2026-11-25T12:00:00Z' };
    expect(readText(yearless, reference).gaps).toEqual(readText(dated, reference).gaps);
    expect(readText(yearless, reference).gaps).toHaveLength(1);
  });
});

describe('a clock that was set', () => {
  it('is told, and what was written around it stays covered', () => {
    const reading = readText(beats(0, 600, 10) + beats(-3000, -2400, 10) + beats(610, 700, 10));
    expect(reading.clockSteps.map(({ line, byS }) => [line, byS])).toEqual([[62, -3600]]);
    expect(reading.span).toEqual({ from: stampAt(-3000), to: stampAt(700) });
    expect(reading.notes).toContainEqual(message('clockWasSet', { times: 1 }));
  });

  it('far ahead is no gap of years in the rhythm of the log', () => {
    const reading = readText(`2015-01-01T00:00:05Z booting\n2015-01-01T00:00:07Z x\n${beats(0, 60, 10)}`);
    expect(reading.clockSteps).toEqual([
      { line: 3, from: '2015-01-01T00:00:07.000Z', to: stampAt(0), byS: expect.any(Number) },
    ]);
    expect(reading.gapThresholdS).toBe(60);
  });

  it('back and forth without end stays bounded', () => {
    let log = '';
    for (let turn = 0; turn < 12_000; turn += 1) log += `${stampAt(turn % 2 === 0 ? 0 : 7200)} alive\n`;
    const reading = readText(log);
    expect(reading.clockSteps.length).toBe(100);
    expect(reading.notes).toContainEqual(message('clockWasSet', { times: 5999 }));
    expect(reading.span).toEqual({ from: stampAt(0), to: stampAt(7200) });
  });
});

describe('events beyond the cap', () => {
  it('are counted, and the reading says from when on', () => {
    const reading = readText(
      beats(0, 100, 10, 'sync lost') + beats(200, 300, 50, 'EDID read'),
      {},
      { maxEventsPerKind: 4 },
    );
    expect(reading.eventCounts).toEqual({ syncLost: 11, edidRead: 3 });
    expect(reading.events.map(({ kind }) => kind)).toEqual([
      ...Array(4).fill('syncLost'),
      ...Array(3).fill('edidRead'),
    ]);
    expect(reading.notKept).toEqual({ syncLost: { count: 7, from: stampAt(40) } });
    expect(reading.notes).toEqual([message('eventsCountedOnly', { events: 7, kind: kindWords('syncLost') })]);
  });

  it('have excerpts of bounded length, whatever stands in the line', () => {
    const { events } = readText(`sync lost ${'🎬'.repeat(5000)}\nsync lost ${'x'.repeat(100_000)}`);
    expect(events.map(({ excerpt }) => excerpt.length <= 300 && excerpt.endsWith('…'))).toEqual([true, true]);
    expect(events.every(({ excerpt }) => excerpt.isWellFormed())).toBe(true);
  });
});

async function* pieces(bytes: Uint8Array, size: number): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

describe('a packed log', () => {
  const log = new TextEncoder().encode(beats(0, 20_000, 1, 'sync lost'));
  const packed = new Uint8Array(gzipSync(log));

  it('is unpacked, told by its first bytes, and reads as the plain one', async () => {
    const plain = await readLog(pieces(log, 1000));
    expect(plain.eventCounts).toEqual({ syncLost: 20_001 });
    expect(await readLog(pieces(packed, 13))).toEqual(plain);
    expect(await readLog(pieces(packed, 100_000))).toEqual(plain);
  });

  it('of several members, as rotated logs are joined, reads as one', async () => {
    const both = new Uint8Array(Buffer.concat([packed, gzipSync(log)]));
    expect((await readLog(pieces(both, 500))).lines).toBe(2 * 20_001);
  });

  it('that is cut off or damaged is read up to there, and says so', async () => {
    const cutOff = await readLog(pieces(packed.subarray(0, packed.length >> 1), 512));
    expect(cutOff.cutShort).toBe('damaged');
    expect(cutOff.lines).toBeGreaterThan(1000);
    expect(cutOff.notes).toContainEqual(message('logDamaged'));
    const noise = await readLog(pieces(Uint8Array.of(0x1f, 0x8b, 1, 2, 3, 4, 5), 3));
    expect([noise.cutShort, noise.lines]).toEqual(['damaged', 0]);
  });

  it('that unpacks without end stops at the limit', async () => {
    const bomb = new Uint8Array(gzipSync(new Uint8Array(20_000_000)));
    const reading = await readLog(pieces(bomb, 4096), { maxBytes: 1_000_000 });
    expect([reading.cutShort, reading.bytes]).toEqual(['tooLarge', 1_000_000]);
  });

  it('passes on what goes wrong in the stream itself, and closes the stream it leaves early', async () => {
    let closed = 0;
    async function* failing(chunk: Uint8Array): AsyncGenerator<Uint8Array> {
      try {
        yield chunk;
        throw new Error('connection lost');
      } finally {
        closed += 1;
      }
    }
    await expect(readLog(failing(log))).rejects.toThrow('connection lost');
    await expect(readLog(failing(packed.subarray(0, 300)))).rejects.toThrow('connection lost');
    async function* endless(): AsyncGenerator<Uint8Array> {
      try {
        for (;;) yield log;
      } finally {
        closed += 1;
      }
    }
    expect((await readLog(endless(), { maxBytes: 3_000_000 })).bytes).toBe(3_000_000);
    expect(closed).toBe(3);
  });

  it('may come as a web stream', async () => {
    const stream = new ReadableStream<Uint8Array>({
      start(controller) {
        controller.enqueue(packed);
        controller.close();
      },
    });
    expect((await readLog(chunksOf(stream))).lines).toBe(20_001);
  });
});

const clock = clockOf({
  takenAt: '2026-11-25T12:00:00Z',
  zone: 'Europe/Oslo',
  bootedAt: '2026-11-25T08:00:00Z',
});
const fragments = [
  '<34>1 2026-11-25T10:00:00Z h a - - - ',
  '<13>Nov 25 10:00:01 h ',
  'Feb 29 10:00:01 ',
  '2026-11-25 10:00',
  ':02,5 +0100 ',
  '{"time":"2026-11-25T10:00:03Z","msg":"',
  '{"ts":1795600800',
  '"}',
  '[   12.345678] ',
  '[    0.1] ',
  '[Wed Nov 25 10:00:04 2026] ',
  '6,17,12345678,-;',
  'sync lost',
  'hot plug',
  ' low ',
  'firmware version 4.',
  '\u001b[31m',
  '\u0000',
  '🎬é',
  '\r\n',
  '\n',
  '\n',
];
const anyLog = fc.oneof(
  fc.uint8Array({ maxLength: 400 }),
  fc
    .array(fc.constantFrom(...fragments), { maxLength: 60 })
    .map((parts) => new TextEncoder().encode(parts.join(''))),
);

describe('any bytes at all', () => {
  it('are read without a throw, every line accounted for', () => {
    fc.assert(
      fc.property(anyLog, (bytes) => {
        const reader = createLogReader({ clock });
        reader.push(bytes);
        const reading = reader.finish();
        const stamped = Object.values(reading.formats).reduce((sum, count) => sum + count, 0);
        expect(stamped + reading.unparsed).toBeLessThanOrEqual(reading.lines);
        expect(reading.bytes).toBe(bytes.length);
        expect(JSON.parse(JSON.stringify(reading))).toEqual(reading);
      }),
      { numRuns: 1000 },
    );
  });

  it('give the same reading however they are cut into pieces', () => {
    let withEvents = 0;
    fc.assert(
      fc.property(anyLog, fc.array(fc.nat(400), { maxLength: 15 }), (bytes, cuts) => {
        const whole = createLogReader({ clock, maxLineBytes: 120 });
        whole.push(bytes);
        const inPieces = createLogReader({ clock, maxLineBytes: 120 });
        let from = 0;
        for (const to of [...cuts.filter((cut) => cut < bytes.length), bytes.length].sort((a, b) => a - b)) {
          // A buffer used again by the caller for the next piece must do no harm.
          const piece = bytes.slice(from, to);
          inPieces.push(piece);
          piece.fill(0x2e);
          from = to;
        }
        const reading = whole.finish();
        if (reading.events.length > 0) withEvents += 1;
        expect(inPieces.finish()).toEqual(reading);
      }),
      { numRuns: 1000 },
    );
    expect(withEvents).toBeGreaterThan(100);
  });

  it('are read through the stream without a throw too', async () => {
    await fc.assert(
      fc.asyncProperty(anyLog, fc.boolean(), async (bytes, packedToo) => {
        const head = packedToo ? new Uint8Array(Buffer.concat([Uint8Array.of(0x1f, 0x8b), bytes])) : bytes;
        const reading = await readLog(pieces(head, 50), { clock });
        expect(reading.lines).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 200 },
    );
  });
});
