import type { Message } from '../../message/index.ts';
/** `error`: what was read can't be trusted; `warning`: against the standard but readable; `note`: worth knowing. */
export type Severity = 'error' | 'warning' | 'note';

/** One finding. `block` counts from 0 (base block); `offset` is the byte inside that block, 0..127. */
export type EdidProblem = { severity: Severity; block: number; offset: number; text: Message };

/** Reports a finding inside the block being decoded. */
export type Report = (severity: Severity, offset: number, text: Message) => void;

/** A report whose offsets start at `by` of the block: for parts that count from their own first byte. */
export const shifted =
  (report: Report, by: number): Report =>
  (severity, offset, text) =>
    report(severity, by + offset, text);
