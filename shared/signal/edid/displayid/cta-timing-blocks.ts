import type { Timing } from '../../timings/index.ts';
import { bit, byteAt } from '../bytes.ts';
import type { DataBlock } from '../cta/data-blocks.ts';
import { rasterOfDisplayId } from '../raster.ts';
import { namedTimings } from './named-timings.ts';
import { decodeDisplayIdTimings } from './timings.ts';

/*
 * Data blocks of CTA-861 that hold timings as DisplayID writes them: one revision byte, then its payload (CTA-861-H sections
 * 7.5.17 to 7.5.19). They are kept as they were read; what they say is read out of them here.
 */
const extendedTags = { detailedVII: 0x22, codesVIII: 0x23, formulaX: 0x2a } as const;
/** The same blocks in DisplayID. */
const displayIdTags = { codesVIII: 0x23, formulaX: 0x2a } as const;
const longLength = 20;

type ListedTiming = { timing: Timing; in420: boolean };

/** True for a block of one of these tags. */
export const listsTimings = (block: DataBlock): boolean =>
  block.kind === 'unknown' && Object.values<number | null>(extendedTags).includes(block.extendedTag);

/** The timings of such a block, in its order; none for any other. */
export function listedTimings(block: DataBlock): ListedTiming[] {
  if (block.kind !== 'unknown') return [];
  const flags = byteAt(block.payload, 0);
  const payload = block.payload.subarray(1);
  switch (block.extendedTag) {
    case extendedTags.detailedVII:
      return entriesVII(payload, longLength + ((flags >> 4) & 7)).flatMap((entry) =>
        decodeDisplayIdTimings('VII', entry).timings.map((timing) => ({
          timing: rasterOfDisplayId(timing),
          // The bit that says in DisplayID which timing is preferred.
          in420: timing.preferred,
        })),
      );
    case extendedTags.codesVIII:
      // Codes of other lists than the DMT's are reserved here.
      return flags >> 6 === 0
        ? named({ tag: displayIdTags.codesVIII, flags }, payload, () => bit(flags, 5))
        : [];
    case extendedTags.formulaX: {
      const length = ((flags >> 4) & 7) + 6;
      return named({ tag: displayIdTags.formulaX, flags }, payload, (at) =>
        bit(byteAt(payload, at * length), 7),
      );
    }
    default:
      return [];
  }
}

const entriesVII = (payload: Uint8Array, length: number): Uint8Array[] =>
  Array.from({ length: Math.floor(payload.length / length) }, (_, i) =>
    payload.subarray(i * length, i * length + longLength),
  );

function named(
  { tag, flags }: { tag: number; flags: number },
  payload: Uint8Array,
  in420: (position: number) => boolean,
): ListedTiming[] {
  return namedTimings({ kind: 'unknown', tag, flags, payload }).map((timing, at) => ({
    timing,
    in420: in420(at),
  }));
}
