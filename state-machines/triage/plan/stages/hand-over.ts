import type { Offer } from '../../../../shared/contract/plan.ts';
import type { TriageRecord } from '../../../../shared/contract/triage.ts';
import { completeness } from '../../completeness.ts';
import { afterWatch } from './watching.ts';

/** Handing the case to second line, with a reason to be given for each kind of thing that is missing. */
export function escalateOffer(record: TriageRecord): Offer {
  const missing = [...new Set(completeness(record).map(({ item }) => item))];
  return afterWatch(record, { type: 'escalate', waivers: missing.map((item) => ({ item })) });
}
