import type { Offer } from '../../../../shared/contract/plan.ts';
import type { TriageRecord } from '../../../../shared/contract/triage.ts';
import {
  assumedRatePerHour,
  goodBaseline,
  noFaultFoundWatchMin,
  requiredQuietWatchMin,
} from '../../../../shared/isolation/index.ts';
import { message } from '../../../../shared/message/message.ts';
import { minutesBetween, occurrencesIn, occurrencesOf, runningWatch, watchesFor } from '../../record.ts';
import type { Asked } from '../asked.ts';
import { baselineOf } from '../case-of.ts';
import { offering, type Stage, stage } from '../offer.ts';
import { watchAsBefore, watchByTries, watchOverTime } from '../steps.ts';
import { escalateOffer } from './hand-over.ts';
import { afterWatch, endOffer, seenOffers } from './watching.ts';

/** Seeing the fault before anything is changed, often enough for the retests to come. */
export function reproduceStage(asked: Asked): Stage {
  const { record, now } = asked;
  const watches = watchesFor(record, 'reproduce');
  const seen = occurrencesIn(watches).length;
  const watchedMin = watches.reduce(
    (sum, watch) => sum + minutesBetween(watch.startedAt, watch.endedAt ?? now),
    0,
  );
  if (seen === 0) return unseenStage(asked, watchedMin);
  return seenStage(record, { seen, watchedMin });
}

function unseenStage({ record }: Asked, watchedMin: number): Stage {
  const { risk } = record.settings;
  const patienceMin = noFaultFoundWatchMin(record.symptom.perHour, risk);
  const leftMin = Math.max(0, patienceMin - watchedMin);
  if (leftMin === 0) return shouldHaveShown(record);
  const expected = { minutes: leftMin, sureness: 1 - risk };
  return stage(
    record.symptom.perHour === null
      ? message('watchAtAssumedRate', { everyMin: 60 / assumedRatePerHour, ...expected })
      : message('watchAtToldRate', expected),
    watchOffers(record, leftMin),
    leftMin,
  );
}

/** Waiting for the fault: a watch over time, or tries of what makes it come. */
function watchOffers(record: TriageRecord, watchMin: number): Offer[] {
  if (runningWatch(record) !== null) return [...seenOffers(record, watchMin), endOffer()];
  return [offering(watchOverTime(watchMin), { watchMin }), offering(watchByTries(null))];
}

/** It was watched for as long as it takes: more of the same tells nothing. */
function shouldHaveShown(record: TriageRecord): Stage {
  const noFault = { type: 'chooseRemedy', remedy: { kind: 'noFaultFound' } } as const;
  const tried = watchesFor(record, 'reproduce').some(({ mode, tries }) => mode === 'trigger' && tries > 0);
  return stage(message('shouldHaveShown'), [
    ...(tried || runningWatch(record) !== null ? [] : [offering(watchByTries(null))]),
    afterWatch(record, noFault),
    ...seenOffers(record),
    endOffer(),
    escalateOffer(record),
  ]);
}

function seenStage(record: TriageRecord, { seen, watchedMin }: { seen: number; watchedMin: number }): Stage {
  const accept = afterWatch(record, { type: 'acceptReproduction' });
  const more = worthWatchingOn(record, seen, watchedMin);
  if (more === null)
    return stage(message('faultReproduced', { seen }), [accept, ...seenOffers(record), endOffer()]);
  const { moreMin } = more;
  const watchOn =
    runningWatch(record) === null
      ? [offering(watchAsBefore(record, moreMin), { watchMin: moreMin })]
      : seenOffers(record, moreMin);
  return stage(
    message('seenWatchForMore', { seen, enough: goodBaseline, ...more }),
    [...watchOn, accept, endOffer()],
    moreMin,
  );
}

/** Whether watching on before any change is repaid by shorter retests, and how; null where it isn't. */
function worthWatchingOn(record: TriageRecord, seen: number, watchedMin: number) {
  const last = watchesFor(record, 'reproduce').findLast(({ endedAt }) => endedAt !== null);
  const lastWasQuiet = last !== undefined && occurrencesOf(last).length === 0;
  if (seen >= goodBaseline || baselineOf(record)?.mode === 'trigger' || lastWasQuiet) return null;
  const { risk } = record.settings;
  const moreMin = ((goodBaseline - seen) * Math.max(watchedMin, 1)) / seen;
  const retestMin = requiredQuietWatchMin(seen, watchedMin, risk);
  const thenRetestMin = requiredQuietWatchMin(goodBaseline, watchedMin + moreMin, risk);
  return retestMin !== null && thenRetestMin !== null && retestMin > thenRetestMin + moreMin
    ? { moreMin, retestMin, thenRetestMin }
    : null;
}
