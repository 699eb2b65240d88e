import type { TriageRecord } from '../../../../shared/contract/triage.ts';
import {
  assumedRatePerHour,
  goodBaseline,
  noFaultFoundWatchMin,
  requiredQuietWatchMin,
} from '../../../../shared/isolation/index.ts';
import { message } from '../../../../shared/message/message.ts';
import { baselineWatches, minutesBetween, occurrencesIn, runningWatch, watchesFor } from '../../record.ts';
import type { Asked } from '../asked.ts';
import { baselineOf } from '../case-of.ts';
import { offering, type Stage, stage } from '../offer.ts';
import { watchByTries, watchOverTime } from '../steps.ts';
import { escalateOffer } from './hand-over.ts';
import { afterWatch, endOffer, seenOffers, waitingOffers } from './watching.ts';

/** Seeing the fault before anything is changed, often enough for the retests to come. */
export function reproduceStage(asked: Asked): Stage {
  const { record, now } = asked;
  const watches = baselineWatches(record);
  const seen = occurrencesIn(watches).length;
  const watchedMin = watches.reduce(
    (sum, watch) => sum + minutesBetween(watch.startedAt, watch.endedAt ?? now),
    0,
  );
  if (seen === 0) return unseenStage(asked, watchedMin);
  return seenStage(asked, { seen, watchedMin });
}

function unseenStage(asked: Asked, watchedMin: number): Stage {
  const { record } = asked;
  const { risk } = record.settings;
  const patienceMin = noFaultFoundWatchMin(record.symptom.perHour, risk);
  const leftMin = Math.max(0, patienceMin - watchedMin);
  if (leftMin === 0) return shouldHaveShown(record);
  const expected = { minutes: leftMin, sureness: 1 - risk };
  return stage(
    record.symptom.perHour === null
      ? message('watchAtAssumedRate', { everyMin: 60 / assumedRatePerHour, ...expected })
      : message('watchAtToldRate', expected),
    [
      ...waitingOffers(asked, { minutes: leftMin }, watchOverTime(leftMin)),
      ...(runningWatch(record) === null ? [offering(watchByTries(null))] : []),
    ],
  );
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

function seenStage(asked: Asked, { seen, watchedMin }: { seen: number; watchedMin: number }): Stage {
  const { record } = asked;
  const accept = afterWatch(record, { type: 'acceptReproduction' });
  const more = worthWatchingOn(asked, seen, watchedMin);
  if (more === null)
    return stage(message('faultReproduced', { seen }), [accept, ...seenOffers(record), endOffer()]);
  return stage(message('seenWatchForMore', { seen, enough: goodBaseline, ...more }), [
    ...waitingOffers(asked, { minutes: more.moreMin }),
    accept,
  ]);
}

/**
 * Whether watching on before any change is repaid by shorter retests, and how; null where it isn't, or was tried: what is
 * left of the time in which the fault should have come often enough runs out while it stays away.
 */
function worthWatchingOn({ record, now }: Asked, seen: number, watchedMin: number) {
  if (seen >= goodBaseline || baselineOf(record)?.mode === 'trigger') return null;
  const { risk } = record.settings;
  const quietMin = minutesSinceSeen(record, now);
  const moreMin = ((goodBaseline - seen) * Math.max(watchedMin - quietMin, 1)) / seen - quietMin;
  const retestMin = requiredQuietWatchMin(seen, watchedMin, risk);
  const thenRetestMin = requiredQuietWatchMin(goodBaseline, watchedMin + moreMin, risk);
  return moreMin > 0 && retestMin !== null && thenRetestMin !== null && retestMin > thenRetestMin + moreMin
    ? { moreMin, retestMin, thenRetestMin }
    : null;
}

/** Minutes that were watched since the fault was seen last. */
function minutesSinceSeen(record: TriageRecord, now: string): number {
  const watches = baselineWatches(record);
  const lastMs = Math.max(...occurrencesIn(watches).map(({ at }) => Date.parse(at)));
  return watches.reduce((sum, { startedAt, endedAt }) => {
    const fromMs = Math.max(Date.parse(startedAt), lastMs);
    return sum + Math.max(0, Date.parse(endedAt ?? now) - fromMs) / 60_000;
  }, 0);
}
