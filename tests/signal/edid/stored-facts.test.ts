import { expect, test } from 'vitest';
import { message } from '../../../shared/message/index.ts';
import { decodeEdid, edidFactsAsToday, summarise } from '../../../shared/signal/edid/index.ts';

test('facts of an EDID that were kept as sentences are shown as they were written', () => {
  const kept = {
    edidHex: '00',
    edid: {
      blockCount: 1,
      problems: [{ severity: 'error', block: 0, offset: 1, text: 'The header is damaged.' }],
    },
    notes: ['3 bytes before the header are skipped.'],
  };
  expect(edidFactsAsToday(kept)).toEqual({
    edidHex: '00',
    edid: {
      blockCount: 1,
      problems: [
        {
          severity: 'error',
          block: 0,
          offset: 1,
          text: message('asWritten', { sentence: 'The header is damaged.' }),
        },
      ],
    },
    notes: [message('asWritten', { sentence: '3 bytes before the header are skipped.' })],
  });
});

test('today’s facts stay as they are, and so do those of no EDID', () => {
  const today = {
    edidHex: '',
    edid: summarise(decodeEdid(new Uint8Array())),
    notes: [message('edid/lowByteFirst')],
  };
  expect(today.edid.problems).toHaveLength(1);
  expect(edidFactsAsToday(today)).toEqual(today);
  expect(edidFactsAsToday({ width: 640 })).toEqual({ width: 640 });
});
