import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { standingEvidence } from '../../../state-machines/triage/record.ts';
import type { Marks } from './marks.ts';

/** Where evidence was kept; and as `recordMarks`, once its code is here, which is loaded where there is something to say. */
export function useRecordMarks(triage: Ticket['triage'], chain: Chain): Marks {
  const [marks, setMarks] = useState<Marks>({});
  const isRecorded = triage.asFound !== null || triage.looks.length > 0;
  useEffect(() => {
    if (!isRecorded) return undefined;
    let isWanted = true;
    void import('./record-marks.ts').then(({ recordMarks }) => {
      if (isWanted) setMarks(recordMarks(triage, chain));
    });
    return () => {
      isWanted = false;
    };
  }, [triage, chain, isRecorded]);
  return useMemo(() => ({ ...marks, evidence: evidenceAt(triage) }), [marks, triage]);
}

const evidenceAt = (triage: Ticket['triage']): Place[] =>
  standingEvidence(triage).flatMap(({ tie: { deviceId, linkId } }): Place[] => {
    if (linkId !== null) return [{ kind: 'link', linkId }];
    return deviceId === null ? [] : [{ kind: 'device', deviceId }];
  });
