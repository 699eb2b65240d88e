import type { Message } from '../message/index.ts';
import type { TextEncoding } from './line-reader.ts';
import type { LogFormat } from './stamp.ts';

/** One line of a log that says something of the trade. Times are UTC, ISO 8601. */
export type LogEvent = {
  /** One of `logEventKinds`, or of an organisation's own rows. */
  kind: string;
  /** True time; null where nothing ties the line to one. */
  time: string | null;
  /** Whose stamp the time is from: a line without one takes that of the line before. */
  timeFrom: 'line' | 'lineBefore' | null;
  /** Number of the line in the file, from 1. */
  line: number;
  /** The line as it stands in the file, control characters made spaces, at most 300 characters. */
  excerpt: string;
};

/** A version that the log announces; the same one in the same words counts once. */
export type FirmwareString = {
  version: string;
  time: string | null;
  line: number;
  excerpt: string;
  times: number;
};

/** A stretch without a line, longer than the log's rhythm explains. Lines are the last before and the first after. */
export type LogGap = {
  from: string;
  to: string;
  lengthS: number;
  afterLine: number;
  beforeLine: number;
  /** The first thing after the gap is a restart: power was off, or the device hung. */
  endsInRestart: boolean;
};

/** A place where the device's clock was set, back or far ahead. Times are what the stamps said, corrected. */
export type LogClockStep = { line: number; from: string | null; to: string | null; byS: number };

/** What one log says: plain data that can be kept as JSON. Times are UTC, ISO 8601. */
export type LogReading = {
  bytes: number;
  lines: number;
  /** Lines without a time in any form we know, blank ones left out; they count as continued from the line before. */
  unparsed: number;
  /** Lines longer than was looked at. */
  cutLines: number;
  encoding: TextEncoding;
  /**
   * Whether the day or the month comes first in dates such as 03/04/2026, as the log's dates tell (null: they don't), and
   * the first that has two readings; null without such dates.
   */
  dayOrder: { told: 'dayFirst' | 'monthFirst' | null; example: string | null } | null;
  /** Lines by the form of their stamp. */
  formats: Record<LogFormat, number>;
  /** First and last moment that the log tells; null where no line is tied to one. */
  span: { from: string; to: string } | null;
  /** In the order of the file; at most so many of each kind, see `eventCounts` for how many there were. */
  events: LogEvent[];
  /** Events found, by kind, kept or not. */
  eventCounts: Record<string, number>;
  /** Kinds with more events than are kept: how many aren't, and when the first of those was. */
  notKept: Record<string, { count: number; from: string | null }>;
  firmware: FirmwareString[];
  gaps: LogGap[];
  /** Silences from this length count as gaps, seconds. */
  gapThresholdS: number;
  clockSteps: LogClockStep[];
  /** How often the seconds since boot began, in a log that counts them. */
  boots: number;
  clock: {
    /** Zone taken for stamps that name none was given, or assumed to be UTC. */
    zone: 'given' | 'assumed';
    /** What a known moment showed the device's clock to be off by, seconds, to be added; null for none given. */
    skewS: number | null;
  };
  /** The stream ended before its time: packed data damaged, or more than allowed. */
  cutShort: 'damaged' | 'tooLarge' | null;
  /** What a reader should know before leaning on this. */
  notes: Message[];
};
