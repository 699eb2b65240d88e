import { describe, expect, it } from 'vitest';
import {
  checkMinimum,
  compareFirmware,
  isBelowMinimum,
  relateFirmware,
} from '../../shared/chain/firmware.ts';
import { checkLevels, isBelowLevel } from '../../shared/chain/firmware-level.ts';
import { type Message, message } from '../../shared/message/index.ts';

const older: [string, string][] = [
  // part by part and as decimals alike
  ['1.09', '1.10'],
  ['1.9.0.1', '1.10.0.1'],
  // numbers count as numbers
  ['3.0', '3.10'],
  ['1.02', '1.10'],
  ['1.8', '1.8.1'],
  ['1.8.1', '1.8.2'],
  ['1.8.1', '1.8.10'],
  ['0.9', '1'],
  ['9', '10'],
  ['1.99.99', '2'],
  ['1.4.0-1', '1.4.0-2'],
  ['1_2_3', '1_2_4'],
  ['9.00000000000000000001', '9.00000000000000000002'],
  ['99999999999999999998.1', '99999999999999999999.1'],
  // letters
  ['1.8', '1.8a'],
  ['1.8a', '1.8b'],
  ['1.8b', '1.8.1'],
  ['1.8a', '1.9'],
  ['1.8 a', '1.8B'],
  ['12C', '12D'],
  ['1.8a1', '1.8a2'],
  ['1.8a9', '1.8a10'],
  // stages
  ['1.8 beta', '1.8 rc1'],
  ['1.8-alpha', '1.8-beta'],
  ['1.8beta2', '1.8beta10'],
  ['1.8rc1', '1.8'],
  ['1.8 RC 1', '1.8 RC 2'],
  ['1.0rc1', '1.0.0'],
  ['1.7', '1.8 beta'],
  ['1.8 (beta 2)', '1.8'],
  ['1.8 (beta)', '1.8 (rc)'],
  ['1.8', '1.8 patch 1'],
  ['1.8 patch 1', '1.8 patch 2'],
  ['1.8 patch 2', '1.8.1'],
  ['1.8 SP1', '1.8 hotfix 2'],
  // prefixes
  ['FW v1.2.3', 'v1.2.4'],
  ['Ver. 1.02', 'V1.3'],
  ['V01.23', 'V01.24'],
  ['MainCPU-1.4.0', 'MainCPU-1.4.1'],
  ['MainCPU-1.4.0', '1.4.1'],
  ['CPU1: 1.40', 'CPU1: 1.41'],
  ['AB-100 v1.2', 'AB-100 v1.3'],
  ['Firmware version: 2.0', 'Firmware version: 2.1'],
  ['R1.2', 'R1.3'],
  ['SW 1.2', 'Rel. 1.3'],
  ['HDMI board fw 7', 'HDMI board fw 12'],
  // builds
  ['1.2.3 (45)', '1.2.3 (46)'],
  ['1.2.3 (9)', '1.2.3 (10)'],
  ['1.2.3 [build 45]', '1.2.3 build 46'],
  ['1.2.3 (99)', '1.2.4 (1)'],
  ['1.2 build 45', '1.2.1 build 40'],
  ['1.2.3+45', '1.2.3+46'],
  ['1.2.3 #45', '1.2.3 #46'],
  ['1.2.3', '1.2.3 (45)'],
  ['1.2.3 (2025-03-01)', '1.2.3 (2025-03-02)'],
  ['1.4.0-20250301', '1.4.0-20250302'],
  ['1.4.0-20250301', '1.4.1-20240101'],
  ['1.2.3-g1a2b3c4', '1.2.4-g0f2b3c4'],
  // dates
  ['2025-03-01', '2025-03-02'],
  ['2025-03-09', '20250310'],
  ['20241231', '2025.01.01'],
  ['2025/2/28', '2025-03-01'],
  ['2025-03-01', '2025-03-01 14:22'],
  ['202503011422', '202503011423'],
  ['20250301a', '20250301b'],
  ['20250301', '20250301.1'],
  ['2025.1.0', '2025.1.1'],
  ['1 Mar 2025', '2 March 2025'],
  ['Feb 28, 2025', '1 Mar 2025'],
  ['2025-Mar-01', '2025-03-02'],
  ['31.03.2025', '2025-04-01'],
  ['03/31/2025', '2025-04-01'],
  ['01.03.2025', '2026-01-01'],
  ['01.03.2025', '02.03.2025'],
  ['FW 01.03.2025', 'FW 01.04.2025'],
  // others
  ['12345', '12346'],
  ['12345', '20251399'],
  ['build 999', 'Build 12345'],
  ['4K v1.5', '4K v1.6'],
  ['Beta 1.8', '1.8'],
  ['Jan 2024', 'Feb 2024'],
  ['99999', '100000'],
  ['0x09', '0x1a'],
];

const same: [string, string][] = [
  ['Ver. 1.02', 'version 1.02'],
  ['1,02', '1.02'],
  ['01.2', '1.2'],
  ['1.8', '1.8'],
  ['1.8', '1.8.0'],
  ['1.8', ' v1.8 '],
  ['V01.23', '1.23'],
  ['FW v1.2.3', '1.2.3'],
  ['MainCPU-1.4.0', '1.4'],
  ['maincpu 1.4.0', 'MainCPU: 1.4.0'],
  ['1.2.3 (45)', '1.2.3 [Build 045]'],
  ['1.2.3 (release)', '1.2.3'],
  ['1.2.3 final', '1.2.3'],
  ['1.8RC1', '1.8-rc.1'],
  ['1.8 A', '1.8a'],
  ['１．８', '1.8'],
  ['1.8\t beta   2', '1.8 beta 2'],
  ['2025-03-01', '20250301'],
  ['2025-03-01', '2025/3/1'],
  ['1 Mar 2025', '2025-03-01'],
  ['31.03.2025', '2025-03-31'],
  ['03/31/2025', '2025-03-31'],
  ['01.01.2025', '2025-01-01'],
  ['01.03.2025', '01.03.2025'],
  ['01/03/2025', '01.03.2025'],
  ['0x1A', '0x01a'],
  ['1.x', '1'],
  ['Beta 1.8', '1.8 beta'],
  ['1.8 or later', '1.8'],
  ['b 1.2.3 final', 'b 1.2.3'],
  ['1.2.3 (constructor 5)', '1.2.3 (5)'],
  ['unreadable', ' Unreadable'],
];

const apart: [string, string, Message][] = [
  ['1.1', '1.02', message('firmwareTwoNumberings')],
  ['V1.9', 'V01.23', message('firmwareTwoNumberings')],
  ['1.2', '1.20', message('firmwareTwoNumberings')],
  ['1.02', '1.2', message('firmwareTwoNumberings')],
  ['3.9', '3.10', message('firmwareTwoNumberings')],
  ['FW v1.9', '1.12 beta', message('firmwareTwoNumberings')],
  ['2025-03-01', '1.8.1', message('firmwareSchemesDiffer', { one: 'date', other: 'version' })],
  ['20250301', '12345', message('firmwareSchemesDiffer', { one: 'date', other: 'buildNumber' })],
  ['12345', '1.8.1', message('firmwareSchemesDiffer', { one: 'buildNumber', other: 'version' })],
  ['0x1a', '26', message('firmwareSchemesDiffer', { one: 'hexadecimal', other: 'version' })],
  ['MainCPU-1.4.0', 'SubCPU-1.5.0', message('firmwareEditionsDiffer', { one: 'maincpu', other: 'subcpu' })],
  ['1.4.0-EU', '1.5.0-US', message('firmwareEditionsDiffer', { one: 'eu', other: 'us' })],
  ['01.03.2025', '2025-02-01', message('firmwareDayOrMonth')],
  ['01.03.2025', '02.01.2025', message('firmwareDayOrMonth')],
  ['01.03.2025', '2025-03-01', message('firmwareDayOrMonth')],
  ['1.2.3-g1a2b3c4', '1.2.3-g0f2b3c4', message('firmwareHashesDiffer')],
  ['1.2.3 (1a2b3c4d)', '1.2.3 (0f2b3c4d)', message('firmwareHashesDiffer')],
  ['build 1234', '1.8', message('firmwareSchemesDiffer', { one: 'buildNumber', other: 'version' })],
  [
    '1.2.3 (45)',
    '1.2.3 (2025-03-01)',
    message('firmwareSchemesDiffer', { one: 'buildNumber', other: 'date' }),
  ],
  [
    'Main 1.4 / Sub 2.1',
    '1.4',
    message('firmwareUnreadable', {
      firmware: 'Main 1.4 / Sub 2.1',
      reason: message('firmwareOfSeveralVersions'),
    }),
  ],
  [
    'Main: 14; Sub: 21',
    '14',
    message('firmwareUnreadable', {
      firmware: 'Main: 14; Sub: 21',
      reason: message('firmwareOfSeveralVersions'),
    }),
  ],
  [
    'unreadable',
    '1.8',
    message('firmwareUnreadable', { firmware: 'unreadable', reason: message('firmwareWithoutNumber') }),
  ],
  ['1.8', '', message('firmwareUnreadable', { firmware: '', reason: message('firmwareEmpty') })],
  ['', '', message('firmwareUnreadable', { firmware: '', reason: message('firmwareEmpty') })],
];

describe('comparing firmware', () => {
  it.each(older)('%s is older than %s', (a, b) => {
    expect(compareFirmware(a, b)).toBe(-1);
    expect(compareFirmware(b, a)).toBe(1);
  });

  it.each(same)('%s is %s', (a, b) => {
    expect(compareFirmware(a, b)).toBe(0);
    expect(compareFirmware(b, a)).toBe(0);
  });

  it.each(apart)('%s and %s cannot be compared: %o', (a, b, reason) => {
    expect(relateFirmware(a, b)).toEqual({ order: null, reason });
    expect(compareFirmware(b, a)).toBeNull();
  });

  it('takes a last part of four digits for a year only where no version word stands in front', () => {
    expect(compareFirmware('v1.2.2024', 'v1.2.2023')).toBe(1);
    expect(compareFirmware('v1.2.2024', '1.3')).toBe(-1);
    expect(compareFirmware('1.2.2024', '1.3')).toBeNull();
  });
});

describe('reaching a minimum', () => {
  it.each([
    ['1.7', '1.8', 'below'],
    ['1.8', '1.8', 'ok'],
    ['1.1', '1.02', 'unknown'],
    ['1.2', '1.20', 'unknown'],
    ['1.8.1', '1.8', 'ok'],
    ['FW v1.8', '1.8', 'ok'],
    ['1.8 rc1', '1.8', 'below'],
    ['3.0', '3.10', 'below'],
    ['1.8', '>= 1.7', 'ok'],
    ['1.2.3 (44)', '1.2.3 (45)', 'below'],
    ['1.2.3', '1.2.3 (45)', 'unknown'],
    ['1.2.2', '1.2.3 (45)', 'below'],
    ['2025-03-01', '1.8', 'unknown'],
    ['', '1.8', 'unknown'],
    [null, '1.8', 'unknown'],
    ['1.8', 'latest', 'unknown'],
  ] as const)('%s against %s is %s', (firmware, minimum, result) => {
    expect(isBelowMinimum(firmware, minimum)).toBe(result);
    expect(checkMinimum(firmware, minimum).reason === null).toBe(result === 'ok');
  });

  it('says why it is not reached or not known', () => {
    expect(checkMinimum('1.7', '1.8').reason).toEqual(
      message('firmwareOlder', { firmware: '1.7', minimum: '1.8' }),
    );
    expect(checkMinimum(null, '1.8').reason).toEqual(message('firmwareNotRead'));
    expect(checkMinimum('1.2.3', '1.2.3 (45)').reason).toEqual(message('firmwareWithoutBuild'));
  });
});

describe('the levels an organisation sets', () => {
  const levels = [
    { model: 'CP-20', minimum: '1.8' },
    { model: 'CP-30', minimum: '2.0' },
  ];

  it.each([
    ['CP-20', '1.7', true],
    ['cp 20', '1.7', true],
    ['CP_20', '1.8', false],
    ['CP-20', null, false],
    ['CP-20', '2025-03-01', false],
    ['CP-200', '1.0', false],
    [null, '1.0', false],
  ] as const)('model %s at %s: below is %s', (model, firmware, below) => {
    expect(isBelowLevel({ model, firmware }, levels)).toBe(below);
  });

  it('count by model, each with its result', () => {
    expect(checkLevels({ model: 'CP-30', firmware: '1.9' }, levels)).toEqual([
      {
        result: 'below',
        reason: message('firmwareOlder', { firmware: '1.9', minimum: '2.0' }),
        minimum: '2.0',
      },
    ]);
    expect(checkLevels({ model: 'XY', firmware: '1.9' }, levels)).toEqual([]);
  });
});
