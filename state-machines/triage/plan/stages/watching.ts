import type { Offer } from '../../../../shared/contract/plan.ts';
import type { TriageRecord } from '../../../../shared/contract/triage.ts';
import { runningWatch } from '../../record.ts';
import type { Step } from '../fill-in.ts';
import { type About, offering } from '../offer.ts';
import { recordOccurrence, recordTry } from '../steps.ts';

/** What a running watch takes whenever it comes: the fault, with what its menu did, and a try that went well. */
export function seenOffers(record: TriageRecord, watchMin: number | null = null): Offer[] {
  const watch = runningWatch(record);
  if (watch === null) return [];
  const steps =
    watch.purpose === 'side'
      ? [recordOccurrence('stayed'), recordOccurrence('vanished')]
      : [recordOccurrence()];
  return [...steps, ...(watch.mode === 'trigger' ? [recordTry] : [])].map((each) =>
    offering(each, { watchMin }),
  );
}

export const endOffer = (): Offer => offering({ type: 'endWatch' });

/** A step that comes once the watch that runs, if any does, has ended. */
export const afterWatch = (record: TriageRecord, step: Step, about: About = {}): Offer =>
  offering(runningWatch(record) === null ? [step] : [{ type: 'endWatch' }, step], about);
