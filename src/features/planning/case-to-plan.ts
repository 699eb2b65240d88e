import type { Context } from '../../http/index.ts';
import { readChain } from '../chains/index.ts';
import { logsOf } from '../log-findings/index.ts';
import { firmwareLevels, readSettings } from '../organisation/index.ts';
import { edidsRead } from '../signal/index.ts';
import { findCase } from '../ticket-record/index.ts';
import type { CaseToPlan } from './plan.work.ts';

/** A ticket's triage, and all that a plan of it is made from; null when there is no such ticket. */
export async function caseToPlan(context: Context, ticketId: string): Promise<CaseToPlan | null> {
  const ticket = await findCase(context, ticketId);
  if (ticket === null) return null;
  const { chainId, intake, snapshot } = ticket;
  const newest = await readChain(context, chainId);
  if (!newest.ok) return null;
  const { version, chain } = newest.body;
  return {
    snapshot,
    intake,
    newest: { version, chain },
    settings: await readSettings(context),
    firmwareLevels: await firmwareLevels(context),
    logs: await logsOf(context, ticketId),
    edids: await edidsRead(context, chainId),
    now: context.services.now().toISOString(),
  };
}
