import type { CaseFile } from '../../../shared/contract/packet.ts';
import { heavyTask } from '../../heavy-work/task.ts';
import { caseSummary } from './summary/index.ts';

type ToSummarise = {
  readonly file: CaseFile;
  /** Evidence by its id, and its picture as a data URI. */
  readonly thumbnails: readonly (readonly [string, string])[];
};

/** The summary of a case as HTML. */
export const summaryWork = heavyTask('summary', 'plans', ({ file, thumbnails }: ToSummarise) => ({
  html: caseSummary(file, new Map(thumbnails)),
}));
