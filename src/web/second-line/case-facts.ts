import { useMemo } from 'preact/hooks';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import type { LogFinding } from '../../../shared/contract/log-findings.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { paths } from '../api/paths.ts';
import { isSettled, useDocument } from '../store/documents.ts';
import { useZone } from '../words/zone.ts';
import { useNames } from './people.ts';

/** What every part of a case reads. Times in `zone`, which is the site's. */
export type CaseFacts = {
  readonly ticket: Ticket;
  /** Of this organisation: what belongs to it can be read beside it. Else only what is here can. */
  readonly isOurs: boolean;
  /** As found; as described now while nobody has recorded it. */
  readonly chain: Chain;
  readonly evidence: readonly EvidenceItem[];
  readonly logs: readonly LogFinding[];
  readonly zone: string;
  nameOf(memberId: string | null): string;
};

const none: readonly never[] = [];

/** The case around a ticket; null until all of it is here that there is. The same object while nothing of it changes. */
export function useCaseFacts(ticket: Ticket | null): CaseFacts | null {
  const zone = useZone(ticket?.siteId ?? null);
  const nameOf = useNames();
  const newest = useDocument(ticket === null ? null : paths.chain(ticket.chainId)).body;
  const evidenceDocument = useDocument(ticket === null ? null : paths.evidence(ticket.id));
  const logsDocument = useDocument(ticket === null ? null : paths.logFindings(ticket.id));
  const evidence = evidenceDocument.body?.items ?? none;
  const logs = logsDocument.body?.items ?? none;
  const chain = ticket?.triage.asFound?.chain ?? newest?.chain;
  const isHere = isSettled(evidenceDocument) && isSettled(logsDocument);
  return useMemo(
    () =>
      ticket === null || chain === undefined || !isHere
        ? null
        : { ticket, isOurs: true, chain, evidence, logs, zone, nameOf },
    [ticket, chain, isHere, evidence, logs, zone, nameOf],
  );
}
