import { bit, byteAt, littleEndian } from '../bytes.ts';
import type { DisplayIdBlock } from './extension.ts';

/** Rates between which a display follows whatever comes. `seamless`: without a visible change; null where not said. */
export type RefreshRange = {
  minHz: number;
  maxHz: number;
  minPixelClockKHz: number;
  maxPixelClockKHz: number;
  seamless: boolean | null;
};

/** How a picture is put together of several displays, or of several streams on one (DisplayID 1.3 section 4.12). */
export type Tiling = {
  columns: number;
  rows: number;
  /** Of this tile, from 0 at the upper left. */
  column: number;
  row: number;
  widthPx: number;
  heightPx: number;
};

const tags = { rangeLimits: 0x09, tiled1: 0x12, dynamicRange: 0x25, tiled2: 0x28 } as const;

type Raw = { tag: number; flags: number; payload: Uint8Array };

/** Blocks as they are in the section; only those that are kept unread can be of these tags. */
const rawBlocks = (blocks: readonly DisplayIdBlock[]): Raw[] =>
  blocks.flatMap((block) => (block.kind === 'unknown' ? block : []));

/** The variable rates of a section (DisplayID 1.3 section 4.6; DisplayID 2.0 section 4.4), or null. */
export function refreshRangeOf(blocks: readonly DisplayIdBlock[]): RefreshRange | null {
  const raw = rawBlocks(blocks);
  const dynamic = raw.find(({ tag, payload }) => tag === tags.dynamicRange && payload.length >= 9);
  if (dynamic) {
    const { payload, flags } = dynamic;
    const high = (flags & 7) >= 1 ? (byteAt(payload, 8) & 3) * 256 : 0;
    return {
      minPixelClockKHz: littleEndian(payload, 0, 3) + 1,
      maxPixelClockKHz: littleEndian(payload, 3, 3) + 1,
      minHz: byteAt(payload, 6),
      maxHz: byteAt(payload, 7) + high,
      seamless: bit(byteAt(payload, 8), 7),
    };
  }
  const limits = raw.find(({ tag, payload }) => tag === tags.rangeLimits && payload.length >= 15);
  if (!limits) return null;
  const { payload } = limits;
  return {
    minPixelClockKHz: (littleEndian(payload, 0, 3) + 1) * 10,
    maxPixelClockKHz: (littleEndian(payload, 3, 3) + 1) * 10,
    minHz: byteAt(payload, 10),
    maxHz: byteAt(payload, 11),
    seamless: null,
  };
}

/** The tiling that a section tells of, or null. */
export function tilingOf(blocks: readonly DisplayIdBlock[]): Tiling | null {
  const tiled = rawBlocks(blocks).find(
    ({ tag, payload }) => (tag === tags.tiled1 || tag === tags.tiled2) && payload.length >= 22,
  );
  if (!tiled) return null;
  const at = (index: number) => byteAt(tiled.payload, index);
  const high = at(3);
  return {
    columns: (at(1) >> 4) + ((high >> 6) & 3) * 16 + 1,
    rows: (at(1) & 15) + ((high >> 4) & 3) * 16 + 1,
    column: (at(2) >> 4) + ((high >> 2) & 3) * 16,
    row: (at(2) & 15) + (high & 3) * 16,
    widthPx: at(4) + at(5) * 256 + 1,
    heightPx: at(6) + at(7) * 256 + 1,
  };
}
