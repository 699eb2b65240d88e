import { copyFile, mkdir, readFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { type DatabasePlace, NotRestorableError, restoreTables } from '../database/index.ts';
import { copyContent, openEvidenceStore, type StoredContent } from '../evidence-store/index.ts';
import type { NotBackedUp } from './back-up.ts';
import {
  type Backup,
  backupSchema,
  contentsFile,
  dataFolder,
  descriptionFile,
  evidenceFile,
  evidenceFolder,
  hashOf,
  readHashes,
  readRows,
} from './folder.ts';

export type RestoreReport = {
  readonly madeAt: string;
  readonly rows: number;
  readonly files: number;
  /** Files that the backup names and no longer has as they were. */
  readonly lacking: readonly NotBackedUp[];
};

/**
 * Puts a backup into a database without organisations, whichever kind either of them is, and into a data folder. First
 * the evidence, then all rows at once, then anchors and secrets.
 * @throws NotRestorableError where nothing was restored: the backup is damaged, unfinished or of a newer program, or
 * somebody has something in the database
 */
export async function restore(from: string, where: DatabasePlace): Promise<RestoreReport> {
  const backup = await readWhole(from);
  let evidence: Pick<RestoreReport, 'files' | 'lacking'> = { files: 0, lacking: [] };
  const tables = backup.tables.map(({ name }) => ({ name, rows: () => readRows(from, name) }));
  await restoreTables(where, {
    migrations: backup.migrations,
    tables,
    beforeRows: async () => {
      evidence = await restoreEvidence(from, where.dataFolder);
    },
  });
  for (const name of backup.data) await restoreData(from, where.dataFolder, name);
  const rows = backup.tables.reduce((sum, table) => sum + table.rows, 0);
  return { madeAt: backup.madeAt, rows, ...evidence };
}

/** What a backup says of itself. @throws NotRestorableError where one of its files is not the one that was written */
async function readWhole(folder: string): Promise<Backup> {
  const files = await readHashes(folder, contentsFile).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'ENOENT') throw error;
    throw new NotRestorableError(`${folder}: no finished backup is here (${contentsFile} is missing).`);
  });
  for (const { path, sha256 } of files) {
    const found = await hashOf(join(folder, path)).catch(() => null);
    if (found !== sha256)
      throw new NotRestorableError(`${join(folder, path)}: ${found === null ? 'missing' : 'damaged'}.`);
  }
  const backup = backupSchema.safeParse(JSON.parse(await readFile(join(folder, descriptionFile), 'utf8')));
  if (backup.success) return backup.data;
  throw new NotRestorableError(`${join(folder, descriptionFile)}: not of a kind that this program knows.`);
}

async function restoreEvidence(from: string, to: string): Promise<Pick<RestoreReport, 'files' | 'lacking'>> {
  const backedUp = await openEvidenceStore({ folder: join(from, evidenceFolder) });
  const store = await openEvidenceStore({ folder: join(to, 'evidence') });
  const lacking: NotBackedUp[] = [];
  const list = await readHashes(from, evidenceFile);
  for (const { path, sha256 } of list) {
    const content: StoredContent = { orgId: basename(dirname(dirname(path))), sha256 };
    const is = await copyContent(content, backedUp, store);
    if (is !== 'whole') lacking.push({ ...content, is });
  }
  return { files: list.length - lacking.length, lacking };
}

async function restoreData(from: string, to: string, name: string): Promise<void> {
  await mkdir(dirname(join(to, name)), { recursive: true, mode: 0o700 });
  await copyFile(join(from, dataFolder, name), join(to, name));
}
