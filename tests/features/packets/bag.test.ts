import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { english } from '../../../shared/message/en/index.ts';
import { message, messageText } from '../../../shared/message/index.ts';
import { bagInfo, manifest, payloadOxum } from '../../../src/features/packets/bag.ts';
import { timelineCsv } from '../../../src/features/packets/timeline-csv.ts';

const file = (path: string, sizeBytes = 1) => ({ path, sha256: 'a'.repeat(64), sizeBytes });

describe('manifests', () => {
  test('a line a file, sorted, with the two spaces that sha256sum reads', () => {
    expect(manifest([file('data/b'), file('data/a')])).toBe(
      `${'a'.repeat(64)}  data/a\n${'a'.repeat(64)}  data/b\n`,
    );
  });

  test('CR, LF and % are percent-encoded, and nothing else is (RFC 8493, section 2.1.3)', () => {
    expect(manifest([file('data/50%\r\n ü.txt')])).toBe(`${'a'.repeat(64)}  data/50%25%0D%0A ü.txt\n`);
  });

  test('any path comes back out of its line, and no path makes a second line', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', minLength: 1 }), (path) => {
        const line = manifest([file(path)]);
        expect(line.match(/\n/g)).toHaveLength(1);
        const encoded = line.slice(66, -1);
        const decoded = encoded.replaceAll('%0A', '\n').replaceAll('%0D', '\r').replaceAll('%25', '%');
        expect(decoded).toBe(path);
      }),
    );
  });

  test('octets and streams of the payload', () => {
    expect(payloadOxum([file('data/a', 10), file('data/b', 4_000_000_000)])).toBe('4000000010.2');
    expect(payloadOxum([])).toBe('0.0');
  });
});

describe('bag-info.txt', () => {
  test('lines of 79 at most; what goes on is indented', () => {
    const text = bagInfo([['External-Description', 'word '.repeat(40)]]);
    for (const line of text.trimEnd().split('\n')) expect(line.length).toBeLessThanOrEqual(79);
    expect(
      text
        .split('\n')
        .slice(1, -1)
        .every((line) => line.startsWith('  ')),
    ).toBe(true);
    expect(text.replaceAll(/\n\s+/g, ' ')).toBe(`External-Description: ${'word '.repeat(40).trim()}\n`);
  });

  test('a value with line breaks makes no element of its own', () => {
    const text = bagInfo([['External-Description', 'one\nPayload-Oxum: 0.0\r\ntwo']]);
    expect(text).toBe('External-Description: one Payload-Oxum: 0.0 two\n');
  });
});

test('the timeline as CSV: quoted where needed, and nothing that a spreadsheet would run', () => {
  const entry = (actorName: string) => ({
    at: '2026-11-20T10:00:00.000Z',
    kind: 'event' as const,
    actorName,
    text: message('log/ticketOpened'),
    ref: {},
  });
  const opened = messageText(message('log/ticketOpened'), english, 'UTC');
  expect(timelineCsv([entry('Robin "one", two'), entry('=1+1'), entry('two\nlines')], 'en')).toBe(
    'at,kind,who,what\r\n' +
      `2026-11-20T10:00:00.000Z,event,"Robin ""one"", two",${opened}\r\n` +
      `2026-11-20T10:00:00.000Z,event,'=1+1,${opened}\r\n` +
      `2026-11-20T10:00:00.000Z,event,"two\nlines",${opened}\r\n`,
  );
});
