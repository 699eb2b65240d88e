import { findPort } from '../../../shared/chain/graph.ts';
import { bitRateGbps } from '../../../shared/chain/signal-mode.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { TriageRecord } from '../../../shared/contract/triage.ts';
import type { Result } from '../../../shared/isolation/index.ts';
import { readingsAsFound } from '../looks.ts';
import { standingLooks } from '../record.ts';
import { type Trace, traceOf } from '../trace.ts';
import type { Known } from './known.ts';

/** The trace of what was read on a ticket, along the way that shows the fault. */
export const traceOn = (
  record: TriageRecord,
  { chain, intake }: Pick<Known, 'chain' | 'intake'>,
): Trace | null =>
  traceOf(
    {
      chain,
      symptom: record.symptom,
      affectedSources: intake.affectedSources,
      affectedDisplays: intake.affectedDisplays,
    },
    readingsAsFound(record),
  );

/**
 * What readings say of where the fault lies: the last that is right and the first that is not. Others only repeat it:
 * what is wrong once is wrong all the way on.
 */
export function readingResults(record: TriageRecord, known: Pick<Known, 'chain' | 'intake'>): Result[] {
  const trace = traceOn(record, known);
  if (trace === null) return [];
  return [trace.lastRight, trace.firstWrong].flatMap((point): Result[] =>
    point === null ? [] : [{ kind: 'reading', deviceId: point.deviceId, at: point.at, says: point.says }],
  );
}

/** What witnesses and settings say. */
export function lookResults(record: TriageRecord, chain: Chain): Result[] {
  const witnesses = standingLooks(record, 'witness').flatMap(({ what }): Result[] => {
    const { deviceId, besideId, answer } = what;
    return answer === 'cannotSay' ? [] : [{ kind: 'witness', deviceId, besideId, shows: answer === 'shows' }];
  });
  const ports = standingLooks(record, 'portMode').flatMap(({ what }): Result[] => {
    const { deviceId, portId, found } = what;
    const port = findPort(chain, { deviceId, portId });
    if (port === undefined) return [];
    const isLow = found.kind === 'set' && bitRateGbps(found.mode) < bitRateGbps(port.highestMode);
    const place = { kind: 'port', deviceId, portId } as const;
    return [{ kind: 'fact', fact: isLow ? 'portSetLow' : 'portSetRight', place }];
  });
  const settings = standingLooks(record, 'setting').flatMap(({ what }): Result[] =>
    what.shouldBe === null || what.shouldBe === what.value
      ? []
      : [{ kind: 'fact', fact: 'settingWrong', place: { kind: 'device', deviceId: what.deviceId } }],
  );
  return [...witnesses, ...ports, ...settings];
}
