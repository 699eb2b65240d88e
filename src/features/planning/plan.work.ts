import type { Chain } from '../../../shared/contract/chain.ts';
import type { FirmwareLevel, OrganisationSettings } from '../../../shared/contract/organisation.ts';
import type { CaseFile } from '../../../shared/contract/packet.ts';
import { phonePlan, plan } from '../../../shared/contract/plan.ts';
import type { Intake } from '../../../shared/contract/ticket.ts';
import { figureOf } from '../../../shared/isolation/figures.ts';
import { type Circumstances, standingOf, tableOf } from '../../../shared/isolation/index.ts';
import { byComponent } from '../../../shared/isolation/posterior.ts';
import { logFindings, type TicketLog } from '../../../shared/logs/index.ts';
import {
  caseOf,
  factsOfEdids,
  factsOfLogs,
  type Known,
  knownOfChain,
  type PlanRequest,
  planByPhone,
  planTicket,
  type TriageSnapshot,
} from '../../../state-machines/index.ts';
import { heavyTask, replyTask } from '../../heavy-work/task.ts';
import { edidReadingsIn, type ReadEdid } from '../signal/edids.work.ts';

/** All that a plan of a ticket is made from, as it is stored. */
export type CaseToPlan = {
  readonly snapshot: TriageSnapshot;
  readonly intake: Intake;
  /** The newest version that the chain is described in. */
  readonly newest: { readonly version: number; readonly chain: Chain };
  readonly settings: OrganisationSettings;
  readonly firmwareLevels: readonly FirmwareLevel[];
  readonly logs: readonly TicketLog[];
  readonly edids: readonly ReadEdid[];
  /** UTC, ISO 8601. */
  readonly now: string;
};
export type Question<Asking> = { readonly ticket: CaseToPlan; readonly asking: Asking };

/** What to do next on a ticket, with what is at hand on site. */
export const planWork = replyTask('plan', plan, ({ ticket, asking }: Question<Circumstances>) =>
  planTicket(ticket.snapshot, requestOf(ticket, asking)),
);

/** Before a visit everything is at hand, since everything can be packed. */
const beforeTheVisit = { kit: null, people: 1, refused: [] } as const;

type FromAfar = { readonly reachableDevices: readonly string[] };

/** What a client can be asked to do on the phone, and what to pack. */
export const phonePlanWork = replyTask('phone plan', phonePlan, ({ ticket, asking }: Question<FromAfar>) =>
  planByPhone(ticket.snapshot, requestOf(ticket, beforeTheVisit), asking),
);

export type Suspects = Pick<CaseFile, 'suspects' | 'earlierRoundsCount'>;

/** What can be at fault on a ticket, the likeliest first, and what earlier rounds count for in that. */
export const suspectsWork = heavyTask('suspects', 'plans', (ticket: CaseToPlan): Suspects => {
  const { snapshot } = ticket;
  const { known, table } = requestOf(ticket, beforeTheVisit);
  const { model, chances } = standingOf(caseOf(snapshot.context, known), table);
  const suspects = [...byComponent(model, chances)]
    .map(([component, probability]) => ({
      place: model.components.known.get(component)?.place ?? null,
      // sums of many chances may come out a last digit above 1
      probability: Math.min(1, probability),
    }))
    .sort((one, other) => other.probability - one.probability);
  const earlierRoundsCount =
    snapshot.context.round === 1 ? null : figureOf(model.table.weighing.trust, 'earlierRound');
  return { suspects, earlierRoundsCount };
});

function requestOf(ticket: CaseToPlan, here: Circumstances): PlanRequest {
  const { snapshot, newest, settings, firmwareLevels, now } = ticket;
  const record = snapshot.context;
  const chain = record.asFound?.chain ?? newest.chain;
  const logs = ticket.logs.map((log) => logFindings(log, record.watches));
  const edids = edidReadingsIn({ chain: newest.chain, read: ticket.edids });
  const known: Known = {
    ...knownOfChain(chain, record.symptom, settings, firmwareLevels),
    intake: ticket.intake,
    facts: [...factsOfLogs(logs, chain), ...factsOfEdids(edids, chain)],
    today: now.slice(0, 10),
  };
  return {
    known,
    chainVersion: newest.version,
    here,
    table: tableOf(settings.faultModel),
    ownChanges: settings.ownChanges,
    now,
  };
}
