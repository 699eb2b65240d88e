import { parseArgs } from 'node:util';
import { restore } from '../backup/index.ts';
import { placesOf } from '../config.ts';
import { startFault } from '../start-fault.ts';

const usage = 'npm run restore -- --from FOLDER/MOMENT';

/**
 * `npm run restore`: puts a backup into a database without organisations (of either kind, whichever it was made of) and
 * into the data folder. Ends with exit code 1 where nothing was restored, or files of the evidence are lacking.
 */
async function run(from: string): Promise<void> {
  const { madeAt, rows, files, lacking } = await restore(from, placesOf(process.env));
  for (const { orgId, sha256, is } of lacking) console.error(`file ${sha256} of ${orgId}: ${is}`);
  console.log(`As of ${madeAt}: ${rows} rows, ${files} files. "npm run verify" checks them.`);
  if (lacking.length > 0) process.exitCode = 1;
}

const { values } = parseArgs({ options: { from: { type: 'string' } } });
try {
  if (values.from === undefined) {
    console.error(usage);
    process.exitCode = 2;
  } else await run(values.from);
} catch (error) {
  console.error(startFault(error));
  process.exitCode = 1;
}
