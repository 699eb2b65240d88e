import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of package.json, in which `prisma` and `dist` lie, whether this runs from the sources or from `dist/server`. */
export const programFolder = folderOfPackage(dirname(fileURLToPath(import.meta.url)));

function folderOfPackage(folder: string): string {
  if (existsSync(join(folder, 'package.json'))) return folder;
  const above = dirname(folder);
  if (above === folder) throw new Error(`There is no package.json above ${import.meta.url}.`);
  return folderOfPackage(above);
}
