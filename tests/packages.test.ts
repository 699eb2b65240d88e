import { readFileSync } from 'node:fs';
import semver from 'semver';
import { describe, expect, it } from 'vitest';

type Package = {
  name?: string;
  version?: string;
  resolved?: string;
  integrity?: string;
  engines?: { node?: string };
};

const read = (name: string) => JSON.parse(readFileSync(new URL(`../${name}`, import.meta.url), 'utf8'));
const { engines } = read('package.json') as { engines: { node: string } };
const locked = Object.entries(read('package-lock.json').packages as Record<string, Package>)
  .filter(([path]) => path !== '')
  .map(([path, about]) => ({ path, name: path.slice(path.lastIndexOf('node_modules/') + 13), ...about }));
// An alias keeps the package's own name beside its path: `prisma-cli` is `prisma`.

describe('the packages in the lock file', () => {
  it('all run on the oldest Node that we promise', () => {
    const oldest = semver.minVersion(engines.node);
    expect(oldest?.version).toBe('20.19.0');
    const wantMore = locked.filter(({ engines: own }) => !semver.satisfies('20.19.0', own?.node ?? '*'));
    expect(wantMore).toEqual([]);
  });

  it('hold one version of Prisma', () => {
    // What Prisma builds and numbers together; its tools beside (studio, local server) have numbers of their own.
    const released = locked.filter(({ name }) =>
      /^(prisma|@prisma\/(client.*|adapter-.*|driver-adapter-utils|internals|config|engines|debug|get-platform))$/.test(
        name,
      ),
    );
    expect(released.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['@prisma/client', '@prisma/adapter-pg', '@prisma/internals', 'prisma']),
    );
    expect(new Set(released.map(({ version }) => version))).toEqual(new Set(['7.10.0']));
  });

  it('come from whichever registry an installation uses, and are checked by their digest', () => {
    expect(locked.filter(({ resolved }) => resolved !== undefined)).toEqual([]);
    expect(locked.filter(({ integrity }) => integrity === undefined)).toEqual([]);
  });
});
