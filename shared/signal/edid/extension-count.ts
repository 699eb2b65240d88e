import type { ExtensionBlock } from './tree.ts';

/** The number of extensions in the HDMI Forum's override block, or null (HDMI 2.1 section 10.3.6: first extension). */
export function overriddenCount(extensions: readonly ExtensionBlock[]): number | null {
  const [first] = extensions;
  if (first?.kind !== 'cta') return null;
  const override = first.dataBlocks.find((block) => block.kind === 'extensionOverride');
  return override?.kind === 'extensionOverride' ? override.extensionCount : null;
}

/** What byte 126 of the base block must say: 1 where an override block follows, else how many extensions there are. */
export const declaredCount = (extensions: readonly ExtensionBlock[]): number =>
  overriddenCount(extensions) === null ? Math.min(extensions.length, 255) : 1;
