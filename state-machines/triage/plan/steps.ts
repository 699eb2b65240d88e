import type { Place } from '../../../shared/contract/chain.ts';
import type { ChangeKind, TriageRecord, Watch } from '../../../shared/contract/triage.ts';
import { baselineWatches, occurrencesOf } from '../record.ts';
import { usable } from '../retest.ts';
import { baselineOf } from './case-of.ts';
import type { Step } from './fill-in.ts';

/** Commands as the plan offers them, with every field that has no default of its own. */

type StartWatch = Extract<Step, { type: 'startWatch' }>;

/** The longest that a watch can be planned for, in minutes: the contract's limit. */
const longestPlannedMin = 10_080;

/** A watch over time. @param watchMin as long as it is planned for; null: not said */
export const watchOverTime = (watchMin: number | null, menuDeviceId: string | null = null): StartWatch => ({
  type: 'startWatch',
  mode: 'time',
  trigger: null,
  plannedMin: watchMin === null ? null : Math.min(longestPlannedMin, Math.ceil(watchMin)),
  menuDeviceId,
});

/** A watch that counts tries. @param trigger null: whoever watches says what they switch */
export const watchByTries = (trigger: string | null, menuDeviceId: string | null = null): StartWatch => ({
  type: 'startWatch',
  mode: 'trigger',
  trigger,
  plannedMin: null,
  menuDeviceId,
});

/** The tries by which the fault was reproduced, most failures first; null where it was seen over time. */
function triggerBefore(record: TriageRecord): Watch['trigger'] {
  if (baselineOf(record)?.mode !== 'trigger') return null;
  const seen = (watch: Watch) => occurrencesOf(watch).length;
  const tried = usable(baselineWatches(record)).filter(({ mode }) => mode === 'trigger');
  return tried.toSorted((a, b) => seen(b) - seen(a))[0]?.trigger ?? null;
}

/** A watch in the mode in which the fault was seen before. */
export function watchAsBefore(record: TriageRecord, watchMin: number | null): StartWatch {
  return baselineOf(record)?.mode === 'trigger'
    ? watchByTries(triggerBefore(record))
    : watchOverTime(watchMin);
}

/** A watch with a device's menu up, in the mode in which the fault was seen before. @param watchMin at most */
export function watchMenu(record: TriageRecord, watchMin: number, deviceId: string): StartWatch {
  return baselineOf(record)?.mode === 'trigger'
    ? watchByTries(triggerBefore(record), deviceId)
    : watchOverTime(watchMin, deviceId);
}

export const recordOccurrence = (menu: 'stayed' | 'vanished' | null = null): Step => ({
  type: 'recordOccurrence',
  durationS: null,
  menu,
  description: '',
});

export const judgeRetest: Step = { type: 'judgeRetest', override: null };

export const declareChange = (kind: ChangeKind, target: Place): Step => ({
  type: 'declareChange',
  kind,
  target,
  detail: '',
  settings: [],
});

export const recordTry: Step = { type: 'recordTry' };
