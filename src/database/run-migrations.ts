import { placesOf } from '../config.ts';
import { startFault } from '../start-fault.ts';
import { migrateOver } from './index.ts';
import { connectTo } from './pools.ts';

/** `npm run db:migrate`: applies the migrations that the database lacks, and says which. */
async function run(): Promise<void> {
  const connections = await connectTo(placesOf(process.env));
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
  await run();
} catch (error) {
  console.error(startFault(error));
  process.exitCode = 1;
}
