import type { z } from 'zod';
import { displaysOf } from '../../../shared/chain/graph.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { BudgetReply, budgetQuery } from '../../../shared/contract/signal.ts';
import { message } from '../../../shared/message/index.ts';
import {
  cablesBehindVersionMessage,
  chainProtection,
} from '../../../shared/signal/content-protection/index.ts';
import { chainBudget, compareWithout } from '../../../shared/signal/link-budget/index.ts';
import { powerBudget } from '../../../shared/signal/power.ts';
import { returnAudioOf } from '../../../shared/signal/return-audio.ts';
import { type Context, found, type Outcome, refused } from '../../http/index.ts';
import { readChain } from '../chains/index.ts';
import { readSettings } from '../organisation/index.ts';

/** Link budget, content protection and 5 V power of a chain, for the formats asked or those its record wants. */
export async function readBudget(
  context: Context,
  chainId: string,
  query: z.infer<typeof budgetQuery>,
): Promise<Outcome<BudgetReply>> {
  const document = await readChain(context, chainId, query.version);
  if (!document.ok) return document;
  const { chain, version } = document.body;
  const wanted = query.format ?? chain.wantedFormats;
  const { without } = query;
  if (without !== undefined && !chain.devices.some((device) => device.id === without)) {
    return refused('not-found', message('chainLacksDevice', { deviceId: without }));
  }
  const { budget: assumptions, cableDrawMa } = await readSettings(context);
  return found({
    version,
    budget: chainBudget(chain, wanted, { assumptions }),
    comparison:
      without === undefined ? null : compareWithout(chain, wanted, without, { assumptions }).formats,
    contentProtection: { ...chainProtection(chain), ifADisplaySeemsTooOld: suspectCables(chain) },
    returnAudio: returnAudioOf(chain),
    power: powerBudget(chain, cableDrawMa),
  });
}

/** For each display: the cables to suspect when a message says it lacks a version that its data sheet has. */
const suspectCables = (chain: Chain) =>
  displaysOf(chain).map(({ id }) => ({ displayId: id, cables: cablesBehindVersionMessage(chain, id) }));
