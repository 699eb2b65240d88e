import type { Chain } from '../../../shared/contract/chain.ts';
import type { TriageRecord, Watch } from '../../../shared/contract/triage.ts';
import { message } from '../../../shared/message/message.ts';
import { type CompleteCommandOf, type EventOf, momentOf, type Outcomes } from '../events.ts';
import { changeInPlace, changeToConfirm, isShownAtAll, runningWatch } from '../record.ts';
import { whyNoMenuDevice } from '../segment.ts';
import { supersede } from './changes.ts';
import { because, type Cause } from './refusal.ts';
import { firstOf, nothingUnattended, noWatchRuns, rule } from './rule.ts';
import { refuseTooEarly, startOf } from './timing.ts';
import { retestIsOpen } from './unattended.ts';

type StartWatch = CompleteCommandOf<'startWatch'>;

type Trigger = Pick<Watch, 'trigger' | 'triggerKind'>;

/** The trigger of a watch in trigger mode: as sent, or the one used last. */
function triggerOf(record: TriageRecord, { mode, trigger, triggerKind }: StartWatch): Trigger {
  if (mode !== 'trigger') return { trigger: null, triggerKind: null };
  if (trigger !== null || isNamed(triggerKind)) return { trigger, triggerKind };
  const last = record.watches.findLast((watch) => watch.mode === 'trigger');
  return { trigger: last?.trigger ?? null, triggerKind: last?.triggerKind ?? null };
}

/** Whether the name alone says what to do. */
const isNamed = (triggerKind: Watch['triggerKind']): boolean =>
  triggerKind !== null && triggerKind !== 'other';

function refuseWatch(record: TriageRecord, event: StartWatch): Cause | null {
  if (record.watches.some((watch) => watch.id === event.watchId)) {
    return because('already-exists', message('watchIdTaken'));
  }
  const { trigger, triggerKind } = triggerOf(record, event);
  if (event.mode === 'trigger' && trigger === null && !isNamed(triggerKind)) {
    return because('invalid-input', message('triggerMissing'));
  }
  return refuseTooEarly(record, event);
}

type About = Pick<Watch, 'purpose'> & Partial<Pick<Watch, 'menuDeviceId' | 'changeId'>>;
const starting = (record: TriageRecord, command: StartWatch, about: About): Outcomes['startWatch'] => ({
  menuDeviceId: null,
  changeId: null,
  ...about,
  ...triggerOf(record, command),
  startedAt: startOf(record, command),
});

function withWatch(record: TriageRecord, event: EventOf<'startWatch'>): TriageRecord {
  const watch: Watch = {
    id: event.watchId,
    round: record.round,
    mode: event.mode,
    plannedMin: event.plannedMin,
    conditions: event.conditions,
    ...event.outcome,
    endedAt: null,
    tries: 0,
    occurrences: [],
    by: event.by,
    voided: null,
  };
  return { ...record, watches: [...record.watches, watch] };
}

export const startReproduceWatch = rule('startWatch', {
  ready: noWatchRuns,
  refuse: refuseWatch,
  outcome: (record, command) => starting(record, command, { purpose: 'reproduce' }),
  apply: withWatch,
});

export const startSideWatch = rule('startWatch', {
  ready: firstOf(noWatchRuns, (record) =>
    record.asFound === null ? because('not-allowed-now', message('recordAsFoundFirst')) : null,
  ),
  refuse: (record, event) =>
    refuseMenuDevice(record.asFound?.chain, event.menuDeviceId) ?? refuseWatch(record, event),
  outcome: (record, command) =>
    starting(record, command, { purpose: 'side', menuDeviceId: command.menuDeviceId }),
  apply: withWatch,
});

function refuseMenuDevice(chain: Chain | undefined, deviceId: string | null): Cause | null {
  if (deviceId === null || chain === undefined) {
    return because('device-not-suitable', message('menuDeviceMissing'));
  }
  const why = whyNoMenuDevice(chain, deviceId);
  return why === null ? null : because('device-not-suitable', why, { place: { kind: 'device', deviceId } });
}

export const startRetestWatch = rule('startWatch', {
  ready: firstOf(noWatchRuns, nothingUnattended, retestIsOpen),
  refuse: refuseWatch,
  outcome: (record, command) =>
    starting(record, command, { purpose: 'retest', changeId: changeInPlace(record)?.id ?? null }),
  apply: (record, event) => {
    const { changeId } = event.outcome;
    const reopened = record.changes.map((change) =>
      change.id === changeId
        ? { ...supersede(change, 'watchedOn', event), status: 'applied' as const }
        : change,
    );
    return withWatch({ ...record, changes: reopened }, event);
  },
});

export const startConfirmWatch = rule('startWatch', {
  ready: firstOf(noWatchRuns, (record) =>
    changeToConfirm(record) === null ? because('not-allowed-now', message('nothingToConfirm')) : null,
  ),
  refuse: refuseWatch,
  outcome: (record, command) =>
    starting(record, command, { purpose: 'confirm', changeId: changeToConfirm(record)?.id ?? null }),
  apply: withWatch,
});

export const startVerifyWatch = rule('startWatch', {
  ready: noWatchRuns,
  refuse: refuseWatch,
  outcome: (record, command) => starting(record, command, { purpose: 'verify' }),
  apply: withWatch,
});

export const watchRuns = (record: TriageRecord): Cause | null =>
  runningWatch(record) === null ? because('no-watch-running', message('noWatchRunning')) : null;

const inRunning = (record: TriageRecord, change: (watch: Watch) => Watch): TriageRecord => ({
  ...record,
  watches: record.watches.map((watch) => (watch.endedAt === null ? change(watch) : watch)),
});

export const recordOccurrence = rule('recordOccurrence', {
  ready: watchRuns,
  refuse: (record, event) => {
    const watch = runningWatch(record);
    if (record.watches.some((each) => each.occurrences.some(({ id }) => id === event.occurrenceId))) {
      return because('already-exists', message('occurrenceIdTaken'));
    }
    if (watch?.purpose === 'side' && event.menu === null) {
      return because('menu-answer-missing', message('menuAnswerMissing'));
    }
    return watch !== null && Date.parse(momentOf(event)) < Date.parse(watch.startedAt)
      ? because('time-out-of-order', message('watchBeganLater', { began: watch.startedAt }))
      : null;
  },
  apply: (record, event) =>
    inRunning(record, (watch) => ({
      ...watch,
      tries: watch.mode === 'trigger' ? watch.tries + 1 : 0,
      occurrences: [
        ...watch.occurrences,
        {
          id: event.occurrenceId,
          at: momentOf(event),
          corrections: [],
          durationS: event.durationS,
          menu: event.menu,
          description: event.description,
          withdrawn: null,
        },
      ],
    })),
});

export const recordTry = rule('recordTry', {
  ready: firstOf(watchRuns, (record) =>
    runningWatch(record)?.mode === 'trigger' ? null : because('not-allowed-now', message('watchCountsTime')),
  ),
  apply: (record) => inRunning(record, (watch) => ({ ...watch, tries: watch.tries + 1 })),
});

export const endWatch = rule('endWatch', {
  ready: watchRuns,
  refuse: (record, event) => {
    const watch = runningWatch(record);
    if (watch === null) return null;
    const last = [watch.startedAt, ...watch.occurrences.map(({ at }) => at)];
    return last.some((at) => Date.parse(momentOf(event)) < Date.parse(at))
      ? because('time-out-of-order', message('endBeforeSeen', { moment: momentOf(event) }))
      : null;
  },
  apply: (record, event) => inRunning(record, (watch) => ({ ...watch, endedAt: momentOf(event) })),
});

export const acceptReproduction = rule('acceptReproduction', {
  ready: firstOf(noWatchRuns, (record) =>
    isShownAtAll(record) ? null : because('no-occurrence', message('faultNotSeenYet')),
  ),
  apply: (record) => ({ ...record, reproductionAccepted: true }),
});
