import { message } from '../../shared/message/index.ts';
import { etagOf } from '../replies/spoken.ts';
import { withoutLanguage } from './language.ts';
import { type Refused, refused } from './problem.ts';

export { etagOf };

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
