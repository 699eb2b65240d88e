import { createReadStream } from 'node:fs';
import {
  type ClockReference,
  compileClock,
  compileRecognition,
  type LogReading,
  type RecognitionRow,
  readLogFile,
} from '../../../shared/logs/index.ts';
import { heavyTask } from '../../heavy-work/task.ts';

/** Events kept of each kind in a log's facts; the rest are counted. Assumed. */
const maxEventsPerKind = 500;

type LogFile = {
  readonly path: string;
  /** One that compiles. */
  readonly reference: ClockReference;
  /** The organisation's own; they come before the built-in ones. */
  readonly rows: readonly RecognitionRow[];
};

/** Reads a log where it lies. */
export const readLogWork = heavyTask(
  'read log',
  'logs',
  async ({ path, reference, rows }: LogFile): Promise<LogReading> => {
    const clock = compileClock(reference);
    if (!clock.ok) throw new Error('a log was handed on with a clock that does not fit');
    const words = compileRecognition(rows);
    return readLogFile(() => createReadStream(path), {
      clock: clock.clock,
      maxEventsPerKind,
      // Rows are tried before they are kept; should the built-in table have changed since, it is read by that alone.
      ...(words.ok ? { recognition: words.recognition } : {}),
    });
  },
);
