import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * Makes the database client of the sources, where Prisma's tool is installed. Where only what the built server needs is
 * installed, there is nothing to do: dist/server holds the client.
 */
function installedTool() {
  try {
    const path = createRequire(import.meta.url).resolve('prisma-cli/package.json');
    return join(dirname(path), JSON.parse(readFileSync(path, 'utf8')).bin.prisma);
  } catch (error) {
    if (error.code === 'MODULE_NOT_FOUND') return null;
    throw error;
  }
}

const tool = installedTool();
if (tool !== null) {
  const cwd = fileURLToPath(new URL('..', import.meta.url));
  process.exitCode = spawnSync(process.execPath, [tool, 'generate'], { cwd, stdio: 'inherit' }).status ?? 1;
}
