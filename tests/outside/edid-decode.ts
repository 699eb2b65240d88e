import { execFileSync } from 'node:child_process';

/**
 * What Debian's `edid-decode` prints for these arguments. Throws, so that a test fails rather than passes by default,
 * when the program isn't there or refuses.
 */
export function edidDecode(...args: string[]): string {
  try {
    return execFileSync('edid-decode', args, { encoding: 'utf8' });
  } catch (cause) {
    const missing = (cause as NodeJS.ErrnoException).code === 'ENOENT';
    throw new Error(
      missing
        ? 'edid-decode is not installed; these checks need it (Debian package edid-decode)'
        : `edid-decode ${args.join(' ')} failed`,
      { cause },
    );
  }
}
