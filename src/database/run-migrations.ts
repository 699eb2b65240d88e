import { startFault } from '../start-fault.ts';
import { migrateOver } from './index.ts';
import { openEmbedded, openServer } from './pools.ts';

/** `npm run db:migrate`: applies the migrations that the database lacks, and says which. */
async function run(databaseUrl: string | undefined, dataFolder: string): Promise<void> {
  const connections = databaseUrl === undefined ? await openEmbedded(dataFolder) : openServer(databaseUrl);
  try {
    const applied = await migrateOver(connections);
    console.log(
      applied.length === 0
        ? 'The database is up to date.'
        : `Applied:${applied.map((name) => `\n  ${name}`).join('')}`,
    );
  } finally {
    await connections.close();
  }
}

try {
  await run(process.env.DATABASE_URL, process.env.HALFSPLIT_DATA ?? '.halfsplit');
} catch (error) {
  console.error(startFault(error));
  process.exitCode = 1;
}
