import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { readConfig } from '../config.ts';
import { openDatabase } from '../database/index.ts';
import { openEvidenceStore } from '../evidence-store/index.ts';
import { recoverMember } from '../features/people/index.ts';
import { startFault } from '../start-fault.ts';

const usage = 'npm run member:recover -- --organisation firm --email a@b.example [--admin]';

/**
 * `npm run member:recover`: sets another password for a member whom nobody in the organisation can help, and tells it;
 * with `--admin` makes them an admin (again). An inactive one is active again. Ends with exit code 1 where there is none.
 */
async function run(organisation: string, email: string, makeAdmin: boolean): Promise<void> {
  const config = readConfig(process.env);
  const database = await openDatabase({ databaseUrl: config.databaseUrl, dataFolder: config.dataFolder });
  try {
    const evidenceStore = await openEvidenceStore({ folder: join(config.dataFolder, 'evidence') });
    const services = { config, database, evidenceStore, now: () => new Date(), newId: randomUUID };
    const recovered = await recoverMember(services, { organisation, email, makeAdmin });
    if (recovered === null) {
      console.error(`${organisation} has no member ${email}.`);
      process.exitCode = 1;
      return;
    }
    const { member, password } = recovered;
    console.log(
      `${member.email} (${member.role}) signs in with the password ${password}, to be changed then.`,
    );
  } finally {
    await database.close();
  }
}

const { values } = parseArgs({
  options: {
    organisation: { type: 'string' },
    email: { type: 'string' },
    admin: { type: 'boolean', default: false },
  },
});
try {
  if (values.organisation === undefined || values.email === undefined) {
    console.error(usage);
    process.exitCode = 2;
  } else await run(values.organisation, values.email, values.admin);
} catch (error) {
  console.error(startFault(error));
  process.exitCode = 1;
}
