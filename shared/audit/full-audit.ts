import type { Chain, Finding } from '../contract/chain.ts';
import { type AuditAssumptions, type AuditOptions, auditChain } from './chain-audit.ts';
import { type SignalAssumptions, signalFindings } from './signal-findings.ts';

/** What an audit is for: on its own, or with a fault being looked for that shows on a display. */
export type AuditPurpose = Pick<AuditOptions, 'duringTriage' | 'symptom' | 'displayId'>;

/**
 * The prerequisite audit of a chain with what its computed budgets say for the formats it is to carry.
 *
 * @param settings the organisation's own numbers; the usual ones where it set none
 */
export function fullAudit(
  chain: Chain,
  purpose: AuditPurpose,
  settings: SignalAssumptions & Partial<AuditAssumptions>,
  minimumFirmware: AuditOptions['minimumFirmware'],
): Finding[] {
  return auditChain(chain, {
    ...purpose,
    minimumFirmware,
    linkFindings: signalFindings(chain, chain.wantedFormats, settings),
    assumptions: settings,
  });
}
