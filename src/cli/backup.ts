import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { backUp } from '../backup/index.ts';
import { readConfig } from '../config.ts';
import { openDatabase } from '../database/index.ts';
import { openEvidenceStore } from '../evidence-store/index.ts';
import { startFault } from '../start-fault.ts';

const usage = 'npm run backup -- --to FOLDER [--without-secrets]';

/**
 * `npm run backup`: writes database, evidence, anchors and the data folder's secrets into a new folder in FOLDER. With a
 * database server ours may run meanwhile; an embedded database can be opened once only, so stop the server
 * first. Ends with exit code 1 where a file of the evidence is not as it was kept.
 */
async function run(to: string, secrets: boolean): Promise<void> {
  const config = readConfig(process.env);
  const { databaseUrl, dataFolder } = config;
  const database = await openDatabase({ databaseUrl, dataFolder });
  try {
    const evidenceStore = await openEvidenceStore({ folder: join(dataFolder, 'evidence') });
    const made = await backUp({ config, database, evidenceStore, now: () => new Date() }, { to, secrets });
    for (const { orgId, sha256, is } of made.lacking) console.error(`file ${sha256} of ${orgId}: ${is}`);
    console.log(`${made.folder}: ${made.rows} rows, ${made.files} files`);
    if (made.lacking.length > 0) process.exitCode = 1;
  } finally {
    await database.close();
  }
}

const { values } = parseArgs({
  options: { to: { type: 'string' }, 'without-secrets': { type: 'boolean', default: false } },
});
try {
  if (values.to === undefined) {
    console.error(usage);
    process.exitCode = 2;
  } else await run(values.to, !values['without-secrets']);
} catch (error) {
  console.error(startFault(error));
  process.exitCode = 1;
}
