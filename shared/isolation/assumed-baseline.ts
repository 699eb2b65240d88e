import type { Case } from './case.ts';
import { assumedRatePerHour, type WatchRecord } from './quiet-length.ts';

/** Symptoms that are there or not, rather than now and then, when the client gives no rate; common practice. */
const steadySymptoms: readonly string[] = [
  'noPicture',
  'noHdr',
  'wrongColour',
  'wrongRateOrResolution',
  'contentProtectionMessage',
];

export const isSteady = (symptomKind: string): boolean => steadySymptoms.includes(symptomKind);

/** What a client tells of the rate is taken to be worth two occurrences; a steady fault three failed tries. Assumed. */
export function assumedBaseline({ symptom }: Case): WatchRecord {
  const { pattern, perHour, kind } = symptom;
  if (pattern.kind === 'always') return { mode: 'look', looks: 1, bad: 1 };
  const isByTries = pattern.kind === 'notKnown' && perHour === null && isSteady(kind);
  if (pattern.kind === 'trigger' || isByTries) return { mode: 'trigger', tries: 3, failures: 3 };
  return { mode: 'time', occurrences: 2, minutes: 120 / (symptom.perHour ?? assumedRatePerHour) };
}
