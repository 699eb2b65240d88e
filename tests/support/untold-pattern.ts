import type { Symptom } from '../../shared/contract/triage.ts';

/** Of a symptom of which nobody told how it comes. */
export const untoldPattern: Pick<Symptom, 'pattern' | 'onlyWith'> = {
  pattern: { kind: 'notKnown' },
  onlyWith: null,
};
