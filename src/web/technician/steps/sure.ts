import type { TriageRecord, Watch } from '../../../../shared/contract/triage.ts';
import { goodBaseline } from '../../../../shared/isolation/quiet-length.ts';
import { amountsOf, howSureByNow, type RetestNeed } from '../../../../shared/isolation/retest-statistics.ts';
import { counted, whyNotCounted } from '../../../../state-machines/triage/counting.ts';
import { quietOf } from '../../../../state-machines/triage/quiet.ts';
import {
  baselineWatches,
  occurrencesIn,
  occurrencesOf,
  retestWatches,
  verifyWatches,
  watchesFor,
} from '../../../../state-machines/triage/record.ts';
import { baselineFor, watchRecordOf } from '../../../../state-machines/triage/retest.ts';
import { percent } from '../../words/percent.ts';
import { said } from '../../words/sentence.tsx';
import { lengthOfTime } from '../../words/times.ts';
import { conditionWords } from './condition-words.ts';
import { watchWords } from './watch-words.ts';

/** What a running watch says by now: in words, how far along it is (0..1, null where that has no meaning), and whether it has said all it can. */
export type SoFar = { text: string; more: string | null; progress: number | null; isDone: boolean };

/** @param now UTC, ISO 8601 */
export function soFar(record: TriageRecord, watch: Watch, now: string): SoFar {
  const upToNow = { ...watch, endedAt: now };
  const seen = occurrencesOf(watch).length;
  switch (watch.purpose) {
    case 'reproduce':
      return reproduction(record, upToNow);
    case 'side':
      return { ...plainly(seen === 0 ? watchWords().sideNone : watchWords().sideSeen), isDone: seen > 0 };
    case 'confirm':
      return {
        ...plainly(seen === 0 ? watchWords().confirmNone : watchWords().confirmSeen),
        isDone: seen > 0,
      };
    case 'retest':
    case 'verify':
      return quiet(record, upToNow);
  }
}

const plainly = (text: string) => ({ text, more: null, progress: null, isDone: false });

function reproduction(record: TriageRecord, watch: Watch): SoFar {
  const t = watchWords();
  const watches = watchesFor(record, 'reproduce').map((each) => (each.id === watch.id ? watch : each));
  const seen = occurrencesIn(baselineWatches(record)).length;
  if (seen >= goodBaseline) return { ...plainly(t.baselineGood), progress: 1, isDone: true };
  if (watch.mode === 'look') return plainly('');
  if (seen > 0) return { ...plainly(t.baselineMore(seen)), progress: seen / goodBaseline };
  const { mode, done, needed } = quietOf(record, watches);
  const left = Math.ceil(Math.max(0, needed - done));
  return plainly(mode === 'trigger' ? t.notYetTried(left) : t.notYet(lengthOfTime(left)));
}

/** Without the fault it gets surer by the minute; the watches of this change that have ended count as well. */
function quiet(record: TriageRecord, watch: Watch): SoFar {
  const t = watchWords();
  const before = (
    watch.purpose === 'retest' ? retestWatches(record, watch.changeId ?? '') : verifyWatches(record)
  ).filter((each) => each.id !== watch.id && each.mode === watch.mode);
  // A look has nothing to say before it is over.
  if (watch.mode === 'look') return plainly('');
  const watches = counted(record, [...before, watch]);
  const why = whyNotCounted(record, watch);
  if (why !== null) return plainly(said(why).text);
  const { baseline, options } = baselineFor(record, watch);
  const { sure, needed, progress, sentence } = howSureByNow(
    baseline,
    watchRecordOf(record, watches),
    options,
  );
  if (occurrencesIn(watches).length > 0) {
    const text = watch.purpose === 'retest' ? t.cameAnyway : t.cameAfterRemedy;
    return { ...plainly(text), isDone: true };
  }
  if (sure === null || needed === null) return { ...plainly(t.cannotJudge), more: said(sentence).text };
  const isDone = remainingOf(needed) <= 0;
  return {
    text: watch.purpose === 'retest' ? t.sureOfChange(percent(sure)) : t.sureOfRemedy(percent(sure)),
    more: isDone ? t.quietEnough : moreWords(needed),
    progress,
    isDone,
  };
}

const remainingOf = (need: RetestNeed): number => amountsOf(need).remaining;

export function moreWords(need: RetestNeed): string {
  const t = watchWords();
  const { remaining } = amountsOf(need);
  switch (need.mode) {
    case 'time':
      return t.moreMinutes(lengthOfTime(Math.ceil(remaining)));
    case 'trigger':
      return t.moreTries(remaining);
    case 'look':
      return conditionWords().moreLooks(remaining);
  }
}
