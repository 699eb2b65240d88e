import type { BagFile } from '../../../shared/contract/packet.ts';

/** The bag declaration (RFC 8493, section 2.1.1). */
export const bagDeclaration = 'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n';

/**
 * A manifest (RFC 8493, section 2.1.3): hash, two spaces and path a line, which is also what `sha256sum -c` reads.
 * CR, LF and % in a path are percent-encoded, and nothing else is.
 */
export const manifest = (files: readonly BagFile[]): string =>
  [...files]
    .sort((a, b) => (a.path < b.path ? -1 : 1))
    .map(({ path, sha256 }) => `${sha256}  ${encodedPath(path)}\n`)
    .join('');

const encodedPath = (path: string): string =>
  path.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');

/** Octets and streams of the payload (RFC 8493, section 2.2.2). */
export const payloadOxum = (payload: readonly BagFile[]): string =>
  `${payload.reduce((sum, file) => sum + file.sizeBytes, 0)}.${payload.length}`;

/** Metadata of the bag (RFC 8493, section 2.2.2): long or broken values go on in indented lines. */
export const bagInfo = (elements: readonly (readonly [label: string, value: string])[]): string =>
  elements
    .map(([label, value]) => `${folded(`${label}: ${value.replaceAll(/\s+/g, ' ').trim()}`)}\n`)
    .join('');

const lineLength = 79;

function folded(text: string): string {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= lineLength)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(lines.length === 0 ? word : `  ${word}`);
  }
  return lines.join('\n');
}
