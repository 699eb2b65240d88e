import { readdirSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Builds the client, unless what was built is newer than everything that it is built from. */
const root = fileURLToPath(new URL('../..', import.meta.url));
const sources = ['src/web', 'shared', 'state-machines', 'vite.config.ts', 'package-lock.json'];

const newestIn = (path: string): number => {
  const entry = statSync(path);
  if (!entry.isDirectory()) return entry.mtimeMs;
  return readdirSync(path).reduce((newest, name) => Math.max(newest, newestIn(`${path}/${name}`)), 0);
};
const builtAt = (): number => {
  try {
    return statSync(`${root}dist/client/index.html`).mtimeMs;
  } catch {
    return 0;
  }
};

if (builtAt() < Math.max(...sources.map((source) => newestIn(root + source)))) {
  console.log('Building the client …');
  // Only here: where the client comes built, its tools need not be installed.
  const { build } = await import('vite');
  await build({ configFile: `${root}vite.config.ts` });
}
