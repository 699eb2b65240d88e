import { expect } from 'vitest';
import { type AuditOptions, auditChain } from '../../shared/audit/chain-audit.ts';
import type { Chain, Finding, Link } from '../../shared/contract/chain.ts';

/** No firmware levels, outside triage, the usual numbers. */
export const plain: AuditOptions = { minimumFirmware: [] };
/** Findings in order, each as `rule severity place`. */
export const seen = (chain: Chain, options: Partial<AuditOptions> = {}): string[] =>
  auditChain(chain, { ...plain, ...options }).map(
    ({ rule, severity, place }) => `${rule} ${severity} ${placeText(place)}`,
  );
export const placeText = (place: Finding['place']): string =>
  place.kind === 'link'
    ? place.linkId
    : place.kind === 'device'
      ? place.deviceId
      : place.kind === 'port'
        ? `${place.deviceId}.${place.portId}`
        : 'chain';
/** The one finding of a chain; fails when there are more or none. */
export const only = (chain: Chain, options: Partial<AuditOptions> = {}): Finding => {
  const findings = auditChain(chain, { ...plain, ...options });
  expect(findings).toHaveLength(1);
  return findings[0] as Finding;
};
/** An end of a cable that is seated and asks for no power, unless `facts` say otherwise. */
export const end = (facts: Partial<Link['sinkEnd']>): Link['sinkEnd'] => ({
  needsPower: false,
  powered: 'unknown',
  seated: 'yes',
  ...facts,
});
