import { fullAudit } from '../../../shared/audit/full-audit.ts';
import type { FirmwareMinimum } from '../../../shared/chain/firmware-level.ts';
import type { Chain, Finding } from '../../../shared/contract/chain.ts';
import type { OrganisationSettings } from '../../../shared/contract/organisation.ts';
import type { EdidReadings } from '../../../shared/contract/signal.ts';
import type { Intake } from '../../../shared/contract/ticket.ts';
import type { Symptom } from '../../../shared/contract/triage.ts';
import type { HeadroomInput, Result } from '../../../shared/isolation/index.ts';
import { chainBudget } from '../../../shared/signal/link-budget/index.ts';

type Fact = Extract<Result, { kind: 'fact' }>;

/** What is known of a case beside its triage record. */
export type Known = {
  chain: Chain;
  intake: Pick<Intake, 'affectedSources' | 'affectedDisplays' | 'content' | 'workedBefore'>;
  findings: readonly Finding[];
  headroom: readonly HeadroomInput[];
  facts: readonly Fact[];
  /** ISO date. */
  today: string;
};

/**
 * What the chain itself says: its audit during triage and the headroom of each link for the formats the client wants.
 *
 * @param chain as found, or as it was last described while nobody has recorded it
 */
export function knownOfChain(
  chain: Chain,
  symptom: Symptom,
  settings: OrganisationSettings,
  minimumFirmware: readonly FirmwareMinimum[],
): Pick<Known, 'chain' | 'findings' | 'headroom'> {
  const { links } = chainBudget(chain, chain.wantedFormats, { assumptions: settings.budget });
  return {
    chain,
    findings: fullAudit(chain, { duringTriage: true, symptom: symptom.kind }, settings, minimumFirmware),
    headroom: links.flatMap(({ cableLinkId, wanted }) => {
      const fractions = wanted.flatMap(({ figures }) =>
        figures === null ? [] : [figures.headroomFraction ?? Number.NEGATIVE_INFINITY],
      );
      return fractions.length === 0
        ? []
        : [{ linkId: cableLinkId, headroomFraction: Math.min(...fractions) }];
    }),
  };
}

/** A device that is set to pass the display's EDID on and shows another one. */
export function factsOfEdids({ readings, comparisons }: EdidReadings, chain: Chain): Fact[] {
  const differing = comparisons.flatMap(({ perspective, second, differences }) => {
    const deviceId = readings[second]?.deviceId;
    const device = chain.devices.find(({ id }) => id === deviceId);
    const passesOn = device?.role !== 'display' && device?.edidHandling.kind === 'passesOn';
    return perspective === 'passedOn' && differences.length > 0 && deviceId !== undefined && passesOn
      ? [deviceId]
      : [];
  });
  return [...new Set(differing)].map((deviceId) => ({
    kind: 'fact',
    fact: 'edidDiffers',
    place: { kind: 'device', deviceId },
  }));
}
