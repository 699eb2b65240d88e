import type { TriageRecord, Watch } from '../../../../shared/contract/triage.ts';
import type { RetestNeed } from '../../../../shared/isolation/index.ts';
import { quietOf } from '../../quiet.ts';
import { type Left, triesInVain } from './watching.ts';

/**
 * Minutes, tries or looks that are left where no length of quiet would settle it: as long as it takes for a fault that comes
 * as reported to show. More of it would tell no more.
 */
export function leftAnyway(record: TriageRecord, watches: readonly Watch[]): number {
  const tries = watches.reduce((sum, watch) => sum + watch.tries, 0);
  const { done, needed } = quietOf(record, watches);
  return tries >= triesInVain ? 0 : Math.max(0, needed - done);
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
