import type { Offer } from '../../../../shared/contract/plan.ts';
import type { TriageRecord } from '../../../../shared/contract/triage.ts';
import { type Message, message } from '../../../../shared/message/message.ts';
import { completeness } from '../../completeness.ts';
import { currentEscalation } from '../../record.ts';
import { afterWatch } from './watching.ts';

/**
 * Handing the case to second line, with a reason to be given for each kind of thing that is missing.
 *
 * @param question where it is known already
 */
export function escalateOffer(record: TriageRecord, question?: string): Offer {
  const missing = [...new Set(completeness(record).map(({ item }) => item))];
  const waivers = missing.map((item) => ({ item }));
  return afterWatch(record, { type: 'escalate', waivers, ...(question === undefined ? {} : { question }) });
}

/** Changes without an effect, and remedies that did not hold, after which somebody else has to look; assumed. */
const enoughChanges = 6;
const enoughRemedies = 2;
/** Steps on a ticket in all, whoever had it meanwhile, after which it is somebody else's turn; assumed: a long day. */
const enoughSteps = 40;
/**
 * A watch is begun and ended, so is waiting, and so are days that a change is left in; a change is declared, made, judged
 * and put back or kept; a round that fell was named, repaired and watched; a remedy that was taken back was chosen and
 * done; a case that was handed over was answered.
 */
const stepsOf = { watch: 2, wait: 2, unattended: 2, change: 4, round: 4, remedy: 2, escalation: 2 } as const;

/** Steps after which going on is not even offered beside handing it over; assumed: the day is over. */
const mostSteps = 44;

/** What was done on a ticket so far, in steps of whoever is on site. */
const stepsSoFar = (record: TriageRecord): number =>
  stepsOf.watch * record.watches.length +
  stepsOf.wait * record.waits.length +
  stepsOf.unattended * record.unattended.length +
  stepsOf.change * record.changes.length +
  stepsOf.round * (record.round - 1) +
  stepsOf.remedy * record.setAside.length +
  stepsOf.escalation * record.escalations.length +
  record.looks.length +
  record.sides.length;

/** Why more of the same leads nowhere, by what was done since second line was last asked, or in all; null while it may. */
export function whyInVain(record: TriageRecord): Message | null {
  const since = currentEscalation(record)?.outcome?.at ?? record.openedAt;
  const remedies = record.setAside.filter(({ because, at }) => because === 'faultCameBack' && at >= since);
  if (remedies.length >= enoughRemedies) return message('remediesInVain', { remedies: remedies.length });
  const changes = record.changes.filter(
    ({ declaredAt, judgement }) =>
      declaredAt >= since && judgement !== null && judgement.verdict !== 'cleared',
  );
  if (changes.length >= enoughChanges) return message('manyInVain', { changes: changes.length });
  const judged = record.changes.filter(({ judgement }) => judgement !== null).length;
  return judged > 0 && stepsSoFar(record) >= enoughSteps ? message('longInVain', { changes: judged }) : null;
}

/** Whether the day is over: whoever goes on does so against advice. */
export const isDayOver = (record: TriageRecord): boolean => stepsSoFar(record) >= mostSteps;
