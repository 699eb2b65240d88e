import type { FirmwareMinimum } from '../chain/firmware-level.ts';
import { signalRank } from '../chain/graph.ts';
import { namedLink, namedPlace } from '../chain/named-place.ts';
import type { Chain, Finding, Place } from '../contract/chain.ts';
import { findingSeverities } from '../contract/chain-names.ts';
import type { Symptom } from '../contract/triage.ts';
import { type Message, message } from '../message/index.ts';
import { demandOf } from '../signal/content-protection/index.ts';
import { askedRuns, type BudgetAssumptions, joinedLosses, linkFaults } from '../signal/link-budget/index.ts';
import { type PowerAssumptions, powerBudget } from '../signal/power.ts';
import { capacityRules } from './rules/cable-capacity.ts';
import { cableRules } from './rules/cables.ts';
import { deviceRules } from './rules/devices.ts';
import { keptOut, pictureRules } from './rules/pictures.ts';
import { portRules } from './rules/ports.ts';
import {
  type AuditAssumptions,
  type AuditContext,
  type LinkContext,
  type Observation,
  type Rule,
  usualAssumptions,
} from './rules/rule.ts';

export { type AuditAssumptions, usualAssumptions } from './rules/rule.ts';

export type AuditOptions = {
  /** Lowest firmware the organisation accepts, per model; letter case, spaces and dashes of a model don't matter. */
  minimumFirmware: readonly FirmwareMinimum[];
  /** A fault is being looked for: a second display on a parallel output is then a finding. */
  duringTriage?: boolean | undefined;
  /** The display the fault is seen on, so that the branches beside it can be named. */
  displayId?: string | undefined;
  /** Findings that explain this symptom are `mustFix` where they would be `shouldFix`. */
  symptom?: Symptom['kind'] | undefined;
  /** The organisation's own numbers in place of `usualAssumptions` and the signal's. */
  assumptions?: (Partial<AuditAssumptions> & SignalAssumptions) | undefined;
  /** Findings from elsewhere, such as those of content protection, to be sorted in. */
  linkFindings?: readonly Finding[] | undefined;
};

/** What the budgets of cables and 5 V lines take for granted, where the organisation has figures of its own. */
export type SignalAssumptions = {
  budget?: Partial<BudgetAssumptions>;
  cableDrawMa?: Partial<PowerAssumptions>;
};

/**
 * The prerequisite audit of a chain without faults: what has to be right before looking for a fault makes sense.
 * Sorted by severity, then along the signal from source to display. What isn't known is a `note` to go and look, at
 * most; only the direction of an active cable weighs more. Lengths in metres, bit rates in Gbit/s.
 */
export function auditChain(chain: Chain, options: AuditOptions): Finding[] {
  const context: AuditContext = {
    chain,
    minimumFirmware: options.minimumFirmware,
    duringTriage: options.duringTriage ?? false,
    displayId: options.displayId ?? null,
    assumptions: withUsual(options.assumptions),
  };
  const links = linksOf(context, options.assumptions);
  const lost = links
    .flatMap(({ faults }) => faults)
    .flatMap((fault) => (fault.of === 'loss' ? fault.losses : []));
  const allLosses = joinedLosses([...lost, ...keptOut(links)]);
  const ofLinks = links.flatMap((subject) => {
    const place: Place = { kind: 'link', linkId: subject.link.id };
    return linkRules.flatMap((rule) => findings(rule, subject, place, options.symptom));
  });
  const ofDevices = chain.devices.flatMap((device) => {
    const place: Place = { kind: 'device', deviceId: device.id };
    const losses = allLosses.filter(({ deviceId }) => deviceId === device.id);
    const subject = { ...context, device, named: namedPlace(chain, place), losses };
    return deviceRules.flatMap((rule) => findings(rule, subject, place, options.symptom));
  });
  const ofChain = pictureRules.flatMap((rule) =>
    findings(rule, { ...context, links }, { kind: 'chain' }, options.symptom),
  );
  return sorted(chain, [...ofLinks, ...ofChain, ...ofDevices, ...(options.linkFindings ?? [])]);
}

const linkRules = [...capacityRules, ...cableRules, ...portRules];

/** Each link that joins two ports, with what its budgets say of it. */
function linksOf(context: AuditContext, own: AuditOptions['assumptions']): LinkContext[] {
  const { chain } = context;
  const { requiredGbps } = context.assumptions;
  const wanted = askedRuns(chain);
  const faulty = linkFaults(chain, { requiredGbps, assumptions: own?.budget ?? {} });
  const powers = new Map(powerBudget(chain, own?.cableDrawMa).map((power) => [power.linkId, power]));
  return faulty.flatMap(({ run, faults }) => {
    const { link, source, output, sink, input } = run;
    const power = powers.get(link.id);
    const ends = { source, output, sink, input };
    return power === undefined
      ? []
      : [
          {
            ...context,
            link,
            ends,
            named: namedLink(chain, link),
            faults,
            power,
            asksForNewerProtection:
              wanted.length === 0 ||
              wanted.some(({ linkIds, format }) => linkIds.has(link.id) && demandOf(format) === 'type1'),
          },
        ];
  });
}

/** Every rule of the audit, for lists and help texts. */
export const auditRules: readonly { id: string; source: Message }[] = [
  ...new Map(
    [...linkRules, ...pictureRules, ...deviceRules].map(({ id, source }) => [id, { id, source }]),
  ).values(),
];

function withUsual(own: AuditOptions['assumptions']): AuditAssumptions {
  return {
    shortestCableM: own?.shortestCableM ?? usualAssumptions.shortestCableM,
    requiredGbps: own?.requiredGbps ?? usualAssumptions.requiredGbps,
  };
}

function findings<Context extends AuditContext>(
  rule: Rule<Context>,
  context: Context,
  place: Place,
  symptom: Symptom['kind'] | undefined,
): Finding[] {
  const weighed = ({ severity }: Observation): Finding['severity'] =>
    severity === 'shouldFix' && symptom !== undefined && rule.urgentFor.includes(symptom)
      ? 'mustFix'
      : severity;
  return rule.check(context).map((seen) => ({
    rule: rule.id,
    severity: weighed(seen),
    place: seen.place ?? place,
    placeName: message('thePlace', { place: namedPlace(context.chain, seen.place ?? place) }),
    text: seen.text,
    whatToDo: seen.whatToDo,
    source: rule.source,
    cautions: [...seen.cautions],
  }));
}

function sorted(chain: Chain, all: Finding[]): Finding[] {
  const rank = signalRank(chain);
  const severity = ({ severity: each }: Finding): number => findingSeverities.indexOf(each);
  // Two places outside the chain have the same infinite rank, whose difference is no number.
  const along = (a: Finding, b: Finding): number => {
    const [one, other] = [rank(a.place), rank(b.place)];
    return one === other ? 0 : one - other;
  };
  return all.sort((a, b) => severity(a) - severity(b) || along(a, b));
}
