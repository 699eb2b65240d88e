import type { TriageRecord, Watch } from '../../../../shared/contract/triage.ts';
import type { RetestNeed } from '../../../../shared/isolation/index.ts';
import { quietOf } from '../../quiet.ts';
import { occurrencesOf } from '../../record.ts';
import { fullNeedOf, usable } from '../../retest.ts';
import { type Left, triesInVain } from './watching.ts';

/** Good looks in a row after which more of them are not asked for; assumed. */
const looksInVain = 5;
export const goodLooks = (watches: readonly Watch[]): number =>
  watches.filter((watch) => watch.mode === 'look' && occurrencesOf(watch).length === 0).length;

/**
 * Minutes, tries or looks that are left where no length of quiet would settle it: as long as it takes for a fault that comes
 * as reported to show. More of it would tell no more.
 */
export function leftAnyway(record: TriageRecord, watches: readonly Watch[]): number {
  const tries = watches.reduce((sum, watch) => sum + watch.tries, 0);
  const { done, needed } = quietOf(record, watches);
  return tries >= triesInVain || goodLooks(watches) >= looksInVain ? 0 : Math.max(0, needed - done);
}

/**
 * What judging still takes; null where nothing settles it, or more looks than anybody takes: a fault that was told to be
 * always there comes and goes.
 */
export function stillNeeded(
  record: TriageRecord,
  watches: readonly Watch[],
  needed: RetestNeed | null,
): RetestNeed | null {
  const made = usable(watches);
  const need = made.length === 0 ? fullNeedOf(record) : needed;
  return goodLooks(made) >= looksInVain ? null : need;
}

export function leftOf(need: RetestNeed): Left {
  switch (need.mode) {
    case 'time':
      return { minutes: need.remainingMin };
    case 'trigger':
      return { minutes: null, tries: need.remainingTries };
    case 'look':
      return { minutes: null };
  }
}
