import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evidencePath, safeStem } from '../../../src/features/evidence-record/index.ts';

describe('names that every system takes', () => {
  const whatever = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 200 }),
    fc.constantFrom(
      '../../etc/passwd',
      'C:\\x',
      'con',
      'CON.txt',
      'aux',
      '.',
      '..',
      '~',
      '-rf',
      'a\0b',
      'ﬁ°é.JPG',
      '',
    ),
  );

  test('nothing but ASCII letters, digits, dash and underscore; short; never a device of Windows', () => {
    fc.assert(
      fc.property(whatever, (name) => {
        const stem = safeStem(name);
        expect(stem).toMatch(/^[A-Za-z0-9_-]{0,61}$/);
        expect(stem).not.toMatch(/^(con|prn|aux|nul|com[0-9]|lpt[0-9])$/i);
      }),
    );
  });

  test('an evidence path stays in its folder, whatever it was called', () => {
    fc.assert(
      fc.property(whatever, fc.integer({ min: 1, max: 100_000 }), (fileName, number) => {
        const path = evidencePath(
          { kind: 'log', fileName, description: '', mediaType: 'text/plain; charset=utf-8' },
          number,
        );
        expect(path).toMatch(/^evidence\/\d{3,}-log(-[A-Za-z0-9_-]+)?\.txt$/);
      }),
    );
  });

  test('the extension is that of the content', () => {
    const photo = {
      kind: 'photo',
      fileName: 'Schöne Aussicht.exe',
      description: '',
      mediaType: 'image/jpeg',
    };
    expect(evidencePath(photo, 7)).toBe('evidence/007-photo-Schone-Aussicht.jpg');
    expect(
      evidencePath({ ...photo, fileName: null, description: 'Label, 2nd try', mediaType: null }, 7),
    ).toBe('evidence/007-photo-Label-2nd-try.bin');
  });
});
