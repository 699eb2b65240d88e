import { namedPlace } from '../../../shared/chain/named-place.ts';
import type { Chain, Finding } from '../../../shared/contract/chain.ts';
import type { TicketCommandType } from '../../../shared/contract/commands.ts';
import type { TriageRecord, Watch } from '../../../shared/contract/triage.ts';
import {
  assumedRatePerHour,
  goodBaseline,
  noFaultFoundWatchMin,
  requiredQuietWatchMin,
} from '../../../shared/isolation/index.ts';
import { type Message, message } from '../../../shared/message/message.ts';
import { minutesBetween, occurrencesIn, occurrencesOf, runningWatch, watchesFor } from '../record.ts';
import { baselineOf } from './case-of.ts';
import type { Known } from './known.ts';
import { type Step, step } from './step-form.ts';

export function baselineStep(record: TriageRecord, { findings }: Known): Step {
  const open: [boolean, Message, TicketCommandType][] = [
    [record.audit === null, message('lookThroughAudit'), 'reviewAudit'],
    [record.whatChanged === null, message('askWhatChanged'), 'answerWhatChanged'],
    [record.asFound === null, message('recordChainAsFound'), 'recordAsFound'],
  ];
  const left = open.filter(([isOpen]) => isOpen);
  const urgent = findings.find(({ severity }) => severity === 'mustFix');
  const sentences = [
    message('beforeLooking', { todo: left.map(([, order]) => order) }),
    ...(urgent === undefined ? [] : [worthKnowing(urgent)]),
  ];
  return step(
    message('sentences', { sentences }),
    left.map(([, , command]) => command),
  );
}

const worthKnowing = ({ text, whatToDo }: Finding): Message =>
  message('worthKnowingFirst', { finding: text, whatToDo });

export function reproduceStep(record: TriageRecord, now: string): Step {
  const baseline = baselineOf(record);
  const running = runningWatch(record);
  const seen = occurrencesIn(watchesFor(record, 'reproduce')).length;
  const { risk } = record.settings;
  const patienceMin = noFaultFoundWatchMin(record.symptom.perHour, risk);
  const watchedMin = watchesFor(record, 'reproduce').reduce(
    (sum, watch) => sum + minutesBetween(watch.startedAt, watch.endedAt ?? now),
    0,
  );
  if (seen === 0) {
    const leftMin = Math.max(0, patienceMin - watchedMin);
    const expected = { minutes: leftMin, sureness: 1 - risk };
    return leftMin > 0
      ? step(
          record.symptom.perHour === null
            ? message('watchAtAssumedRate', { everyMin: 60 / assumedRatePerHour, ...expected })
            : message('watchAtToldRate', expected),
          [running === null ? 'startWatch' : 'recordOccurrence'],
          leftMin,
        )
      : step(message('shouldHaveShown'), ['startWatch', 'chooseRemedy']);
  }
  if (seen < goodBaseline && baseline?.mode !== 'trigger') {
    const perMin = seen / Math.max(watchedMin, 1);
    const moreMin = (goodBaseline - seen) / perMin;
    const retestMin = requiredQuietWatchMin(seen, watchedMin, risk);
    const thenRetestMin = requiredQuietWatchMin(goodBaseline, watchedMin + moreMin, risk);
    if (retestMin !== null && thenRetestMin !== null && retestMin > thenRetestMin + moreMin) {
      return step(
        message('seenWatchForMore', { seen, enough: goodBaseline, moreMin, thenRetestMin, retestMin }),
        [running === null ? 'startWatch' : 'recordOccurrence', 'acceptReproduction'],
        moreMin,
      );
    }
  }
  return step(message('faultReproduced', { seen }), [
    ...(running === null ? [] : (['endWatch'] as const)),
    'acceptReproduction',
  ]);
}

/** A watch with a menu up that has its answer, or that still runs; null when a device has to be chosen. */
export function sideWatchStep(record: TriageRecord, chain: Chain): Step | null {
  const running = runningWatch(record);
  const placeOf = (watch: Watch) => namedPlace(chain, { kind: 'device', deviceId: watch.menuDeviceId ?? '' });
  if (running !== null) {
    const seen = occurrencesOf(running).length;
    return seen === 0
      ? step(message('menuUpWait', { place: placeOf(running) }), ['recordOccurrence', 'endWatch'])
      : step(message('menuUpSeen', { seen, place: placeOf(running) }), ['endWatch', 'concludeSide']);
  }
  const concluded = new Set(
    record.sides.flatMap(({ deviceId, withdrawn }) => (withdrawn === null ? [deviceId] : [])),
  );
  const answered = watchesFor(record, 'side').find(
    (watch) => occurrencesOf(watch).length > 0 && !concluded.has(watch.menuDeviceId ?? ''),
  );
  return answered === undefined
    ? null
    : step(message('concludeSideAt', { place: placeOf(answered) }), ['concludeSide']);
}
