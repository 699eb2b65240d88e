import { expect, it } from 'vitest';
import { erasedText } from '../../shared/contract/erased-text.ts';
import { german } from '../../shared/message/de/index.ts';
import { english } from '../../shared/message/en/index.ts';
import { messageParts } from '../../shared/message/index.ts';

const erasure = { at: '2026-11-29T10:00:00.125Z', by: '6c1bfd4e-54a9-4bd5-8c53-90ff3b0a2f11' };

it.each([english, german])(
  'an erased text is told in words of $tag, and never passes for what a person wrote',
  (language) => {
    const values = { sentence: erasedText(erasure) };
    const parts = messageParts({ code: 'asWritten', values }, language, 'UTC');
    expect(parts).toEqual([{ by: 'program', text: expect.stringContaining('29') }]);
    expect(parts[0]?.text).not.toContain('\uFFFC');
  },
);
