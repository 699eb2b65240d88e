import type { AuditPurpose } from '../../../shared/audit/full-audit.ts';
import type { FirmwareMinimum } from '../../../shared/chain/firmware-level.ts';
import type { Chain } from '../../../shared/contract/chain.ts';

/** A chain in words, the chain, and all its findings as `rule severity place: text > what to do`, in the audit's order. */
export type Row = [
  what: string,
  chain: Chain,
  findings: string[],
  purpose?: AuditPurpose,
  levels?: readonly FirmwareMinimum[],
];
