import type { RecognitionRow } from './recognition-row.ts';
import { words } from './recognition-words.ts';
import { rowsOfKeys } from './rows-of-keys.ts';
import { rowsOfLinks } from './rows-of-links.ts';
import { rowsOfRestarts } from './rows-of-restarts.ts';
import { rowsOfHotPlug, rowsOfPicture, rowsOfSignals, rowsOfSupply } from './rows-of-signals.ts';

/**
 * What log lines are about, in the trade's generic words. Words and their order are common practice, no source;
 * examples are made up. Of the rows that fit a line the first counts, so the particular comes before the general.
 * To teach a new one: add a row, with a line that it should find as its example.
 */
export const recognitionRows: readonly RecognitionRow[] = [
  ...rowsOfLinks,
  ...rowsOfKeys,
  ...rowsOfSignals,
  ...rowsOfRestarts,
  ...rowsOfSupply,
  ...rowsOfHotPlug,
  ...rowsOfPicture,
  {
    kind: 'firmware',
    all: [
      words('firmware, fw, software, bootloader, fpga, mcu, dsp, scaler, build'),
      [
        ...words('version, versions, ver, rev, revision, build, release, firmware, fw'),
        ...words('v0*, v1*, v2*, v3*, v4*, v5*, v6*, v7*, v8*, v9*'),
      ],
    ],
    none: words('update available, new version available, downloading'),
    example: 'main board firmware version 4.12.3',
    note: 'Counts only where a version can be read out of the line.',
  },
];
