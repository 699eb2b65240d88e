import { encodeBaseBlock } from './base/base-block.ts';
import { type Descriptor, encodeDescriptor } from './base/descriptors.ts';
import { sameBytes } from './bytes.ts';
import { type DataBlock, encodeDataBlock } from './cta/data-blocks.ts';
import { encodeCtaExtension } from './cta/extension.ts';
import {
  type DisplayIdBlock,
  encodeDisplayIdBlock,
  encodeDisplayIdExtension,
} from './displayid/extension.ts';
import { type Exact, edited } from './exact.ts';
import type { Edid, ExtensionBlock } from './tree.ts';

/**
 * The same EDID with `exactBytes` only in parts whose fields would encode to other bytes: what a person reads and edits,
 * and what shows that the fields say all there is. It encodes to the very same bytes.
 */
export function withoutNeedlessBytes(edid: Edid): Edid {
  const base = { ...edid.base, descriptors: edid.base.descriptors.map(plainDescriptor) };
  return {
    ...edid,
    base: plain(base, (block) => encodeBaseBlock(block, 0)),
    extensions: edid.extensions.map(plainExtension),
  };
}

function plain<Part extends Exact>(part: Part, encode: (part: Part) => Uint8Array): Part {
  if (part.exactBytes === undefined) return part;
  const fields = edited(part, {});
  return sameBytes(encode(fields), encode(part)) ? fields : part;
}

const plainDescriptor = (slot: Descriptor): Descriptor => plain(slot, encodeDescriptor);
const plainDataBlock = (block: DataBlock): DataBlock => plain(block, encodeDataBlock);

function plainExtension(extension: ExtensionBlock): ExtensionBlock {
  switch (extension.kind) {
    case 'cta': {
      const { dataBlocks, timings } = extension;
      const parts = { dataBlocks: dataBlocks.map(plainDataBlock), timings: timings.map(plainDescriptor) };
      return plain({ ...extension, ...parts }, encodeCtaExtension);
    }
    case 'displayId':
      return plain(
        { ...extension, blocks: extension.blocks.map(plainDisplayIdBlock) },
        encodeDisplayIdExtension,
      );
    default:
      return extension;
  }
}

function plainDisplayIdBlock(block: DisplayIdBlock): DisplayIdBlock {
  const parts = block.kind === 'cta' ? { ...block, dataBlocks: block.dataBlocks.map(plainDataBlock) } : block;
  return plain(parts, encodeDisplayIdBlock);
}
