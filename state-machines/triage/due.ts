import type { Due, TriageRecord } from '../../shared/contract/triage.ts';
import { currentWait } from './record.ts';

/** What somebody has to see to by a date although nobody works on the ticket; null where there is nothing. */
export function dueOf(record: TriageRecord): Due | null {
  const wait = currentWait(record);
  if (wait === null) {
    const { followUp } = record;
    if (followUp === null || followUp.askBy === null) return null;
    return { kind: 'followUp', by: followUp.askBy, since: followUp.since };
  }
  const { kind, what, actor, actorName, until, at, leftInPlace } = wait;
  return {
    kind: 'wait',
    by: until,
    since: at,
    waitsFor: kind,
    what,
    actor,
    actorName,
    isInPlace: leftInPlace.length > 0,
  };
}
