import { type Context, found, type Outcome } from '../../http/index.ts';
import { readChain } from '../chains/index.ts';
import { edidHexOf, evidenceAtChain } from '../evidence-record/index.ts';
import type { EdidsOfChain, ReadEdid } from './edids.work.ts';

/** Every EDID that was read in a chain, by its record and by the evidence of its tickets, as it lies there. */
export async function findEdids(context: Context, chainId: string): Promise<Outcome<EdidsOfChain>> {
  const document = await readChain(context, chainId);
  if (!document.ok) return document;
  return found({ chain: document.body.chain, read: await edidsRead(context, chainId) });
}

/** Those of evidence that stands. */
export async function edidsRead(context: Context, chainId: string): Promise<ReadEdid[]> {
  const items = await evidenceAtChain(context, chainId, 'edid');
  return items.flatMap((item) => {
    const { deviceId, portId } = item.tie;
    const edidHex = edidHexOf(item);
    if (item.withdrawn !== null || deviceId === null || edidHex === null) return [];
    return [{ evidenceId: item.id, ticketId: item.ticketId, at: item.at, deviceId, portId, edidHex }];
  });
}
