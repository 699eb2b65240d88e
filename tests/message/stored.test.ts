import { describe, expect, it } from 'vitest';
import { message, storedMessage } from '../../shared/message/index.ts';
import { frozenRows, readFrozenDatabase } from '../frozen/frozen-1.ts';

describe('a stored message', () => {
  it('is read as it is, and as it was written where version 1 stored a sentence', () => {
    const today = message('firstDescription');
    expect(storedMessage(today)).toBe(today);
    const written = frozenRows(readFrozenDatabase(), 'chain_version').flatMap(
      ({ changes }) => changes as string[],
    );
    expect(written.length).toBeGreaterThan(10);
    for (const sentence of written)
      expect(storedMessage(sentence)).toEqual(message('asWritten', { sentence }));
  });
});
