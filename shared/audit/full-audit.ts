import { displaysOf, upstreamOf } from '../chain/graph.ts';
import { namedPlace } from '../chain/named-place.ts';
import type { Chain, Finding } from '../contract/chain.ts';
import { message } from '../message/index.ts';
import {
  type AuditAssumptions,
  type AuditOptions,
  auditChain,
  type SignalAssumptions,
} from './chain-audit.ts';
import { protectionFindings } from './protection-findings.ts';

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
  const findings = auditChain(chain, {
    ...purpose,
    minimumFirmware,
    linkFindings: protectionFindings(chain),
    assumptions: settings,
  });
  return purpose.displayId === undefined ? findings : withBranches(chain, purpose.displayId, findings);
}

/** A finding that lies on no way to the display with the fault says so: it can't be what shows there. */
function withBranches(chain: Chain, displayId: string, findings: readonly Finding[]): Finding[] {
  if (!displaysOf(chain).some(({ id }) => id === displayId)) return [...findings];
  const onTheWay = upstreamOf(chain, displayId).add(displayId);
  const links = new Set(chain.links.filter(({ to }) => onTheWay.has(to.deviceId)).map(({ id }) => id));
  const display = namedPlace(chain, { kind: 'device', deviceId: displayId });
  return findings.map((finding) => {
    const { place } = finding;
    const isOnTheWay =
      place.kind === 'chain' ||
      // A second display on the same output is told of because of this one.
      finding.rule === 'parallel-display' ||
      (place.kind === 'link' ? links.has(place.linkId) : onTheWay.has(place.deviceId));
    return isOnTheWay
      ? finding
      : { ...finding, text: message('onAnotherBranch', { finding: finding.text, display }) };
  });
}
