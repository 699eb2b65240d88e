import {
  occurrencesIn,
  occurrencesOf,
  openChange,
  type RecordThen,
  standingSides,
  watchesFor,
} from './record.ts';

type Answer = { side: 'input' | 'output'; watchIds: string[]; occurrences: number };

/** What the watches with a device's menu up said; null where they said nothing, or contradicted each other. */
export function answerAt(record: RecordThen, deviceId: string): Answer | null {
  const watches = watchesFor(record, 'side').filter(
    (watch) => watch.menuDeviceId === deviceId && watch.endedAt !== null && occurrencesOf(watch).length > 0,
  );
  const answers = occurrencesIn(watches).map(({ menu }) => menu);
  const stayed = answers.filter((menu) => menu === 'stayed').length;
  if (answers.length === 0 || (stayed > 0 && stayed < answers.length)) return null;
  return {
    side: stayed > 0 ? 'input' : 'output',
    watchIds: watches.map(({ id }) => id),
    occurrences: answers.length,
  };
}

function sidesHold(record: RecordThen): boolean {
  const sides = standingSides(record);
  return (
    record.asFound !== null &&
    sides.length > 0 &&
    sides.every(({ deviceId }) => answerAt(record, deviceId) !== null)
  );
}

/** Where version 1 took the work up again once a culprit was withdrawn. */
export function stageWithoutCulprit(record: RecordThen) {
  if (record.audit === null || record.whatChanged === null || record.asFound === null) return 'baseline';
  const open = openChange(record);
  if (open?.status === 'declared') return 'substitute.declared';
  if (open !== null) return open.judgement === null ? 'substitute.applied' : 'substitute.judged';
  if (!record.reproductionAccepted) return 'reproduce';
  return sidesHold(record) ? 'substitute.ready' : 'locateSide';
}
