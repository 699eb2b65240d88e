import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  compileRecognition,
  type Recognition,
  type RecognitionRow,
  recognitionRows,
} from '../../shared/logs/index.ts';
import { readText } from './read-text.ts';

const kindsIn = (line: string, recognition?: Recognition): string[] =>
  readText(line, {}, recognition === undefined ? {} : { recognition }).events.map(({ kind }) => kind);

function recognitionOf(rows: readonly RecognitionRow[]): Recognition {
  const result = compileRecognition(rows);
  if (!result.ok) throw new Error(result.why.code);
  return result.recognition;
}

describe('the recognition table', () => {
  it.each(recognitionRows)('finds the example of $kind: $example', ({ kind, example }) => {
    expect(kindsIn(example)).toEqual([kind]);
  });

  it.each([
    ['HPD=0', 'hotPlugDown'],
    ['Hot_Plug_Detect: LOW', 'hotPlugDown'],
    ['hpd: 1', 'hotPlugUp'],
    ['tx0 hotplug event', 'hotPlugUp'],
    ['Cannot read EDID of output 2', 'edidFailed'],
    ['no signal on input 3', 'syncLost'],
    ['video input locked, 1920x1080p60', 'syncFound'],
    ['hdcp2: AKE failed', 'authenticationFailed'],
    ['hdcp: state=authenticated', 'authenticationDone'],
    ['Link training: fallback to TMDS', 'linkRateReduced'],
    ['HDR infoframe changed', 'formatChange'],
    ['system reboot by remote', 'restartPerson'],
    ['hpd: 1->0', 'hotPlugDown'],
    ['lock regained after signal loss', 'syncFound'],
  ])('knows the usual ways to say it: %s', (line, kind) => {
    expect(kindsIn(line)).toEqual([kind]);
  });

  it.each([
    'display: brightness low',
    'slow fan',
    'sshd: authentication failure for root',
    'ntp: time sync lost',
    'audio: lip sync lost, offset 40 ms',
    'hdmi-rx1: status tmds=594.0 locked=1',
    'EDID check: no errors',
    'service restarted',
    'firmware update started',
    'firmware server at 10.0.0.7',
    'DSP version mismatch at 48 kHz',
    'log format changed',
  ])('leaves alone what only sounds like it: %s', (line) => {
    expect(kindsIn(line).filter((kind) => kind !== 'edidRead')).toEqual([]);
  });

  it.each([
    ['main board firmware version 4.12.3', '4.12.3'],
    ['panel fw v1.04 loaded', '1.04'],
    ['scaler fw v3.2.1-rc2', '3.2.1-rc2'],
    ['FPGA build 1207', '1207'],
    ['software version: 2.0.14 (release)', '2.0.14'],
    ['bootloader rev 7', '7'],
  ])('reads the version out of: %s', (line, version) => {
    expect(readText(line).firmware.map((found) => found.version)).toEqual([version]);
  });

  it('counts the same firmware string once, with how often it came', () => {
    const reading = readText(
      ['10:00', '10:01', '10:02'].map((at) => `2026-11-25 ${at} fw version 1.2`).join('\n'),
    );
    expect(reading.firmware.map(({ version, times, line }) => [version, times, line])).toEqual([
      ['1.2', 3, 1],
    ]);
    expect([reading.eventCounts.firmware, reading.events.length]).toEqual([3, 1]);
  });
});

describe('an organisation’s own rows', () => {
  const lamp: RecognitionRow = {
    kind: 'lampFault',
    all: [
      ['lamp', 'laser bank'],
      ['fault', 'failed'],
    ],
    none: ['self test'],
    example: 'Laser-Bank 2: FAULT',
    note: 'made up',
  };

  it('add kinds, and come before ours', () => {
    const ours: RecognitionRow = { ...lamp, kind: 'ownSyncLost', all: [['sync lost']], example: 'sync lost' };
    const recognition = recognitionOf([lamp, ours]);
    expect(kindsIn('laser bank 1 failed', recognition)).toEqual(['lampFault']);
    expect(kindsIn('lamp self test failed', recognition)).toEqual([]);
    expect(kindsIn('rx1: sync lost', recognition)).toEqual(['ownSyncLost']);
    expect(kindsIn('rx1: EDID read', recognition)).toEqual(['edidRead']);
  });

  it.each([
    [{ ...lamp, kind: 'Lamp fault' }, 'rowKindIsNoName'],
    [{ ...lamp, all: [] }, 'rowGroupEmpty'],
    [{ ...lamp, all: [['lamp'], []] }, 'rowGroupEmpty'],
    [{ ...lamp, all: [['…']] }, 'rowWordUnusable'],
    [{ ...lamp, all: [['x'.repeat(61)]] }, 'rowWordUnusable'],
    [{ ...lamp, all: [Array(201).fill('lamp')] }, 'rowWordsTooMany'],
    [{ ...lamp, example: 'lamp ok' }, 'rowMissesExample'],
    [{ ...lamp, example: 'lamp fault in self test' }, 'rowMissesExample'],
  ])('are refused with their number and why: %#', (row, why) => {
    const result = compileRecognition([lamp, row]);
    expect(result).toMatchObject({
      ok: false,
      why: { code: 'recognitionRowMisfit', values: { row: 2, kind: row.kind, why: { code: why } } },
    });
  });

  // The same rule said by regular expressions.
  const says = (line: string, word: string): boolean => {
    const open = word.endsWith('*');
    const parts = (open ? word.slice(0, -1) : word).split(/[^a-z0-9]+/i);
    return new RegExp(`(?<![a-z0-9])${parts.join('[^a-z0-9]+')}${open ? '' : '(?![a-z0-9])'}`, 'i').test(
      line,
    );
  };
  const anyWord = fc
    .tuple(fc.stringMatching(/^[abAB1]{1,3}( [ab]{1,2})?$/), fc.boolean())
    .map(([word, open]) => (open ? `${word}*` : word));
  const anyLine = fc.stringMatching(/^[abAB1 \-_ä]{0,20}$/);

  it('find what the same words find as regular expressions', () => {
    let found = 0;
    fc.assert(
      fc.property(
        fc.array(fc.array(anyWord, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 2 }),
        fc.array(anyWord, { maxLength: 2 }),
        anyLine,
        (all, none, line) => {
          const example = all.map(([word = '']) => word.replace('*', '')).join(' ');
          fc.pre(!none.some((word) => says(example, word)));
          const recognition = recognitionOf([{ kind: 'own', all, none, example, note: '' }]);
          const expected =
            all.every((group) => group.some((word) => says(line, word))) &&
            !none.some((word) => says(line, word));
          if (expected) found += 1;
          expect(kindsIn(line, recognition)).toEqual(expected ? ['own'] : []);
        },
      ),
      { numRuns: 150 },
    );
    expect(found).toBeGreaterThan(2);
  });
});
