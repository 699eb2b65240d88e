/** Logs as evidence: reading them, and what they say about occurrences of a fault. */
export {
  type ClockReference,
  type ClockResult,
  compileClock,
  type KnownMoment,
  type LogClock,
} from './clock.ts';
export { coverage, type LogCoverage, type OccurrenceCoverage } from './coverage.ts';
export { kindWords } from './event-words.ts';
export { eventsNear, logFindings, type TicketLog } from './findings.ts';
export { chunksOf, defaultMaxLogBytes, LogCutShort, unpacked } from './gunzip.ts';
export { createLineReader, type LineReader, type LineSink, type TextEncoding } from './line-reader.ts';
export { createLogReader, type LogOptions, type LogReader, readLog, readLogFile } from './log-reader.ts';
export { type OpenProposal, openProposals } from './open-proposals.ts';
export { type Precursor, type PrecursorOptions, type Precursors, precursors } from './precursors.ts';
export {
  type ProposalOptions,
  type ProposedOccurrence,
  type ProposedOccurrences,
  proposeOccurrences,
} from './proposals.ts';
export type {
  FirmwareString,
  LogClockStep,
  LogEvent,
  LogGap,
  LogReading,
} from './reading.ts';
export { compileRecognition, type Recognition, type RecognitionResult } from './recognition.ts';
export type { RecognitionRow } from './recognition-row.ts';
export { recognitionRows } from './recognition-table.ts';
export { defaultSilenceRule, type SilenceRule } from './silence.ts';
export { type LogFormat, logFormats, type StampBase } from './stamp.ts';
export { readStamp } from './stamp-reader.ts';
export { logFindingAsToday, readingAsToday } from './stored.ts';
