import type { TriageRecord } from '../../../shared/contract/triage.ts';
import { recordAsToday as fromVersion1, type WholeRecordThen } from './1/record-as-today.ts';

/**
 * A triage record that an earlier version wrote, as today's; today's is given back as it is. For records that are kept
 * without their log: in the case file of a packet, and on the phone.
 */
export const recordAsToday = (stored: TriageRecord | WholeRecordThen): TriageRecord =>
  isToday(stored) ? stored : fromVersion1(stored);

/** Version 1 did not write down which version its records are of; it knew of no revision of the figures. */
const isToday = (stored: TriageRecord | WholeRecordThen): stored is TriageRecord =>
  'revision' in stored.settings;
