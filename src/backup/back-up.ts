import { createReadStream, existsSync } from 'node:fs';
import { mkdir, readdir, rename, rm } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { Readable } from 'node:stream';
import { secretFiles } from '../config.ts';
import type { TableCopy, TablesAtOneMoment } from '../database/index.ts';
import {
  type Condition,
  copyContent,
  openEvidenceStore,
  pathOfContent,
  type StoredContent,
} from '../evidence-store/index.ts';
import { anchorFolder } from '../features/ticket-record/index.ts';
import type { Services } from '../services.ts';
import {
  type Backup,
  contentsFile,
  dataFolder,
  descriptionFile,
  evidenceFile,
  evidenceFolder,
  type HashedFile,
  hashLine,
  tableFile,
  writeHashed,
} from './folder.ts';

export type NotBackedUp = StoredContent & { readonly is: Exclude<Condition, 'whole'> };
export type BackupReport = {
  readonly folder: string;
  readonly rows: number;
  readonly files: number;
  /** Files whose bytes are not those they were kept for: they are in no backup. */
  readonly lacking: readonly NotBackedUp[];
};

/**
 * Writes database, evidence, anchors and secrets into a new folder in `to`, named by the moment (UTC) that it shows. The
 * server may go on meanwhile: what it writes after that moment is in the next one. A folder that lacks `contents.sha256`,
 * or is called unfinished, is no backup.
 */
export async function backUp(
  { config, database, evidenceStore, now }: Pick<Services, 'config' | 'database' | 'evidenceStore' | 'now'>,
  { to, secrets }: { readonly to: string; readonly secrets: boolean },
): Promise<BackupReport> {
  const madeAt = now().toISOString();
  const folder = join(to, madeAt.replaceAll(/[:.]/g, '-'));
  const draft = `${folder}.unfinished`;
  await mkdir(draft, { recursive: true, mode: 0o700 });
  try {
    const copied = await database.readTables((tables) => writeTables(draft, tables));
    // After the tables: what they name was kept before they named it.
    const evidence = await writeEvidence(draft, evidenceStore);
    const data = await writeData(draft, config.dataFolder, secrets);
    const backup: Backup = {
      format: 1,
      madeAt,
      migrations: copied.migrations,
      tables: copied.tables,
      data: data.map(({ path }) => relative(dataFolder, path)),
    };
    const files = [
      await writeText(draft, descriptionFile, `${JSON.stringify(backup, null, 2)}\n`),
      ...copied.files,
      ...data,
      evidence.list,
    ];
    await writeText(draft, contentsFile, files.map(hashLine).join(''));
    await rename(draft, folder);
    const rows = copied.tables.reduce((sum, table) => sum + table.rows, 0);
    return { folder, rows, files: evidence.files, lacking: evidence.lacking };
  } catch (error) {
    await rm(draft, { recursive: true, force: true });
    throw error;
  }
}

type CopiedTables = { migrations: string[]; tables: Backup['tables']; files: HashedFile[] };

async function writeTables(folder: string, { migrations, tables }: TablesAtOneMoment): Promise<CopiedTables> {
  const copied: CopiedTables = { migrations: [...migrations], tables: [], files: [] };
  for (const table of tables) {
    const count = { rows: 0 };
    const lines = Readable.from(linesOf(table, count));
    copied.files.push(await writeHashed(folder, tableFile(table.name), lines, { gzip: true }));
    copied.tables.push({ name: table.name, rows: count.rows });
  }
  return copied;
}

async function* linesOf(table: TableCopy, count: { rows: number }): AsyncGenerator<string> {
  for await (const row of table.rows()) {
    count.rows += 1;
    yield `${row}\n`;
  }
}

async function writeEvidence(folder: string, from: Services['evidenceStore']) {
  const to = await openEvidenceStore({ folder: join(folder, evidenceFolder) });
  const kept: HashedFile[] = [];
  const lacking: NotBackedUp[] = [];
  for await (const content of from.contents()) {
    const is = await copyContent(content, from, to);
    if (is !== 'whole') lacking.push({ ...content, is });
    else
      kept.push({
        path: join(evidenceFolder, pathOfContent(content.orgId, content.sha256)),
        sha256: content.sha256,
      });
  }
  const list = await writeText(folder, evidenceFile, kept.map(hashLine).join(''));
  return { list, files: kept.length, lacking };
}

async function writeData(folder: string, from: string, secrets: boolean): Promise<HashedFile[]> {
  const anchors = anchorFolder(from);
  const names = existsSync(anchors)
    ? (await readdir(anchors, { recursive: true, withFileTypes: true }))
        .filter((entry) => entry.isFile() && entry.name.endsWith('.txt'))
        .map((entry) => relative(from, join(entry.parentPath, entry.name)))
    : [];
  const kept = secrets ? secretFiles.filter((name) => existsSync(join(from, name))) : [];
  const written: HashedFile[] = [];
  for (const name of [...names, ...kept])
    written.push(await writeHashed(folder, join(dataFolder, name), createReadStream(join(from, name))));
  return written;
}

const writeText = (folder: string, name: string, text: string): Promise<HashedFile> =>
  writeHashed(folder, name, Readable.from([text]));
