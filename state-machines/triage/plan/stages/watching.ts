import type { Offer } from '../../../../shared/contract/plan.ts';
import type { TriageRecord, Watch } from '../../../../shared/contract/triage.ts';
import { message } from '../../../../shared/message/message.ts';
import { coldAheadMin } from '../../counting.ts';
import { minutesBetween, occurrencesOf, runningWatch } from '../../record.ts';
import type { Asked } from '../asked.ts';
import type { Step } from '../fill-in.ts';
import { type About, offering } from '../offer.ts';
import { recordOccurrence, recordTry, watchAsItComes } from '../steps.ts';

/** What a running watch takes whenever it comes: the fault, with what its menu did, and a try that went well. */
export function seenOffers(record: TriageRecord, watchMin: number | null = null): Offer[] {
  const watch = runningWatch(record);
  if (watch === null) return [];
  const menus = watch.purpose === 'side' ? (['stayed', 'vanished'] as const) : [null];
  // A look is over once it is said what was seen.
  if (watch.mode === 'look')
    return menus.map((menu) =>
      offering([recordOccurrence(menu), endWatch], { text: message(thereCodes[menu ?? 'noMenu']) }),
    );
  const tried = watch.mode === 'trigger' ? [recordTry] : [];
  return [...menus.map(recordOccurrence), ...tried].map((each) => offering(each, { watchMin }));
}

const endWatch: Step = { type: 'endWatch' };
const thereCodes = {
  noMenu: 'faultIsThere',
  stayed: 'faultThereMenuStayed',
  vanished: 'faultThereMenuVanished',
} as const;

export function endOffer(record: TriageRecord): Offer {
  const watch = runningWatch(record);
  const isGoodLook = watch?.mode === 'look' && occurrencesOf(watch).length === 0;
  return offering(endWatch, isGoodLook ? { text: message('faultIsNotThere') } : {});
}

/** A step that comes once the watch that runs, if any does, has ended. */
export const afterWatch = (record: TriageRecord, step: Step, about: About = {}): Offer =>
  offering(runningWatch(record) === null ? [step] : [endWatch, step], about);

/** Tries without the fault after which more of them are not asked for, where nothing says how many it takes; assumed. */
export const triesInVain = 10;
/** Nobody watches for less than a second more. */
const shortestMin = 1 / 60;

/** What is left of watching: minutes of a watch over time in which the fault could come, tries of one that counts them. Null: nothing says. */
export type Left = { minutes: number | null; tries?: number | null };

/**
 * Waiting for the fault: a watch begins, or the one that runs goes on until it was as long as was asked for.
 *
 * @param begin the watch, where it isn't like those before
 */
export function waitingOffers({ record, now }: Asked, left: Left, begin?: Step): Offer[] {
  const running = runningWatch(record);
  const coldMin = coldAheadMin(record, now);
  const watchMin = left.minutes === null || left.minutes === 0 ? left.minutes : left.minutes + coldMin;
  if (running === null)
    return [offering(begin ?? watchAsItComes({ record, now }, left.minutes), { watchMin })];
  if (running.mode === 'look') return [...seenOffers(record), endOffer(record)];
  const leftMin = running.mode === 'trigger' ? null : minutesLeft(running, watchMin, now);
  const isOver = leftMin === null ? triesAreOver(running, left.tries ?? null) : leftMin === 0;
  return isOver
    ? [endOffer(record), ...seenOffers(record)]
    : [...seenOffers(record, leftMin), endOffer(record)];
}

/** Minutes until a running watch was as long as was asked for, or planned; null where neither says. */
function minutesLeft({ startedAt, plannedMin }: Watch, leftMin: number | null, now: string): number | null {
  const planned = plannedMin === null ? null : Math.max(0, plannedMin - minutesBetween(startedAt, now));
  if (leftMin === null || planned === null) return leftMin ?? planned;
  return leftMin > 0 && leftMin < shortestMin ? planned : Math.min(leftMin, planned);
}

const triesAreOver = (watch: Watch, left: number | null): boolean =>
  watch.mode === 'trigger' &&
  (left === null ? watch.tries >= triesInVain && occurrencesOf(watch).length === 0 : left <= 0);
