import type { Chain } from '../../../shared/contract/chain.ts';
import type { TicketCommand } from '../../../shared/contract/commands.ts';
import {
  type CompleteCommand,
  completeCommand,
  figuresIn,
  needsOf,
  putsPartsIn,
} from '../../../state-machines/index.ts';
import type { Context, Refused } from '../../http/index.ts';
import { findingsFor, lockChain, readChain } from '../chains/index.ts';
import { firmwareLevels, organisationNow } from '../organisation/index.ts';
import type { TicketRow } from '../ticket-record/index.ts';

/** The chain as it is described now, and until this transaction ends. */
async function newestLocked(context: Context, chainId: string): ReturnType<typeof readChain> {
  await lockChain(context, chainId);
  return readChain(context, chainId);
}

const emptyChain: Chain = { name: '', devices: [], links: [], wantedFormats: [] };

/** Reads what a command needs to know, and makes it complete; refuses a chain version that there is not. */
export async function completeFrom(
  context: Context,
  row: TicketRow,
  command: TicketCommand,
): Promise<{ ok: true; command: CompleteCommand } | Refused> {
  const { actor, services } = context;
  const needs = needsOf(command);
  const named =
    needs.chainVersion === null ? null : await readChain(context, row.chainId, needs.chainVersion);
  if (named !== null && !named.ok) return named;
  const document = putsPartsIn(command) ? await newestLocked(context, row.chainId) : named;
  if (document !== null && !document.ok) return document;
  const chain = document?.body.chain ?? emptyChain;
  const symptom = row.snapshot.context.symptom.kind;
  const [findings, levels, organisation] = await Promise.all([
    needs.audit ? findingsFor(context, chain, { duringTriage: true, symptom }) : [],
    needs.audit ? firmwareLevels(context) : [],
    needs.figures || needs.ownChanges ? organisationNow(context) : null,
  ]);
  const known = {
    chain,
    chainVersion: document?.body.version ?? 0,
    findings,
    firmwareLevels: levels,
    figures: needs.figures && organisation !== null ? figuresIn(organisation) : null,
    ownChanges: needs.ownChanges && organisation !== null ? organisation.settings.ownChanges : [],
  };
  const at = services.now().toISOString();
  const sender = { at, by: actor.memberId, role: actor.role, newId: services.newId };
  return { ok: true, command: completeCommand(command, sender, known) };
}
