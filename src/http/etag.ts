import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import { message } from '../../shared/message/index.ts';
import { withoutLanguage } from './language.ts';
import { type Refused, refused } from './problem.ts';

/** A strong entity tag (RFC 9110, section 8.8.3) of a reply's body: the start of the SHA-256 of its RFC 8785 form. */
export function etagOf(body: unknown): string {
  const digest = createHash('sha256')
    .update(canonicalize(body) ?? '')
    .digest('base64url');
  return `"${digest.slice(0, 27)}"`;
}

const tagsIn = (header: string): string[] => header.match(/(?:W\/)?"[^"]*"/g) ?? [];

/** `If-None-Match`: weak comparison (RFC 9110, section 13.1.2). */
export function isUnchanged(ifNoneMatch: string | undefined, etag: string): boolean {
  if (ifNoneMatch === undefined) return false;
  return ifNoneMatch.trim() === '*' || tagsIn(ifNoneMatch).some((tag) => tag.replace(/^W\//, '') === etag);
}

/**
 * `If-Match` on an update: strong comparison with what the same reader would get now (RFC 9110, section 13.1.1),
 * in whatever language that was read.
 * Null when the update may go on.
 */
export function mismatch(ifMatch: string | undefined, current: unknown): Refused | null {
  if (ifMatch === undefined) {
    return refused('version-needed', message('versionNeeded'));
  }
  const etag = etagOf(current);
  if (ifMatch.trim() === '*' || tagsIn(ifMatch).map(withoutLanguage).includes(etag)) return null;
  return refused('version-conflict', message('versionOutdated'), { currentVersion: etag });
}
