import { diaryDays } from '../../../../shared/contract/diary-names.ts';
import type { Offer } from '../../../../shared/contract/plan.ts';
import type { TriageRecord, WaitingKind } from '../../../../shared/contract/triage.ts';
import { type Message, message } from '../../../../shared/message/message.ts';
import { currentWait } from '../../record.ts';
import type { Asked } from '../asked.ts';
import { offering, type Stage, stage } from '../offer.ts';
import { afterWatch } from './watching.ts';

/** The ticket waits: what for and until when, and the way back to work. */
export function waitingStage({ record }: Asked): Stage {
  const wait = currentWait(record);
  if (wait === null) throw new Error('the ticket waits for nothing');
  const { kind, what, actor, until } = wait;
  return stage(message('ticketIsWaiting', { kind, what, actor, until }), [
    offering({ type: 'resumeWork', note: '' }),
  ]);
}

/** A better test can't be done with what is at hand: it can wait until that is there. @param forWhat the test, as an order */
export const waitForPart = (forWhat: Message): Offer =>
  offering(
    { type: 'waitFor', kind: 'part', actor: 'office' },
    { text: message('waitForPart', { for: forWhat }) },
  );

/** Until when reports are waited for where nothing says for how long. */
export const usualUntil = (now: string): string => daysFrom(now, diaryDays.usual);
export const daysFrom = (now: string, days: number): string =>
  new Date(Date.parse(now) + days * 86_400_000).toISOString();

/** Nobody on site can do anything for so many days, while whoever is there writes down when the fault comes. */
export const waitForReports = (record: TriageRecord, until: string): Offer =>
  afterWatch(
    record,
    { type: 'waitFor', kind: 'client', actor: 'client', until },
    { text: message('waitForReports', { until }) },
  );

/** Until the devices' own logs are fetched, from as many days as it takes for them to show it, and read. */
export const waitForLogs = (record: TriageRecord, until: string): Offer =>
  afterWatch(
    record,
    { type: 'waitFor', kind: 'other', actor: 'technician', until },
    { text: message('waitForLogs', { until }) },
  );

/** Whether it was waited for such a thing in this round: then waiting once more is not what is advised. */
export const hasWaitedFor = ({ waits, round }: TriageRecord, kind: WaitingKind): boolean =>
  waits.some((wait) => wait.kind === kind && wait.round === round);
