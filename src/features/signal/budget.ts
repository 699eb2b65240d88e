import type { z } from 'zod';
import type { budgetQuery } from '../../../shared/contract/signal.ts';
import { message } from '../../../shared/message/index.ts';
import { type Context, found, type Outcome, refused } from '../../http/index.ts';
import { readChain } from '../chains/index.ts';
import { readSettings } from '../organisation/index.ts';
import type { ChainToBudget } from './budget.work.ts';

/** A chain to be budgeted for the formats asked, or those its record wants, and perhaps without a device. */
export async function findChainToBudget(
  context: Context,
  chainId: string,
  query: z.infer<typeof budgetQuery>,
): Promise<Outcome<ChainToBudget>> {
  const document = await readChain(context, chainId, query.version);
  if (!document.ok) return document;
  const { chain, version } = document.body;
  const { without, format: wanted = chain.wantedFormats } = query;
  if (without !== undefined && !chain.devices.some((device) => device.id === without)) {
    return refused('not-found', message('chainLacksDevice', { deviceId: without }));
  }
  return found({ version, chain, wanted, without, figures: await readSettings(context) });
}
