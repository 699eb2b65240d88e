import type { RecognitionRow } from './recognition-row.ts';
import { bad, begun, count, failed, good, noError, notYet, otherTopics, words } from './recognition-words.ts';

const rate = words(
  'link rate, link speed, rate, frl, frl rate, lane, lanes, lane count, data rate, link, training, tmds, bit rate, bandwidth, speed step, step up, link cfg, link config',
);
const rates = words(
  '3g3l, 6g3l, 6g4l, 8g4l, 10g4l, 12g4l, 16g4l, gbps, gbit, gb s, 3g, 6g, 8g, 9g, 10g, 12g, 18g',
);
const slower = words(
  'fall back, fallback, fell back, falling back, reduc*, downgrad*, downshift*, lower rate, lower link rate, lower speed, lowered, lowering, step down, stepped down, stepping down, slowed, slower, speed dropped, rate dropped, decreas*, revert*, lower frl rate, lower frl, not possible using, from frl to tmds, frl to tmds, dropping to, dropped to, limited to',
);
const training = words(
  'link training, training, frl training, lane training, trainings, retraining, retrain, trained, train, link pattern, pattern check, flt*, lts*, ltp, lt',
);
const equalising = words(
  'equalisation, equalization, channel eq, eq, clock recovery, cr, flt ready, fltready, frl start, lts2, lts3',
);

/** Rows on how a link comes to its rate: fixed-rate links of HDMI 2.1 and later, and what other links call the same. */
export const rowsOfLinks: readonly RecognitionRow[] = [
  {
    kind: 'linkRateReduced',
    all: [[...rate, ...rates]],
    unlessOurs: otherTopics,
    none: [...count, 'frame rate', 'refresh rate', 'sample rate'],
    turn: 'lower',
    example: 'tx0: link rate 12 -> 8',
    note: 'The same as below, told by figures.',
  },
  {
    kind: 'linkRateRaised',
    all: [[...rate, ...rates]],
    unlessOurs: otherTopics,
    none: [...count, 'frame rate', 'refresh rate', 'sample rate'],
    turn: 'higher',
    example: 'tx0: link rate 8 -> 12',
    note: 'The two ends try a faster rate again.',
  },
  {
    kind: 'linkRateReduced',
    all: [[...rate, ...rates, 'speed'], slower],
    none: words('no lower, none lower, cannot fall back, not reduced'),
    unlessOurs: otherTopics,
    example: 'link training failed at 12 Gbps x 4, falling back to 8 Gbps x 4',
    note: 'The two ends settle for a slower rate than they tried: points at margin on that link.',
  },
  {
    kind: 'linkTrainingFailed',
    all: [
      [...training, ...equalising],
      [...failed, ...words('not, no, stuck, gave, down, without, ended, rejected')],
    ],
    none: noError,
    unlessOurs: otherTopics,
    example: 'tx0: link training timeout on lane 2',
    note: 'Fixed-rate link training didn’t end well (HDMI 2.1 and later).',
  },
  {
    kind: 'linkTrained',
    all: [[...training, ...equalising], good],
    none: [...notYet, ...bad],
    unlessOurs: otherTopics,
    example: 'tx0: FRL training passed, 10 Gbps x 4',
    note: 'Link training ended well.',
  },
  {
    kind: 'linkTrained',
    all: [['frl'], words('active, link up, link is up, up, locked at, established, running')],
    none: [...notYet, ...bad],
    example: 'tx0: FRL active, 10 Gbps x 4',
    note: 'The same without the word.',
  },
  {
    kind: 'linkTrainingStarted',
    all: [training, begun],
    unlessOurs: otherTopics,
    example: 'tx0: link training started at 12 Gbps x 4',
    note: 'Also each new start: many in a row are a finding in themselves.',
  },
];
