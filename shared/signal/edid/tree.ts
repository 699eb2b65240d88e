import type { BaseBlock } from './base/base-block.ts';
import type { CtaExtension } from './cta/extension.ts';
import type { DisplayIdExtension } from './displayid/extension.ts';

/** Tags of the extension blocks that follow (E-EDID A.2 section 2.2.3). `tags` holds 126 of them, 0 for none. */
export type BlockMap = { kind: 'blockMap'; tags: readonly number[] };

/** Any other extension, byte for byte: 126 bytes between its tag and its checksum. */
export type OtherExtension = { kind: 'other'; tag: number; content: Uint8Array };

export type ExtensionBlock = CtaExtension | DisplayIdExtension | BlockMap | OtherExtension;

/** A whole EDID. Encoding works out header, counts and checksums; everything else is in the tree. */
export type Edid = {
  base: BaseBlock;
  extensions: readonly ExtensionBlock[];
  /** How often the whole of it stands in what was read, where more than once: dumps of a larger memory repeat it. */
  copies?: number;
};
