import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scaleFor, smallestLetters, written } from '../../src/web/drawing/lettering.ts';

describe('what is written into a box', () => {
  const words = fc.array(
    fc.string({ minLength: 1, maxLength: 40 }).map((text) => ({ text })),
    { maxLength: 4 },
  );

  it('is whole or not there, within the box, and never too small to read', () => {
    fc.assert(
      fc.property(
        words,
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 1, max: 200 }),
        (given, width, height) => {
          const lines = written(given, width, height);
          const letters = (texts: readonly { text: string }[]) =>
            texts
              .map(({ text }) => text)
              .join('')
              .replaceAll(/\s/g, '');
          expect(letters(given).startsWith(letters(lines))).toBe(true);
          const count = given.findIndex((_, at) => letters(given.slice(0, at + 1)) === letters(lines)) + 1;
          expect(letters(given.slice(0, count))).toBe(letters(lines));
          for (const line of lines) {
            expect(line.size).toBeGreaterThanOrEqual(smallestLetters);
            expect(line.width).toBeLessThanOrEqual(width + 1e-6);
            expect(line.y).toBeLessThanOrEqual(height);
            expect(line.y - line.size * 0.8).toBeGreaterThanOrEqual(-1e-6);
          }
        },
      ),
    );
  });

  it('says more where there is more room', () => {
    const given = ['Cinema processor', 'Processor', 'Model 4'].map((text) => ({ text }));
    expect(written(given, 40, 20)).toEqual([]);
    expect(written(given, 100, 32).map(({ text }) => text)).toEqual(['Cinema', 'processor']);
    expect(written(given, 260, 100).map(({ text }) => text)).toEqual(given.map(({ text }) => text));
  });

  it('has room from the scale that is asked for', () => {
    const box = { width: 30, height: 16 };
    const scale = scaleFor('Splitter of the upper floor', box, 12);
    expect(
      written([{ text: 'Splitter of the upper floor' }], box.width * scale, box.height * scale),
    ).not.toEqual([]);
    expect(
      written([{ text: 'Splitter of the upper floor' }], box.width * scale * 0.9, box.height * scale * 0.9),
    ).toEqual([]);
  });
});
