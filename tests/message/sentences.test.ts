import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Message } from '../../shared/contract/message.ts';
import { codes } from '../../shared/message/codes/index.ts';
import { german } from '../../shared/message/de/index.ts';
import { english } from '../../shared/message/en/index.ts';
import { messageParts } from '../../shared/message/index.ts';
import { anyMessage } from './any-values.ts';

const zone = 'Europe/Berlin';
const everyCode = Object.keys(codes) as (keyof typeof codes)[];
const valuesOf = (code: string): [string, string][] =>
  Object.entries(codes[code as keyof typeof codes] as Record<string, string>);

/** A message with each thing that people wrote in it put through `change`: texts, and names inside places. */
function withWritten({ code, values }: Message, change: (written: string) => string): Message {
  const changed = (value: unknown, kind: string): unknown => {
    if (value === null || value === undefined) return value;
    if (Array.isArray(value)) return value.map((one) => changed(one, kind));
    if (kind === 'text' || kind === 'name') return change(value as string);
    if (kind === 'setting') return typeof value === 'string' ? change(value) : value;
    if (kind === 'message') return withWritten(value as Message, change);
    return ['place', 'device', 'port'].includes(kind) ? withNames(value as object, change) : value;
  };
  const entries = valuesOf(code).map(([name, type]) => [
    name,
    changed(values[name], type.replace(/(\[\]|\?)$/, '')),
  ]);
  return { code, values: Object.fromEntries(entries) };
}

const namesKept = new Set(['name', 'label', 'deviceId', 'portId', 'linkId']);
const withNames = (named: object, change: (written: string) => string): object =>
  Object.fromEntries(
    Object.entries(named).map(([key, value]) => {
      if (value !== null && typeof value === 'object') return [key, withNames(value, change)];
      return [key, namesKept.has(key) ? change(value) : value];
    }),
  );

function writtenIn(message: Message): string[] {
  const written: string[] = [];
  withWritten(message, (one) => {
    written.push(one);
    return one;
  });
  return written;
}

describe.each([english, german])('a sentence in $tag', (language) => {
  const partsOf = (message: Message) => messageParts(message, language, zone);
  const ours = (message: Message): string =>
    partsOf(message)
      .map(({ by, text }) => (by === 'program' ? text : '∎'))
      .join('')
      // An id is told of what shares its name with another.
      .replaceAll(/ \([a-z]+\)/g, '');

  it.each(everyCode)(
    '%s shows what people wrote as it was accepted, and takes none of it for its own',
    (code) => {
      fc.assert(
        fc.property(anyMessage(code), (message) => {
          const theirs = partsOf(message).flatMap(({ by, text }) => (by === 'program' ? [] : [text]));
          const written = writtenIn(message);
          for (const text of theirs) expect(written).toContain(text);
          for (const [name, type] of valuesOf(code))
            if (type === 'text') expect(theirs).toContain(message.values[name]);
          expect(ours(message)).not.toMatch(/undefined|\[object|NaN/);
          const other = withWritten(message, () => 'x');
          expect(ours(other)).toBe(ours(message));
        }),
        { numRuns: 40 },
      );
    },
  );
});
