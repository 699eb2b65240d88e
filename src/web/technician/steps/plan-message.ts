import type { Chain, Finding } from '../../../../shared/contract/chain.ts';
import type { LogFinding } from '../../../../shared/contract/log-findings.ts';
import type { FirmwareLevel, OrganisationSettings } from '../../../../shared/contract/organisation.ts';
import type { PlanReply } from '../../../../shared/contract/plan.ts';
import type { Intake } from '../../../../shared/contract/ticket.ts';
import type { Circumstances } from '../../../../shared/isolation/candidates.ts';
import type { TriageSnapshot } from '../../../../state-machines/triage/evolve.ts';

/** All that a plan is made of, as plain data. */
export type PlanQuestion = {
  id: number;
  snapshot: TriageSnapshot;
  chain: Chain;
  chainVersion: number;
  intake: Intake;
  settings: OrganisationSettings;
  firmwareLevels: readonly FirmwareLevel[];
  logs: readonly LogFinding[];
  here: Circumstances;
  /** UTC, ISO 8601. */
  now: string;
};
/**
 * With the audit's findings, which the plan takes in as well, and the keys of the likely changes (`likelyFirst`); null
 * where they could not be made.
 */
export type PlanAnswer = {
  id: number;
  plan: PlanReply | null;
  likely: readonly string[];
  findings: readonly Finding[] | null;
};
