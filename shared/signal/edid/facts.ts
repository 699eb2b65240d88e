import type { Descriptor } from './base/descriptors.ts';
import type { DetailedTiming } from './base/detailed-timing.ts';
import type { DataBlock } from './cta/data-blocks.ts';
import type { CtaExtension } from './cta/extension.ts';
import { capabilityMapIndexes, namesFormat, type ShortVideoDescriptor } from './cta/video.ts';
import type { Edid } from './tree.ts';

/** Answers that several readers of a tree share. Everything comes in the order of the blocks. */

export const ctaExtensions = (edid: Edid): CtaExtension[] =>
  edid.extensions.filter((extension) => extension.kind === 'cta');

/** Data blocks by extension: of each CTA-861 one, and of each DisplayID one that carries some. */
export function dataBlocksByExtension(edid: Edid): (readonly DataBlock[])[] {
  return edid.extensions.flatMap((extension): (readonly DataBlock[])[] => {
    if (extension.kind === 'cta') return [extension.dataBlocks];
    if (extension.kind !== 'displayId') return [];
    const blocks = extension.blocks.flatMap((block) => (block.kind === 'cta' ? block.dataBlocks : []));
    return blocks.length > 0 ? [blocks] : [];
  });
}

export const dataBlocks = (edid: Edid): DataBlock[] => dataBlocksByExtension(edid).flat();

/** The data blocks of one kind. */
export const blocksOf = <K extends DataBlock['kind']>(
  blocks: readonly DataBlock[],
  kind: K,
): Extract<DataBlock, { kind: K }>[] =>
  blocks.filter((block): block is Extract<DataBlock, { kind: K }> => block.kind === kind);

/** The 18-byte slots of the base block, then of the CTA-861 extensions. */
export const descriptors = (edid: Edid): Descriptor[] => [
  ...edid.base.descriptors,
  ...ctaExtensions(edid).flatMap((cta) => cta.timings),
];

/** 18-byte detailed timings of the base block, then of the CTA-861 extensions; repeats are kept. */
export const detailedTimings = (edid: Edid): DetailedTiming[] =>
  descriptors(edid).flatMap((slot) => (slot.kind === 'timing' ? [slot.timing] : []));

/** The first text of a role, or null where no descriptor has it. */
export function firstText(edid: Edid, role: 'productName' | 'productSerial'): string | null {
  const found = descriptors(edid).find((slot) => slot.kind === 'text' && slot.role === role);
  return found?.kind === 'text' ? found.text : null;
}

/** All short video descriptors, reserved codes among them: capability maps count those too. */
export const shortVideoDescriptors = (blocks: readonly DataBlock[]): ShortVideoDescriptor[] =>
  blocksOf(blocks, 'video').flatMap((block) => [...block.formats]);

/**
 * VICs that are taken as YCbCr 4:2:0 besides other encodings; `blocks` are those of the whole EDID. What two maps name
 * counts once, or a hostile EDID could make the list as long as it likes.
 */
export function ycbcr420CapabilityVics(blocks: readonly DataBlock[]): number[] {
  const formats = shortVideoDescriptors(blocks);
  const indexes = new Set<number>();
  for (const { map } of blocksOf(blocks, 'ycbcr420Map')) {
    if (indexes.size === formats.length) break;
    for (const index of capabilityMapIndexes(map, formats.length)) indexes.add(index);
  }
  return [...indexes].map((index) => formats[index]?.vic ?? 0).filter(namesFormat);
}

/** VICs that are taken as YCbCr 4:2:0 only. */
export const ycbcr420Vics = (blocks: readonly DataBlock[]): number[] =>
  blocksOf(blocks, 'ycbcr420Video')
    .flatMap((block) => block.formats.map(({ vic }) => vic))
    .filter(namesFormat);
