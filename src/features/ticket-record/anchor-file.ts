import { createHash, type KeyObject, sign, verify } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';

/** The newest event of a ticket's log at a moment. */
export type Head = { readonly ticketId: string; readonly sequence: number; readonly hash: string };

export type Anchor = {
  readonly orgId: string;
  /** UTC, ISO 8601. */
  readonly madeAt: string;
  /** SHA-256 of the anchor before it, 64 zeros in the first. */
  readonly before: string;
  /** Of the logs that went on since the one before. */
  readonly heads: readonly Head[];
};

export const noAnchorBefore = '0'.repeat(64);
export const digestOfAnchor = (text: string): string => createHash('sha256').update(text).digest('hex');

/** An anchor as a text of lines, the last of which is Ed25519 (RFC 8032) in base64url over all before it. */
export function anchorText({ orgId, madeAt, before, heads }: Anchor, key: KeyObject): string {
  const lines = heads.map(({ ticketId, sequence, hash }) => `${ticketId} ${sequence} ${hash}\n`);
  const content = `halfsplit anchor 1\n${orgId} ${madeAt} ${before}\n${lines.join('')}`;
  return `${content}${sign(null, Buffer.from(content), key).toString('base64url')}\n`;
}

/**
 * What an anchor says; null where it was not signed with that key, or is no anchor.
 * @param key private or public
 */
export function readAnchor(text: string, key: KeyObject): Anchor | null {
  const [, content = '', signature = ''] = /^(halfsplit anchor 1\n.*\n)([\w-]{86})\n$/s.exec(text) ?? [];
  if (!verify(null, Buffer.from(content), key, Buffer.from(signature, 'base64url'))) return null;
  const [, about = '', ...lines] = content.trimEnd().split('\n');
  const [orgId = '', madeAt = '', before = ''] = about.split(' ');
  const heads = lines.map((line): Head => {
    const [ticketId = '', sequence, hash = ''] = line.split(' ');
    return { ticketId, sequence: Number(sequence), hash };
  });
  return { orgId, madeAt, before, heads };
}

export type AnchorFile = { readonly day: string; readonly path: string };

/** An organisation's anchors, oldest first; none where there is no such folder. */
export async function anchorFiles(folder: string, orgId: string): Promise<AnchorFile[]> {
  const names = await readdir(join(folder, orgId)).catch((error: NodeJS.ErrnoException): string[] => {
    if (error.code === 'ENOENT') return [];
    throw error;
  });
  return names
    .filter((name) => /^\d{4}-\d{2}-\d{2}\.txt$/.test(name))
    .toSorted()
    .map((name) => ({ day: name.slice(0, 10), path: join(folder, orgId, name) }));
}

export const readAnchorFile = ({ path }: AnchorFile): Promise<string> => readFile(path, 'utf8');
