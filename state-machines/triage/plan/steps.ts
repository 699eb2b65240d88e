import type { Place } from '../../../shared/contract/chain.ts';
import type { TicketCommand } from '../../../shared/contract/commands.ts';
import type { ChangeKind, TriageRecord, Watch, WatchConditions } from '../../../shared/contract/triage.ts';
import { coldAheadMin, onForMin } from '../counting.ts';
import { baselineKind } from '../retest.ts';
import type { Step } from './fill-in.ts';

/** Commands as the plan offers them, with every field that has no default of its own. */

type StartWatch = Extract<TicketCommand, { type: 'startWatch' }>;

/** A record, and the moment at which something is asked of it (UTC, ISO 8601). */
type At = { record: TriageRecord; now: string };

/** Nothing is said of what a watch is under. */
const noConditions: WatchConditions = { sincePowerOnMin: null, asTold: null, content: null };

/** The longest that a watch can be planned for, in minutes: the contract's limit. */
const longestPlannedMin = 10_080;

/** A watch over time. @param watchMin as long as it is planned for; null: not said */
export const watchOverTime = (watchMin: number | null, menuDeviceId: string | null = null): StartWatch => ({
  type: 'startWatch',
  mode: 'time',
  trigger: null,
  triggerKind: null,
  plannedMin: watchMin === null ? null : Math.min(longestPlannedMin, Math.ceil(watchMin)),
  menuDeviceId,
  conditions: noConditions,
});

/** A watch that counts tries. @param by null: whoever watches says what they switch */
export const watchByTries = (
  by: Pick<Watch, 'trigger' | 'triggerKind'> | null,
  menuDeviceId: string | null = null,
): StartWatch => ({
  ...watchOverTime(null, menuDeviceId),
  mode: 'trigger',
  trigger: by?.trigger ?? null,
  triggerKind: by?.triggerKind ?? null,
});

/** One look, in which the fault is there or not. */
const lookOnce = (menuDeviceId: string | null): StartWatch => ({
  ...watchOverTime(null, menuDeviceId),
  mode: 'look',
});

/** A watch in the way in which the fault comes, or was seen to: a look, tries of what makes it come, or a watch over time. */
export function watchAsItComes(
  { record, now }: At,
  watchMin: number | null,
  menuDeviceId: string | null = null,
): StartWatch {
  const { pattern } = record.symptom;
  const [before] = baselineKind(record);
  const step = (): StartWatch => {
    if (pattern.kind === 'always') return lookOnce(menuDeviceId);
    if (before?.mode === 'trigger') return watchByTries(before, menuDeviceId);
    if (pattern.kind === 'trigger')
      return watchByTries({ trigger: null, triggerKind: pattern.trigger }, menuDeviceId);
    if (before?.mode === 'look') return lookOnce(menuDeviceId);
    return watchOverTime(watchMin === null ? null : watchMin + coldAheadMin(record, now), menuDeviceId);
  };
  return { ...step(), conditions: conditionsFor({ record, now }) };
}

/** What a watch is under that begins now and is as the fault comes; for how long everything has been on, at the least. */
export function conditionsFor({ record, now }: At): WatchConditions {
  const { pattern, onlyWith } = record.symptom;
  return {
    sincePowerOnMin:
      pattern.kind === 'warm' ? Math.min(longestPlannedMin, Math.floor(onForMin(record, now))) : null,
    asTold: onlyWith === null ? null : true,
    content: null,
  };
}

export const recordOccurrence = (menu: 'stayed' | 'vanished' | null = null): Step => ({
  type: 'recordOccurrence',
  durationS: null,
  menu,
  description: '',
});

export const judgeRetest: Step = { type: 'judgeRetest', override: null };

export const declareChange = (kind: ChangeKind, target: Place, ownKindId: string | null = null): Step => ({
  type: 'declareChange',
  kind,
  target,
  detail: '',
  settings: [],
  ownKindId,
  mayStay: false,
});

export const recordTry: Step = { type: 'recordTry' };
