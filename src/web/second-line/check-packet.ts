import { unzipSync } from 'fflate';
import { checkSignature, type PacketSignature, sha256Of } from './packet-signature.ts';

/** `unlisted`: it is in the zip, and no manifest knows it. */
export type FileCheck = { path: string; status: 'ok' | 'changed' | 'missing' | 'unlisted' };
export type PacketCheck =
  | { kind: 'checked'; folder: string; files: readonly FileCheck[]; signature: PacketSignature }
  | { kind: 'noZip' }
  | { kind: 'noManifest' };

const [manifestName, tagManifestName] = ['manifest-sha256.txt', 'tagmanifest-sha256.txt'];
/** The signature over the tag manifest can't be listed in it. */
const [signatureName, publicKeyName] = ['tagmanifest-sha256.sig', 'public-key.pem'];

/**
 * Checks every file of a case packet against the SHA-256 that its manifests give: a BagIt bag (RFC 8493, sections
 * 2.1.3 and 2.2.1) in a zip. The tag manifest vouches for the manifest itself. One file is unpacked at a time.
 *
 * @param onProgress files done, and of how many
 */
export async function checkPacket(
  zip: Blob,
  onProgress: (done: number, of: number) => void = () => undefined,
): Promise<PacketCheck> {
  const bytes = new Uint8Array(await zip.arrayBuffer());
  const names = namesIn(bytes);
  if (names === null) return { kind: 'noZip' };
  const manifestPath = names
    .filter((name) => name === manifestName || name.endsWith(`/${manifestName}`))
    .sort((a, b) => a.length - b.length)[0];
  if (manifestPath === undefined) return { kind: 'noManifest' };
  const folder = manifestPath.slice(0, -manifestName.length);
  const listed = new Map([
    ...listIn(textOf(bytes, folder + manifestName)),
    ...listIn(textOf(bytes, folder + tagManifestName)),
  ]);
  const files: FileCheck[] = [];
  for (const [path, hash] of listed) {
    onProgress(files.length, listed.size);
    files.push({ path, status: await statusOf({ bytes, names }, folder + path, hash) });
  }
  const isKnown = (name: string) =>
    listed.has(name.slice(folder.length)) ||
    name === folder + tagManifestName ||
    name === folder + signatureName ||
    name.endsWith('/');
  const unlisted = names.filter((name) => !name.startsWith(folder) || !isKnown(name));
  return {
    kind: 'checked',
    folder: folder.replace(/\/$/, ''),
    signature: await checkSignature({
      content: contentOf(bytes, folder + tagManifestName),
      signature: contentOf(bytes, folder + signatureName),
      publicKey: textOf(bytes, folder + publicKeyName),
    }),
    files: [
      ...files,
      ...unlisted.map((path): FileCheck => ({ path: path.slice(folder.length), status: 'unlisted' })),
    ].sort((a, b) => (a.path < b.path ? -1 : 1)),
  };
}

/** The names in a zip; null when it is none. */
function namesIn(bytes: Uint8Array): string[] | null {
  const names: string[] = [];
  try {
    unzipSync(bytes, {
      filter: ({ name }) => {
        names.push(name);
        return false;
      },
    });
  } catch {
    return null;
  }
  return names;
}

/** One file of the zip; null when it is not in it, or can't be unpacked any more. */
function contentOf(bytes: Uint8Array, name: string): Uint8Array | null {
  try {
    return unzipSync(bytes, { filter: (file) => file.name === name })[name] ?? null;
  } catch {
    return null;
  }
}

const textOf = (bytes: Uint8Array, name: string): string =>
  new TextDecoder().decode(contentOf(bytes, name) ?? new Uint8Array());

/** Path and hash of each line; CR, LF and % of a path are percent-encoded (RFC 8493, section 2.1.3). */
const listIn = (manifest: string): [path: string, hash: string][] =>
  manifest.split('\n').flatMap((line): [string, string][] => {
    const [, hash, path] = /^([0-9a-fA-F]{64})[ \t]+\*?(.+?)\r?$/.exec(line) ?? [];
    if (hash === undefined || path === undefined) return [];
    const decoded = path.replaceAll(/%0D/gi, '\r').replaceAll(/%0A/gi, '\n').replaceAll('%25', '%');
    return [[decoded, hash.toLowerCase()]];
  });

async function statusOf(
  { bytes, names }: { bytes: Uint8Array; names: readonly string[] },
  name: string,
  hash: string,
): Promise<FileCheck['status']> {
  if (!names.includes(name)) return 'missing';
  const content = contentOf(bytes, name);
  if (content === null) return 'changed';
  return (await sha256Of(content)) === hash ? 'ok' : 'changed';
}
