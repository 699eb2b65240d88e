/** Names that Windows keeps for devices, whatever their extension. */
const reserved = /^(con|prn|aux|nul|com\d|lpt\d)$/i;
const longestStem = 60;

/**
 * A file name that every operating system takes and that leads nowhere: ASCII letters, digits, dash and underscore,
 * 60 characters at most, without extension. Accents are dropped, everything else becomes a dash.
 */
export function safeStem(name: string): string {
  const stem = name
    .normalize('NFKD')
    .replaceAll(/\p{Mn}/gu, '')
    .replaceAll(/[^A-Za-z0-9_]+/g, '-')
    .slice(0, longestStem)
    .replaceAll(/^-+|-+$/g, '');
  return reserved.test(stem) ? `${stem}-` : stem;
}

const extensions: Readonly<Record<string, string>> = {
  'image/jpeg': '.jpg',
  'image/png': '.png',
  'image/webp': '.webp',
  'application/gzip': '.gz',
  'application/pdf': '.pdf',
  'application/json': '.json',
  'text/plain': '.txt',
};

/** By the content's type, never by the name that somebody gave it. */
export const extensionOf = (mediaType: string): string => extensions[mediaType.split(';')[0] ?? ''] ?? '.bin';

type Named = { kind: string; fileName: string | null; description: string; mediaType: string | null };

/**
 * Where an item of evidence lies in the bag: `evidence/007-photo-hdmi-in-3.jpg`. The number is its place in the
 * ticket's evidence, which only ever grows, so that a name means the same in every version of a packet.
 */
export function evidencePath(item: Named, number: number): string {
  const given = item.fileName === null ? item.description : item.fileName.replace(/\.[A-Za-z0-9]{1,8}$/, '');
  const parts = [String(number).padStart(3, '0'), item.kind, safeStem(given)];
  return `evidence/${parts.filter((part) => part !== '').join('-')}${extensionOf(item.mediaType ?? '')}`;
}
