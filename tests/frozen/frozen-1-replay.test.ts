import { describe, expect, it } from 'vitest';
import { triageRecord } from '../../shared/contract/triage.ts';
import { replayStored } from '../../state-machines/index.ts';
import { type FrozenLog, frozenLogFiles, readFrozenLogs } from './frozen-1.ts';
import { isForTriage, snapshotsToday, storedEvent, storedOpening } from './frozen-1-today.ts';
import { asHeldByVersion1, judgementThen } from './held-by-version-1.ts';

type Judged = { id: string; status: string; judgement: object | null };

/** The judgements that version 1 made of a change, in order, those that it then wrote over too. */
const judgementsOf = ({ events, snapshots }: FrozenLog, changeId: string): object[] =>
  events.flatMap(({ type }, at) => {
    const changes = (snapshots[at]?.context.changes ?? []) as Judged[];
    const judged = changes.find(({ status }) => status === 'judged');
    return type === 'judgeRetest' && judged?.id === changeId ? [judged.judgement ?? {}] : [];
  });

describe.each(frozenLogFiles)('the logs of version 1: %s', (file) => {
  const logs = readFrozenLogs(file);

  it('lead to what version 1 held after every event', () => {
    for (const log of logs) {
      for (const [at, { value, context }] of [...snapshotsToday(log)].entries()) {
        const held = { value, context: asHeldByVersion1(context) };
        const { machineVersion, ...then } = log.snapshots[at] ?? { machineVersion: 1 };
        expect(held, `${log.name}, event ${at + 1}`).toStrictEqual(then);
      }
    }
  });

  it('lead there in one go too, to a record as the contract has it', () => {
    for (const log of logs) {
      const snapshot = replayStored(storedOpening(log), log.events.filter(isForTriage).map(storedEvent));
      expect(snapshot, log.name).toStrictEqual([...snapshotsToday(log)].at(-1));
      expect(triageRecord.parse(snapshot.context), log.name).toStrictEqual(snapshot.context);
      expect(JSON.parse(JSON.stringify(snapshot)), log.name).toStrictEqual(snapshot);
    }
  });

  it('keep the judgements that version 1 wrote over, in their order', () => {
    for (const log of logs) {
      const record = [...snapshotsToday(log)].at(-1)?.context;
      for (const { id, judgement, earlierJudgements } of record?.changes ?? []) {
        const made = judgementsOf(log, id);
        const overwritten = judgement === null ? made : made.slice(0, -1);
        const kept = earlierJudgements.map(({ superseded, ...judgement }) => judgementThen(judgement));
        expect(kept, log.name).toStrictEqual(overwritten);
      }
    }
  });
});
