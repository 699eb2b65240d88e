import type { z } from 'zod';
import type { BudgetReply, budgetQuery } from '../../../shared/contract/signal.ts';
import { message } from '../../../shared/message/index.ts';
import { chainSignal } from '../../../shared/signal/chain-signal.ts';
import { compareWithout } from '../../../shared/signal/link-budget/index.ts';
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
  const figures = await readSettings(context);
  const { budget, ...others } = chainSignal(chain, figures, wanted);
  return found({
    version,
    budget,
    comparison:
      without === undefined
        ? null
        : compareWithout(chain, wanted, without, { assumptions: figures.budget }).formats,
    ...others,
  });
}
