import { encodeBaseBlock } from './base/base-block.ts';
import { blockSize, checksumOf, concatBytes } from './bytes.ts';
import { encodeCtaExtension } from './cta/extension.ts';
import { encodeDisplayIdExtension } from './displayid/extension.ts';
import { declaredCount } from './extension-count.ts';
import type { BlockMap, Edid, ExtensionBlock } from './tree.ts';

export const blockMapTag = 0xf0;

function withChecksum(tag: number, content: Uint8Array | readonly number[]): Uint8Array {
  const bytes = new Uint8Array(blockSize);
  bytes[0] = tag;
  bytes.set(content.slice(0, blockSize - 2), 1);
  bytes[blockSize - 1] = checksumOf(bytes, 0, blockSize - 1);
  return bytes;
}

/** The 128 bytes of a block map. */
export const encodeBlockMap = (map: BlockMap): Uint8Array => withChecksum(blockMapTag, map.tags);

function encodeExtension(extension: ExtensionBlock): Uint8Array {
  switch (extension.kind) {
    case 'cta':
      return encodeCtaExtension(extension);
    case 'displayId':
      return encodeDisplayIdExtension(extension);
    case 'blockMap':
      return encodeBlockMap(extension);
    case 'other':
      return withChecksum(extension.tag, extension.content);
  }
}

/**
 * The bytes of an EDID, with right header, counts and checksums. For an EDID that was read without an error these are
 * the very bytes it was read from, copies of the whole included. Content that doesn't fit its block is cut off (`ctaSpaceLeft`,
 * `displayIdSpaceLeft` tell beforehand); nothing throws.
 */
export function encodeEdid(edid: Edid): Uint8Array {
  const once = [
    encodeBaseBlock(edid.base, declaredCount(edid.extensions)),
    ...edid.extensions.map(encodeExtension),
  ];
  return concatBytes(edid.copies === undefined ? once : new Array(edid.copies).fill(once).flat());
}
