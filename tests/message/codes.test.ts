import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { codes } from '../../shared/message/codes/index.ts';
import { english } from '../../shared/message/en/index.ts';
import { messageText } from '../../shared/message/index.ts';

/** Every code that a release has had, with the kinds of its values. Events hold codes: none is renamed or removed. */
const held = JSON.parse(readFileSync(new URL('./held-codes.json', import.meta.url), 'utf8')) as typeof codes;

describe('codes of messages', () => {
  it('are in one table each', async () => {
    const files = readdirSync(new URL('../../shared/message/codes', import.meta.url));
    const tables = await Promise.all(
      files
        .filter((file) => file !== 'index.ts')
        .map(async (file) => Object.values(await import(`../../shared/message/codes/${file}`))),
    );
    const all = tables.flat().flatMap((table) => Object.keys(table as object));
    expect(all.toSorted()).toEqual(Object.keys(codes).toSorted());
  });

  it('that were ever held are still there, with the same values', () => {
    expect(codes).toMatchObject(held);
    for (const code of Object.keys(held))
      expect(Object.keys(codes[code as keyof typeof codes])).toEqual(
        Object.keys(held[code as keyof typeof held]),
      );
  });

  it('are all in the list of those held (npm run messages:hold adds what is new)', () => {
    expect(Object.keys(codes).filter((code) => !Object.hasOwn(held, code))).toEqual([]);
  });

  it('of a later version are said to be just that', () => {
    const unknown = messageText({ code: 'aCodeOfTomorrow', values: {} }, english, 'UTC');
    expect(unknown).toBe(messageText({ code: 'unknownMessage', values: {} }, english, 'UTC'));
  });
});
