import { placeName } from '../../../shared/chain/place.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { TicketCommandType } from '../../../shared/contract/commands.ts';
import type { TriageRecord, Watch } from '../../../shared/contract/triage.ts';
import {
  goodBaseline,
  noFaultFoundWatchMin,
  requiredQuietWatchMin,
} from '../../../shared/isolation/index.ts';
import { minutesNeeded, percent, times } from '../../../shared/isolation/wording.ts';
import { minutesBetween, occurrencesIn, occurrencesOf, runningWatch, watchesFor } from '../record.ts';
import { baselineOf } from './case-of.ts';
import type { Known } from './known.ts';
import { type Step, step } from './step-form.ts';

export function baselineStep(record: TriageRecord, { findings }: Known): Step {
  const open: [boolean, string, TicketCommandType][] = [
    [record.audit === null, 'look through the audit', 'reviewAudit'],
    [record.whatChanged === null, 'ask what has changed since it last worked', 'answerWhatChanged'],
    [record.asFound === null, 'record the chain as you found it', 'recordAsFound'],
  ];
  const left = open.filter(([isOpen]) => isOpen);
  const urgent = findings.find(({ severity }) => severity === 'mustFix');
  const prerequisite =
    urgent === undefined ? '' : ` Worth knowing before anything else: ${urgent.text} ${urgent.whatToDo}`;
  const sentence = `Before looking for the fault, ${left.map(([, words]) => words).join(', ')}.${prerequisite}`;
  return step(
    sentence,
    left.map(([, , command]) => command),
  );
}

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
    const told =
      record.symptom.perHour === null
        ? 'With no rate told, one in two hours is assumed'
        : 'At the rate the client tells';
    return leftMin > 0
      ? step(
          `Watch for the fault as the client sees it, and touch nothing. ${told}, it should show within ${minutesNeeded(leftMin)} (${percent(1 - risk)}).`,
          [running === null ? 'startWatch' : 'recordOccurrence'],
          leftMin,
        )
      : step(
          `It should have shown by now. Try what makes it come (switching, warming up, the content the client named), or settle on “no fault found”.`,
          ['startWatch', 'chooseRemedy'],
        );
  }
  if (seen < goodBaseline && baseline?.mode !== 'trigger') {
    const perMin = seen / Math.max(watchedMin, 1);
    const moreMin = (goodBaseline - seen) / perMin;
    const nowMin = requiredQuietWatchMin(seen, watchedMin, risk);
    const thenMin = requiredQuietWatchMin(goodBaseline, watchedMin + moreMin, risk);
    if (nowMin !== null && thenMin !== null && nowMin > thenMin + moreMin) {
      return step(
        `Seen ${times(seen)}. Watch on until it was seen ${goodBaseline} times (about ${minutesNeeded(moreMin)} more): every quiet retest then takes ${minutesNeeded(thenMin)} instead of ${minutesNeeded(nowMin)}.`,
        [running === null ? 'startWatch' : 'recordOccurrence', 'acceptReproduction'],
        moreMin,
      );
    }
  }
  return step(`Seen ${times(seen)}: the fault is reproduced. Go on and find the side.`, [
    ...(running === null ? [] : (['endWatch'] as const)),
    'acceptReproduction',
  ]);
}

/** A watch with a menu up that has its answer, or that still runs; null when a device has to be chosen. */
export function sideWatchStep(record: TriageRecord, chain: Chain): Step | null {
  const running = runningWatch(record);
  const nameOf = (watch: Watch) => placeName(chain, { kind: 'device', deviceId: watch.menuDeviceId ?? '' });
  if (running !== null) {
    const seen = occurrencesOf(running).length;
    return seen === 0
      ? step(
          `The menu of ${nameOf(running)} is up: wait for the fault, then say whether the menu stayed or vanished. One occurrence answers.`,
          ['recordOccurrence', 'endWatch'],
        )
      : step(
          `Seen ${times(seen)} with the menu of ${nameOf(running)} up: end the watch and conclude the side.`,
          ['endWatch', 'concludeSide'],
        );
  }
  const concluded = new Set(
    record.sides.flatMap(({ deviceId, withdrawn }) => (withdrawn === null ? [deviceId] : [])),
  );
  const answered = watchesFor(record, 'side').find(
    (watch) => occurrencesOf(watch).length > 0 && !concluded.has(watch.menuDeviceId ?? ''),
  );
  return answered === undefined
    ? null
    : step(`Conclude the side at ${nameOf(answered)} from what you saw.`, ['concludeSide']);
}
