import { type Circumstances, tableOf } from '../../../shared/isolation/index.ts';
import {
  factsOfEdids,
  factsOfLogs,
  type Known,
  knownOfChain,
  type PlanRequest,
  type TriageSnapshot,
} from '../../../state-machines/index.ts';
import type { Context } from '../../http/index.ts';
import { readChain } from '../chains/index.ts';
import { logFindingsOf } from '../log-findings/index.ts';
import { firmwareLevels, readSettings } from '../organisation/index.ts';
import { readEdids } from '../signal/index.ts';
import { findCase } from '../ticket-record/index.ts';

/** A ticket's triage, and all that a plan of it is made from; null when there is no such ticket. */
export async function requestFor(
  context: Context,
  ticketId: string,
  here: Circumstances,
): Promise<{ snapshot: TriageSnapshot; request: PlanRequest } | null> {
  const { services } = context;
  const ticket = await findCase(context, ticketId);
  if (ticket === null) return null;
  const { chainId, intake, snapshot } = ticket;
  const record = snapshot.context;
  const newest = await readChain(context, chainId);
  if (!newest.ok) return null;
  const chain = record.asFound?.chain ?? newest.body.chain;
  const settings = await readSettings(context);
  const now = services.now().toISOString();
  const logs = await logFindingsOf(context, ticketId, record.watches);
  const edids = await readEdids(context, chainId);
  const known: Known = {
    ...knownOfChain(chain, record.symptom, settings, await firmwareLevels(context)),
    intake,
    facts: [...factsOfLogs(logs, chain), ...(edids.ok ? factsOfEdids(edids.body, chain) : [])],
    today: now.slice(0, 10),
  };
  return {
    snapshot,
    request: {
      known,
      chainVersion: newest.body.version,
      here,
      table: tableOf(settings.faultModel),
      ownChanges: settings.ownChanges,
      now,
    },
  };
}
