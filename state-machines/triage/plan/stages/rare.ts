import type { Offer } from '../../../../shared/contract/plan.ts';
import type { TriageRecord } from '../../../../shared/contract/triage.ts';

/** Ways on with a fault that comes too rarely to be waited for on a visit, the advised one first. */
export const rareOffers = (_record: TriageRecord): Offer[] => [];
