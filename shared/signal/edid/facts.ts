import type { Descriptor } from './base/descriptors.ts';
import type { DetailedTiming } from './base/detailed-timing.ts';
import type { DataBlock } from './cta/data-blocks.ts';
import type { CtaExtension } from './cta/extension.ts';
import { mapNames, mapReach, namesFormat, type ShortVideoDescriptor } from './cta/video.ts';
import type { DisplayIdBlock } from './displayid/extension.ts';
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

/** The blocks of all DisplayID sections. */
export const displayIdBlocks = (edid: Edid): DisplayIdBlock[] =>
  edid.extensions.flatMap((extension) => (extension.kind === 'displayId' ? [...extension.blocks] : []));

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
  blocksOf(blocks, 'video').flatMap((block) => block.formats);

/**
 * VICs that are taken as YCbCr 4:2:0 besides other encodings; `blocks` are those of the whole EDID. A later map adds
 * what is new.
 */
export function ycbcr420CapabilityVics(blocks: readonly DataBlock[]): number[] {
  const formats = shortVideoDescriptors(blocks);
  const distinct = new Set(formats.map(({ vic }) => vic)).size;
  const seen = new Set<number>();
  const vics: number[] = [];
  for (const { map } of blocksOf(blocks, 'ycbcr420Map')) {
    if (seen.size === distinct) break;
    const from = vics.length;
    for (const [position, { vic }] of formats.slice(0, mapReach(map)).entries())
      if (!seen.has(vic) && mapNames(map, position)) vics.push(vic);
    for (const vic of vics.slice(from)) seen.add(vic);
  }
  return vics.filter(namesFormat);
}

/** VICs that are taken as YCbCr 4:2:0 only. */
export const ycbcr420Vics = (blocks: readonly DataBlock[]): number[] =>
  blocksOf(blocks, 'ycbcr420Video')
    .flatMap((block) => block.formats.map(({ vic }) => vic))
    .filter(namesFormat);
