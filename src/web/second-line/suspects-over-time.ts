import type { Chain, Place } from '../../../shared/contract/chain.ts';
import type { LogFinding } from '../../../shared/contract/log-findings.ts';
import type { Message } from '../../../shared/contract/message.ts';
import type { FirmwareLevel, OrganisationSettings } from '../../../shared/contract/organisation.ts';
import type { EdidReadings } from '../../../shared/contract/signal.ts';
import type { Ticket } from '../../../shared/contract/ticket.ts';
import { tableOf } from '../../../shared/isolation/overrides.ts';
import { byComponent, posteriorOf, resultMessage, suspectsOf } from '../../../shared/isolation/posterior.ts';
import { standingOf } from '../../../shared/isolation/standing.ts';
import { caseOf, datedResultsOf } from '../../../state-machines/triage/plan/case-of.ts';
import { factsOfLogs } from '../../../state-machines/triage/plan/facts-of-logs.ts';
import { factsOfEdids, knownOfChain } from '../../../state-machines/triage/plan/known.ts';

/** What was learned, one after the other, and how likely each suspect was after it. */
export type SuspectsOverTime = {
  /** `text` is null at the beginning: what the call and the audit say. `at` is null where it has no one moment. */
  readonly stages: readonly { key: string; at: string | null; text: Message | null }[];
  /** The likeliest now first; a chance (0..1) a stage. */
  readonly lines: readonly { key: string; name: Message; place: Place | null; chances: readonly number[] }[];
};
export type CaseInputs = {
  ticket: Ticket;
  chain: Chain;
  settings: OrganisationSettings;
  levels: readonly FirmwareLevel[];
  logs: readonly LogFinding[];
  edids: EdidReadings;
};

/** A suspect that was never this likely is left out of the drawing; assumed. */
const worthALine = 0.08;
const mostLines = 6;

/** The case ranked anew after every result, with the code that the server ranks it with. */
export function suspectsOverTime({
  ticket,
  chain,
  settings,
  levels,
  logs,
  edids,
}: CaseInputs): SuspectsOverTime {
  const record = ticket.triage;
  const facts = caseOf(record, {
    ...knownOfChain(chain, record.symptom, settings, levels),
    intake: ticket.intake,
    facts: [...factsOfLogs(logs, chain), ...factsOfEdids(edids, chain)],
    today: new Date().toISOString().slice(0, 10),
  });
  const { model } = standingOf(facts, tableOf(settings.faultModel));
  const dated = datedResultsOf(record);
  const stages = [
    { key: '0', at: null, text: null },
    ...facts.results.map((result, at) => ({
      key: String(at + 1),
      at: dated[at]?.at ?? null,
      text: resultMessage(model, result),
    })),
  ];
  const sums = stages.map((_, at) => byComponent(model, posteriorOf(model, facts.results.slice(0, at))));
  const lines = suspectsOf(model).map(({ component, name, place }) => ({
    key: component,
    name,
    place,
    chances: sums.map((sum) => sum.get(component) ?? 0),
  }));
  return {
    stages,
    lines: lines.filter(({ chances }) => Math.max(...chances) >= worthALine).slice(0, mostLines),
  };
}
