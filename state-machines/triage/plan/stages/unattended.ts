import type { ChangeRecord } from '../../../../shared/contract/triage.ts';
import { leftInAtMostDays } from '../../../../shared/isolation/index.ts';
import { message } from '../../../../shared/message/message.ts';
import { runningWatch } from '../../record.ts';
import { runningUnattended, unattendedOf } from '../../unattended.ts';
import type { Asked } from '../asked.ts';
import { offering, type Stage, stage } from '../offer.ts';
import { overDaysOf, tooRare } from '../over-days.ts';
import { judgeRetest } from '../steps.ts';

const dayMs = 86_400_000;

/**
 * A change in place for a fault that nobody can sit through: it is left in, its days are ended, and then it is judged.
 * Null for a fault that can be watched for.
 */
export function unattendedStage(asked: Asked, change: ChangeRecord): Stage | null {
  const { record, known, now } = asked;
  // Somebody watches all the same: that watch comes to its end first.
  if (runningWatch(record) !== null) return null;
  const running = runningUnattended(record);
  if (running !== null) {
    const firmware = running.firmwareBefore.map(({ deviceId }) => ({ deviceId }));
    return stage(message('leftInUntil', { until: running.until, owner: running.owner }), [
      offering({ type: 'endUnattended', firmware, logged: [] }),
    ]);
  }
  if (unattendedOf(record, change.id).length > 0) {
    return stage(message('daysAreOver'), [
      offering(judgeRetest),
      offering({ type: 'restoreChange', note: '' }),
    ]);
  }
  const rare = overDaysOf(asked);
  if (rare === null) return null;
  const wanted = rare.ways.find(({ kind }) => kind === 'unattended')?.days ?? leftInAtMostDays;
  const until = new Date(
    Date.parse(now) + Math.min(leftInAtMostDays, Math.ceil(wanted)) * dayMs,
  ).toISOString();
  const firmware = known.chain.devices.slice(0, 50).map(({ id }) => ({ deviceId: id }));
  return stage(tooRare(rare), [
    offering({ type: 'leaveInPlace', until, firmware }),
    offering({ type: 'restoreChange', note: '' }),
  ]);
}
