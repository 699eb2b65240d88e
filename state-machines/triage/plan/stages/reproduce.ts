import { diaryDays } from '../../../../shared/contract/diary-names.ts';
import type { Offer, OverDays } from '../../../../shared/contract/plan.ts';
import type { Symptom, TriageRecord } from '../../../../shared/contract/triage.ts';
import {
  assumedRatePerHour,
  exposureOf,
  goodBaseline,
  isSteady,
  requiredQuiet,
  seenIn,
  type WatchRecord,
} from '../../../../shared/isolation/index.ts';
import { type Message, message } from '../../../../shared/message/message.ts';
import { coldAheadMin, warmFromMin } from '../../counting.ts';
import { quietOf } from '../../quiet.ts';
import {
  baselineWatches,
  occurrencesIn,
  occurrencesOf,
  reportsBeforeChanges,
  runningWatch,
  watchesFor,
} from '../../record.ts';
import { usable } from '../../retest.ts';
import type { Asked } from '../asked.ts';
import { baselineOf } from '../case-of.ts';
import type { Step } from '../fill-in.ts';
import { offering, type Stage, stage } from '../offer.ts';
import { overDaysOf, tooRare } from '../over-days.ts';
import { conditionsFor, watchAsItComes, watchByTries, watchOverTime } from '../steps.ts';
import { escalateOffer, whyInVain } from './hand-over.ts';
import { triesOfWhatMakesItCome, whatMadeItCome } from './how-it-comes.ts';
import { daysFrom, hasWaitedFor, usualUntil, waitForLogs, waitForReports } from './waiting.ts';
import { afterWatch, endOffer, type Left, seenOffers, triesInVain, waitingOffers } from './watching.ts';

/** Seeing the fault before anything is changed, often enough for the retests to come. */
export function reproduceStage(asked: Asked): Stage {
  const upToNow = untilNow(asked.record, asked.now);
  const baseline = baselineOf(upToNow);
  const looking =
    baseline === null || seenIn(baseline) === 0 ? unseenStage(asked, upToNow) : seenStage(asked, baseline);
  return inVainStage(asked, looking) ?? looking;
}

/** It came back once more after all that was done: somebody else's turn, without seeing it again first. */
function inVainStage({ record }: Asked, { offers }: Stage): Stage | null {
  const inVain = record.round === 1 || runningWatch(record) !== null ? null : whyInVain(record);
  const others = offers.filter(({ steps }) => steps.at(-1)?.type !== 'escalate');
  return inVain === null ? null : stage(inVain, [escalateOffer(record), ...others]);
}

/** The record as though the watch that runs had ended; a look has no end before it is said what was seen. */
function untilNow(record: TriageRecord, now: string): TriageRecord {
  const watches = record.watches.map((watch) =>
    watch.endedAt === null && watch.mode !== 'look' ? { ...watch, endedAt: now } : watch,
  );
  return { ...record, watches };
}

function unseenStage(asked: Asked, upToNow: TriageRecord): Stage {
  const { record } = asked;
  const reports = reportsBeforeChanges(record).length;
  if (reports >= goodBaseline) return reportedStage(record, reports);
  const rare = overDaysOf(asked);
  if (rare !== null) return rareStage(asked, rare);
  const quiet = quietOf(upToNow, usable(baselineWatches(upToNow)));
  const left = Math.max(0, quiet.needed - quiet.done);
  const tries = triesOfWhatMakesItCome(asked, upToNow);
  // What is there or not is tried first; what comes and goes by its nature is waited for first.
  const isTriedFirst = isSteady(record.symptom.kind) && runningWatch(record)?.mode !== 'time';
  if (tries !== null && (left === 0 || isTriedFirst)) return tries;
  if (left === 0) return shouldHaveShown(asked);
  const { pattern } = record.symptom;
  const leftMin = quiet.mode === 'time' ? left : null;
  const sentences = [...conditionsSaid(record), ...howToSee(record, left)];
  const said = message('sentences', { sentences });
  const waiting =
    quiet.mode === 'time'
      ? watchOffers(asked, { minutes: leftMin }, overTime(asked, left))
      : watchOffers(asked, { minutes: null, ...(quiet.mode === 'trigger' ? { tries: left } : {}) });
  return pattern.kind === 'random' && pattern.rarely
    ? stage(said, [...waiting, escalateOffer(record)])
    : stage(said, waiting);
}

/** What has to be playing, so that the fault can show at all. */
const conditionsSaid = ({ symptom: { onlyWith } }: TriageRecord): Message[] =>
  onlyWith === null
    ? []
    : [
        message('playWhatShowsIt', {
          kind: onlyWith.kind,
          what: onlyWith.what === '' ? null : onlyWith.what,
        }),
      ];

/** How a fault that comes like this is made to show. @param left minutes, tries or looks */
function howToSee(record: TriageRecord, left: number): Message[] {
  const { pattern, perHour } = record.symptom;
  const expected = { minutes: left, sureness: 1 - record.settings.risk };
  switch (pattern.kind) {
    case 'always':
      return [message('lookOnceForFault')];
    case 'trigger':
      return [message('tryWhatMakesItCome', { trigger: pattern.trigger, tries: left })];
    case 'random':
      return pattern.rarely ? [message('tooRareToWaitFor')] : [atRate(perHour, expected)];
    case 'bursts':
      return [message('watchForBursts'), atRate(perHour, expected)];
    case 'warm':
      return [message('watchOnceWarm', { after: warmFromMin(record) || null }), atRate(perHour, expected)];
    case 'notKnown':
      return [atRate(perHour, expected)];
  }
}

const atRate = (perHour: Symptom['perHour'], expected: { minutes: number; sureness: number }): Message =>
  perHour === null
    ? message('watchAtAssumedRate', { everyMin: 60 / assumedRatePerHour, ...expected })
    : message('watchAtToldRate', expected);

/** Waiting for the fault in the way in which it comes; where nothing is known of that, also by tries. */
function watchOffers(asked: Asked, left: Left, begin?: Step): Offer[] {
  const { record } = asked;
  const waiting = waitingOffers(asked, left, begin);
  return record.symptom.pattern.kind === 'notKnown' && runningWatch(record) === null
    ? [...waiting, offering(watchByTries(null))]
    : waiting;
}

/** The client reported it often enough to go on with, though nobody watched. */
const reportedStage = (record: TriageRecord, reports: number): Stage =>
  stage(message('reportedOftenEnough', { reports }), [
    afterWatch(record, { type: 'acceptReproduction' }),
    ...seenOffers(record),
    ...(runningWatch(record) === null ? [] : [endOffer(record)]),
    escalateOffer(record),
  ]);

/** Nobody waits on site for it: by minutes and days, its reports or the devices' logs, each of which is waited for once. */
function rareStage({ record, now }: Asked, rare: OverDays): Stage {
  const waits = rare.ways.flatMap(({ kind, days }) => {
    const until = daysFrom(now, Math.min(diaryDays.usual, Math.ceil(days)));
    if (kind === 'diary')
      return [{ isNew: !hasWaitedFor(record, 'client'), offer: waitForReports(record, until) }];
    return kind === 'logs'
      ? [{ isNew: !hasWaitedFor(record, 'other'), offer: waitForLogs(record, until) }]
      : [];
  });
  return stage(tooRare(rare), [
    ...waits.filter(({ isNew }) => isNew).map(({ offer }) => offer),
    escalateOffer(record),
    ...waits.filter(({ isNew }) => !isNew).map(({ offer }) => offer),
    ...seenOffers(record),
    ...(runningWatch(record) === null ? [] : [endOffer(record)]),
  ]);
}

/** Where minutes are asked for, tries made before the pattern was told otherwise don't make them tries. */
const overTime = ({ record, now }: Asked, minutes: number): Step => ({
  ...watchOverTime(minutes + coldAheadMin(record, now)),
  conditions: conditionsFor({ record, now }),
});

/** It was watched for as long as it takes: more of the same tells nothing. */
function shouldHaveShown(asked: Asked): Stage {
  const { record } = asked;
  const { pattern, onlyWith } = record.symptom;
  const noFault = { type: 'chooseRemedy', remedy: { kind: 'noFaultFound' } } as const;
  const tried = watchesFor(record, 'reproduce').some(({ mode, tries }) => mode === 'trigger' && tries > 0);
  const isOtherwise = pattern.kind === 'always' || pattern.kind === 'trigger';
  const tries = tried || isOtherwise || runningWatch(record) !== null ? [] : [offering(watchByTries(null))];
  // The client saw it come: whoever lives there will again, and can say when and with what.
  const asksClient = (!isOtherwise || onlyWith !== null) && !hasWaitedFor(record, 'client');
  return stage(message(isOtherwise ? 'wasNotAsTold' : 'shouldHaveShown'), [
    ...(isOtherwise ? [comesAndGoes(record)] : []),
    ...(asksClient ? [waitForReports(record, usualUntil(asked.now))] : []),
    ...(isOtherwise ? [] : tries),
    afterWatch(record, noFault),
    ...seenOffers(record),
    endOffer(record),
    escalateOffer(record),
  ]);
}

/** What was told to be always there, or to come on a trigger, and did not, comes and goes by itself. */
const comesAndGoes = (record: TriageRecord): Offer =>
  afterWatch(
    record,
    {
      type: 'amendIntake',
      symptom: { ...record.symptom, pattern: { kind: 'random', rarely: false } },
    } as Step,
    { text: message('itComesAndGoes') },
  );

function seenStage(asked: Asked, baseline: WatchRecord): Stage {
  const { record } = asked;
  const seen = seenIn(baseline);
  const accept = afterWatch(record, { type: 'acceptReproduction' });
  const more = worthWatchingOn(asked, baseline);
  const came = whatMadeItCome(record);
  if (more === null) {
    const reproduced = message('faultReproduced', { seen });
    const said =
      came.length === 0
        ? reproduced
        : message('sentences', { sentences: [reproduced, message('sayWhatMadeItCome')] });
    return stage(said, [accept, ...came, ...seenOffers(record), endOffer(record)]);
  }
  const known = { seen, enough: goodBaseline };
  return baseline.mode === 'time'
    ? stage(
        message('seenWatchForMore', {
          ...known,
          moreMin: more.more,
          retestMin: more.retest,
          thenRetestMin: more.thenRetest,
        }),
        [...waitingOffers(asked, { minutes: more.more }), accept],
      )
    : stage(
        message('seenTryForMore', {
          ...known,
          moreTries: more.more,
          retestTries: more.retest,
          thenRetestTries: more.thenRetest,
        }),
        [...waitingOffers(asked, { minutes: null, tries: more.more }), ...came, accept],
      );
}

/** Nobody makes so many tries more for a better measure; assumed. */
const mostTriesMore = 3 * triesInVain;

/**
 * Whether watching on before any change, or trying on, is repaid by shorter retests, and how, in minutes or tries; null
 * where it isn't, or was tried: what is left of the time in which the fault should have come often enough runs out while it
 * stays away.
 */
function worthWatchingOn({ record, now }: Asked, baseline: WatchRecord) {
  const seen = seenIn(baseline);
  // By looks neither time nor tries are gathered.
  const isLook = baseline.mode === 'look' || watchAsItComes({ record, now }, null).mode === 'look';
  if (seen >= goodBaseline || isLook) return null;
  const isTimed = baseline.mode === 'time';
  const { risk } = record.settings;
  const quiet = isTimed ? minutesSinceSeen(record, now) : triesSinceSeen(record);
  const done = exposureOf(baseline);
  const retest = requiredQuiet(baseline, risk);
  // What came soon once need not come so soon again, where it was told to come more rarely.
  const told = isTimed && record.symptom.perHour !== null ? [60 / record.symptom.perHour] : [];
  const ways = [Math.max(done - quiet, 1) / seen, ...told].flatMap((every) => {
    const more = (goodBaseline - seen) * every - quiet;
    const thenRetest = requiredQuiet(goodAfter(baseline, more), risk);
    return more > 0 && retest !== null && thenRetest !== null && retest > thenRetest + more
      ? [{ more: isTimed ? more : Math.ceil(more), retest, thenRetest }]
      : [];
  });
  const [longest] = ways.toSorted((one, other) => other.more - one.more);
  return longest === undefined || (!isTimed && longest.more >= mostTriesMore) ? null : longest;
}

/** The fault as seen often enough, after so many minutes or tries more. */
const goodAfter = (baseline: WatchRecord, more: number): WatchRecord =>
  baseline.mode === 'time'
    ? { mode: 'time', occurrences: goodBaseline, minutes: baseline.minutes + more }
    : {
        mode: 'trigger',
        failures: goodBaseline,
        tries: Math.max(goodBaseline, Math.ceil(exposureOf(baseline) + more)),
      };

/** Minutes that were watched since the fault was seen last. */
function minutesSinceSeen(record: TriageRecord, now: string): number {
  const watches = baselineWatches(record);
  const lastMs = Math.max(...occurrencesIn(watches).map(({ at }) => Date.parse(at)));
  return watches.reduce((sum, { startedAt, endedAt }) => {
    const fromMs = Math.max(Date.parse(startedAt), lastMs);
    return sum + Math.max(0, Date.parse(endedAt ?? now) - fromMs) / 60_000;
  }, 0);
}

/** Tries that were made in watches after the last one in which one failed. */
function triesSinceSeen(record: TriageRecord): number {
  const watches = baselineWatches(record);
  const last = watches.findLastIndex((watch) => occurrencesOf(watch).length > 0);
  return watches.slice(last + 1).reduce((sum, { tries }) => sum + tries, 0);
}
