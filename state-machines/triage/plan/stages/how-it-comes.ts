import type { Offer } from '../../../../shared/contract/plan.ts';
import type { TriageRecord } from '../../../../shared/contract/triage.ts';
import { patternTriggers } from '../../../../shared/contract/triage-names.ts';
import { triesUntilSure } from '../../../../shared/isolation/index.ts';
import { type Message, message } from '../../../../shared/message/message.ts';
import { baselineWatches, occurrencesOf, runningWatch } from '../../record.ts';
import { usable } from '../../retest.ts';
import type { Asked } from '../asked.ts';
import type { Step } from '../fill-in.ts';
import { offering, type Stage, stage } from '../offer.ts';
import { watchByTries, watchOverTime } from '../steps.ts';
import { afterWatch, seenOffers, waitingOffers } from './watching.ts';

/**
 * Nobody knows how it comes: what commonly makes a fault come is tried, which takes minutes. Null where that was done, or
 * how it comes is known.
 */
export function triesOfWhatMakesItCome(asked: Asked, upToNow: TriageRecord): Stage | null {
  const { record } = asked;
  const { pattern, perHour } = record.symptom;
  if (pattern.kind !== 'notKnown' || perHour !== null) return null;
  const running = runningWatch(record);
  const made = usable(baselineWatches(upToNow)).reduce((sum, { tries }) => sum + tries, 0);
  const left = Math.max(0, triesUntilSure(record.settings.risk) - made);
  if (left === 0 && running?.mode !== 'trigger') return null;
  const begin = watchByTries(null);
  const offers =
    running?.mode === 'time' || running?.mode === 'look'
      ? [afterWatch(record, begin), ...seenOffers(record)]
      : waitingOffers(asked, { minutes: null, tries: left }, begin);
  const others = running === null ? [offering(watchOverTime(null))] : [];
  return stage(message('tryWhatMayMakeItCome', { tries: left }), [...offers, ...others]);
}

type Pattern = TriageRecord['symptom']['pattern'];

/**
 * It came while something was tried, and nobody said yet whether by that: whoever saw it does, so that it is waited for in
 * the way in which it comes.
 */
export function whatMadeItCome(record: TriageRecord): Offer[] {
  const { symptom } = record;
  const cameInTries = baselineWatches(record).some(
    (watch) => watch.mode === 'trigger' && watch.triggerKind === null && occurrencesOf(watch).length > 0,
  );
  if (symptom.pattern.kind !== 'notKnown' || !cameInTries) return [];
  const said = (pattern: Pattern, text: Message): Offer =>
    afterWatch(record, { type: 'amendIntake', symptom: { ...symptom, pattern } } as Step, { text });
  const triggers = patternTriggers.filter((trigger) => trigger !== 'other');
  return [
    ...triggers.map((trigger) => said({ kind: 'trigger', trigger }, message('itCameBy', { trigger }))),
    said({ kind: 'random', rarely: false }, message('itCameByItself')),
    said({ kind: 'always' }, message('itIsAlwaysThere')),
  ];
}
