import { isBelowLevel } from '../../../shared/chain/firmware-level.ts';
import type { TicketCommand } from '../../../shared/contract/commands.ts';
import type { TriageEvent } from '../../../state-machines/index.ts';
import type { Context, Refused } from '../../http/index.ts';
import { findingsFor, readChain } from '../chains/index.ts';
import { firmwareLevels } from '../organisation/index.ts';
import type { TicketRow } from '../ticket-record/index.ts';

/**
 * Makes an event of a command: who and when, ids that the sender left to us, and what the machine needs to know of
 * the chain. The machine itself reads neither clock nor database.
 */
export async function completeCommand(
  context: Context,
  row: TicketRow,
  command: TicketCommand,
): Promise<{ ok: true; event: TriageEvent } | Refused> {
  const { actor, services } = context;
  const envelope = { at: services.now().toISOString(), by: actor.memberId, role: actor.role };
  const event = (of: object) => ({
    ok: true as const,
    event: { ...command, ...of, ...envelope } as TriageEvent,
  });
  switch (command.type) {
    case 'startWatch':
      return event({ watchId: command.watchId ?? services.newId() });
    case 'recordOccurrence':
    case 'confirmOccurrence':
      return event({ occurrenceId: command.occurrenceId ?? services.newId() });
    case 'declareChange':
      return event({ changeId: command.changeId ?? services.newId() });
    case 'directStep':
      return event({ requestId: command.requestId ?? services.newId() });
    case 'askForMore': {
      const requests = command.requests.map((one) => ({
        ...one,
        requestId: one.requestId ?? services.newId(),
      }));
      return event({ requests });
    }
    case 'recordAsFound': {
      const document = await readChain(context, row.chainId, command.chainVersion);
      return document.ok ? event({ chain: document.body.chain }) : document;
    }
    case 'finishRemedy': {
      const document = await readChain(context, row.chainId, command.asLeftChainVersion);
      return document.ok ? event({}) : document;
    }
    case 'reviewAudit': {
      const audit = await auditFacts(context, row, command.chainVersion);
      return audit.ok ? event(audit.facts) : audit;
    }
    default:
      return event({});
  }
}

async function auditFacts(
  context: Context,
  row: TicketRow,
  chainVersion: number,
): Promise<{ ok: true; facts: object } | Refused> {
  const document = await readChain(context, row.chainId, chainVersion);
  if (!document.ok) return document;
  const { chain } = document.body;
  const { symptom } = row.snapshot.context;
  const findings = await findingsFor(context, chain, { duringTriage: true, symptom: symptom.kind });
  const levels = await firmwareLevels(context);
  const count = (severity: string) => findings.filter((finding) => finding.severity === severity).length;
  const below = chain.devices.filter((device) => isBelowLevel(device, levels));
  return {
    ok: true,
    facts: {
      mustFix: count('mustFix'),
      shouldFix: count('shouldFix'),
      firmwareBelowLevel: below.map((device) => device.id),
    },
  };
}
