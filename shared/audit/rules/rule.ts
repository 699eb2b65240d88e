import type { FirmwareMinimum } from '../../chain/firmware-level.ts';
import type { LinkEnds } from '../../chain/graph.ts';
import type { Chain, Device, Finding, Link, Place } from '../../contract/chain.ts';
import { organisationDefaults } from '../../contract/defaults.ts';
import type { Symptom } from '../../contract/triage.ts';
import { type Message, message, type NamedPlace } from '../../message/index.ts';
import type { LinkFault, Loss } from '../../signal/link-budget/index.ts';
import type { LinkPower } from '../../signal/power.ts';

/** Numbers that decide a finding; lengths are the organisation's own or its defaults. */
export type AuditAssumptions = {
  /** A cable shorter than this is a finding. */
  shortestCableM: number;
  /**
   * What cable, ports and port modes have to pass where the record wants no format, Gbit/s, unless the ports at both ends
   * of a link can't; common practice, no source.
   */
  requiredGbps: number;
};
export const usualAssumptions: AuditAssumptions = {
  shortestCableM: organisationDefaults.shortestCableM,
  requiredGbps: 18,
};

export type AuditContext = {
  chain: Chain;
  minimumFirmware: readonly FirmwareMinimum[];
  duringTriage: boolean;
  /** The display the fault is seen on; null when not known. */
  displayId: string | null;
  assumptions: AuditAssumptions;
};
/** What a rule for cables looks at. */
export type LinkContext = AuditContext & {
  link: Link;
  ends: LinkEnds;
  named: NamedPlace;
  /** What keeps it from carrying what is asked of it. */
  faults: readonly LinkFault[];
  /** Something wanted over it comes with content that asks for the newer protection; yes where nothing is recorded. */
  asksForNewerProtection: boolean;
  /** Its 5 V line. */
  power: LinkPower;
};
/** What a rule for devices looks at. */
export type DeviceContext = AuditContext & {
  device: Device;
  named: NamedPlace;
  /** What of the wanted pictures doesn't get past it. */
  losses: readonly Loss[];
};

/** What a rule for the whole chain looks at. */
export type ChainContext = AuditContext & { links: readonly LinkContext[] };

export type Observation = {
  severity: Finding['severity'];
  text: Message;
  whatToDo: Message;
  /** What the work may hurt somebody with; none when it is done with a menu or by looking. */
  cautions: readonly Message[];
  /** Where it differs from the link or device that was looked at. */
  place?: Place;
};

export type Rule<Context> = {
  id: string;
  source: Message;
  /** Symptoms that make a `shouldFix` of this rule a `mustFix`, since the rule explains them; assumed. */
  urgentFor: readonly Symptom['kind'][];
  check: (context: Context) => Observation[];
};

export const commonPractice = message('commonPractice');
