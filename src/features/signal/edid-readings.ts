import { createHash } from 'node:crypto';
import type { z } from 'zod';
import { upstreamOf } from '../../../shared/chain/graph.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { edidComparison, edidReading, edidReadings } from '../../../shared/contract/signal.ts';
import { compareEdids } from '../../../shared/signal/edid/compare.ts';
import { decodeEdid, type Edid, summarise } from '../../../shared/signal/edid/index.ts';
import { type Context, found, type Outcome } from '../../http/index.ts';
import { readChain } from '../chains/index.ts';
import { edidHexOf, evidenceAtChain } from '../evidence-record/index.ts';

type Reading = z.infer<typeof edidReading> & { edid: Edid };
type Comparison = z.infer<typeof edidComparison>;

/**
 * Every EDID that was read in a chain, by its record and by the evidence of its tickets, and each pair that says
 * something: the same place at two times, and a display's own against what is seen before it.
 */
export async function readEdids(
  context: Context,
  chainId: string,
): Promise<Outcome<z.infer<typeof edidReadings>>> {
  const document = await readChain(context, chainId);
  if (!document.ok) return document;
  const { chain } = document.body;
  const readings = [...recorded(chain), ...(await fromEvidence(context, chainId, chain))];
  return found({
    readings: readings.map(({ edid, ...reading }) => reading),
    comparisons: comparisonsOf(chain, readings),
  });
}

function recorded(chain: Chain): Reading[] {
  return chain.devices.flatMap((device) =>
    device.ports.flatMap((port) =>
      port.edidHex === null
        ? []
        : readingOf({ deviceId: device.id, portId: port.id }, { kind: 'record' }, port.edidHex),
    ),
  );
}

async function fromEvidence(context: Context, chainId: string, chain: Chain): Promise<Reading[]> {
  const items = await evidenceAtChain(context, chainId, 'edid');
  return items.flatMap((item) => {
    const { deviceId, portId } = item.tie;
    const hex = edidHexOf(item);
    const isThere = chain.devices.some((device) => device.id === deviceId);
    if (item.withdrawn !== null || deviceId === null || !isThere || hex === null) return [];
    const from = { kind: 'evidence' as const, evidenceId: item.id, ticketId: item.ticketId, at: item.at };
    return readingOf({ deviceId, portId }, from, hex);
  });
}

/** None where the bytes are no EDID at all. */
function readingOf(
  place: Pick<Reading, 'deviceId' | 'portId'>,
  from: Reading['from'],
  hex: string,
): Reading[] {
  const bytes = Uint8Array.from(Buffer.from(hex, 'hex'));
  const decoded = decodeEdid(bytes);
  if (decoded.edid === null) return [];
  const { manufacturer, productCode, productName } = summarise(decoded);
  const display = [manufacturer, productCode, productName].filter((part) => part !== null).join(' ');
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  return [{ ...place, from, sha256, display, edid: decoded.edid }];
}

function comparisonsOf(chain: Chain, readings: readonly Reading[]): Comparison[] {
  const displays = new Set(
    chain.devices.filter((device) => device.role === 'display').map((device) => device.id),
  );
  return readings.flatMap((second, at) =>
    readings.slice(0, at).flatMap((first, index): Comparison[] => {
      const [before, after] = [
        { at: index, reading: first },
        { at, reading: second },
      ];
      if (first.deviceId === second.deviceId && first.portId === second.portId) {
        return [compared(before, after, 'overTime')];
      }
      if (displays.has(first.deviceId) && upstreamOf(chain, first.deviceId).has(second.deviceId)) {
        return [compared(before, after, 'passedOn')];
      }
      if (displays.has(second.deviceId) && upstreamOf(chain, second.deviceId).has(first.deviceId)) {
        return [compared(after, before, 'passedOn')];
      }
      return [];
    }),
  );
}

/** A reading and its place in the list. */
type Listed = { readonly at: number; readonly reading: Reading };

function compared(first: Listed, second: Listed, perspective: Comparison['perspective']): Comparison {
  const [one, other] = [first.reading, second.reading];
  const differences = compareEdids(one.edid, other.edid, perspective);
  return { first: first.at, second: second.at, perspective, same: one.sha256 === other.sha256, differences };
}
