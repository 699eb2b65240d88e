import { createHash } from 'node:crypto';
import type { z } from 'zod';
import { upstreamOf } from '../../../shared/chain/graph.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import { type edidComparison, type edidReading, edidReadings } from '../../../shared/contract/signal.ts';
import { compareEdids } from '../../../shared/signal/edid/compare.ts';
import { decodeEdid, type Edid, summarise } from '../../../shared/signal/edid/index.ts';
import { replyTask } from '../../heavy-work/task.ts';

type Reading = z.infer<typeof edidReading> & { edid: Edid };
type Comparison = z.infer<typeof edidComparison>;

/** An EDID that evidence at a chain was read from; `edidHex` in lower-case hexadecimal. */
export type ReadEdid = {
  readonly evidenceId: string;
  readonly ticketId: string;
  readonly at: string;
  readonly deviceId: string;
  readonly portId: string | null;
  readonly edidHex: string;
};
/** All EDIDs that are known of a chain: those of its record, and those read since. */
export type EdidsOfChain = { readonly chain: Chain; readonly read: readonly ReadEdid[] };

/** Every pair is compared, so that many EDIDs take long. */
export const edidsWork = replyTask('edids', edidReadings, (edids: EdidsOfChain) => edidReadingsIn(edids));

/** Every EDID of a chain, and each pair that says something: the same place at two times, and a display's own against what is seen before it. */
export function edidReadingsIn({ chain, read }: EdidsOfChain): z.infer<typeof edidReadings> {
  const readings = [...recorded(chain), ...fromEvidence(chain, read)];
  return {
    readings: readings.map(({ edid, ...reading }) => reading),
    comparisons: comparisonsOf(chain, readings),
  };
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

const fromEvidence = (chain: Chain, read: readonly ReadEdid[]): Reading[] =>
  read.flatMap(({ deviceId, portId, edidHex, ...from }) =>
    chain.devices.some(({ id }) => id === deviceId)
      ? readingOf({ deviceId, portId }, { kind: 'evidence', ...from }, edidHex)
      : [],
  );

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
