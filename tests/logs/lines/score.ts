import { readText } from '../read-text.ts';
import type { LineClass, LinesByClass } from './line-class.ts';

type Direction = 'down' | 'up';

/** The kinds that say what a class means, and whether it is for the worse. */
const meant: Record<Exclude<LineClass, 'ordinary'>, { kinds: readonly string[]; direction: Direction }> = {
  hotPlugLost: { kinds: ['hotPlugDown'], direction: 'down' },
  hotPlugBack: { kinds: ['hotPlugUp'], direction: 'up' },
  keysFailed: { kinds: ['authenticationFailed'], direction: 'down' },
  repeaterFailed: { kinds: ['repeaterFailed'], direction: 'down' },
  keysAgreed: { kinds: ['authenticationDone'], direction: 'up' },
  lockLost: { kinds: ['syncLost'], direction: 'down' },
  lockFound: { kinds: ['syncFound'], direction: 'up' },
  supplyLost: { kinds: ['supplyLost'], direction: 'down' },
  supplyBack: { kinds: ['supplyFound'], direction: 'up' },
  trainingFailed: { kinds: ['linkTrainingFailed'], direction: 'down' },
  trained: { kinds: ['linkTrained'], direction: 'up' },
  rateLowered: { kinds: ['linkRateReduced'], direction: 'down' },
  rateRaised: { kinds: ['linkRateRaised'], direction: 'up' },
  edidFailed: { kinds: ['edidFailed'], direction: 'down' },
  restartPower: { kinds: ['restartPower'], direction: 'down' },
  restartWatchdog: { kinds: ['restartWatchdog'], direction: 'down' },
  restartPerson: { kinds: ['restartPerson'], direction: 'down' },
  restartUpdate: { kinds: ['restartUpdate'], direction: 'down' },
  restartHeat: { kinds: ['restartHeat'], direction: 'down' },
  restartCrash: { kinds: ['restartCrash'], direction: 'down' },
};

const upKinds = new Set([
  ...Object.values(meant)
    .filter(({ direction }) => direction === 'up')
    .flatMap(({ kinds }) => kinds),
  'edidRead',
]);
/** These say that something is under way, for neither better nor worse. */
const neither = new Set([
  'authenticationStarted',
  'linkTrainingStarted',
  'formatChange',
  'firmware',
  'restart',
]);
const directionOf = (kind: string): Direction | null =>
  neither.has(kind) ? null : upKinds.has(kind) ? 'up' : 'down';

export type Outcome = 'found' | 'missed' | 'otherClass' | 'wrongDirection' | 'falseAlarm' | 'leftAlone';

/** The kind that is read in one line, alone in its log; null for none. */
const kindOf = (line: string): string | null =>
  readText(`2026-11-25T10:00:00Z ${line}`).events[0]?.kind ?? null;

/** What reading one line came to. A line is found only where its class is right. */
export function outcomeOf(meaning: LineClass, line: string): Outcome {
  const kind = kindOf(line);
  if (meaning === 'ordinary') return kind === null ? 'leftAlone' : 'falseAlarm';
  if (kind === null) return 'missed';
  const { kinds, direction } = meant[meaning];
  if (kinds.includes(kind)) return 'found';
  const read = directionOf(kind);
  return read !== null && read !== direction ? 'wrongDirection' : 'otherClass';
}

export type Counts = { lines: number } & Record<Outcome, number>;

/** How a set of lines was read, class by class. */
export const scoreOf = (set: LinesByClass): Record<LineClass, Counts> =>
  Object.fromEntries(
    Object.entries(set).map(([meaning, lines]) => {
      const counts: Counts = {
        lines: lines.length,
        found: 0,
        missed: 0,
        otherClass: 0,
        wrongDirection: 0,
        falseAlarm: 0,
        leftAlone: 0,
      };
      for (const line of lines) counts[outcomeOf(meaning as LineClass, line)] += 1;
      return [meaning, counts];
    }),
  ) as Record<LineClass, Counts>;

/** All classes that mean something, together; and the ordinary lines apart. */
export function sumOf(score: Record<LineClass, Counts>) {
  const told = Object.entries(score).filter(([meaning]) => meaning !== 'ordinary');
  const total = (of: Outcome | 'lines') => told.reduce((sum, [, counts]) => sum + counts[of], 0);
  return {
    lines: total('lines'),
    found: total('found'),
    missed: total('missed') + total('otherClass'),
    wrongDirection: total('wrongDirection'),
    ordinary: score.ordinary.lines,
    falseAlarms: score.ordinary.falseAlarm,
  };
}
