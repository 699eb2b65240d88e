import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { z } from 'zod';
import { handle } from '../../shared/contract/organisation.ts';
import { email } from '../../shared/contract/people.ts';
import { line } from '../../shared/contract/primitives.ts';
import { english } from '../../shared/message/en/index.ts';
import { fieldFaults, messageText } from '../../shared/message/index.ts';
import { readConfig } from '../config.ts';
import { openDatabase } from '../database/index.ts';
import { openEvidenceStore } from '../evidence-store/index.ts';
import { provisionOrganisation, randomPassword } from '../features/people/index.ts';

const usage =
  'npm run organisation:create -- --handle firm --name "The firm" --admin-name "Name" --admin-email a@b.example';
const form = z.object({ handle, name: line, 'admin-name': line, 'admin-email': email });

const { values } = parseArgs({
  options: {
    handle: { type: 'string' },
    name: { type: 'string' },
    'admin-name': { type: 'string' },
    'admin-email': { type: 'string' },
  },
});
const wanted = form.safeParse(values);
if (!wanted.success) {
  const faults = fieldFaults(wanted.error.issues, values).map(
    ({ pointer, ...fault }) => `--${pointer.slice(1)}: ${messageText(fault, english, 'UTC')}`,
  );
  console.error(`${usage}\n${faults.join('\n')}`);
  process.exit(2);
}

const config = readConfig(process.env);
const database = await openDatabase({ databaseUrl: config.databaseUrl, dataFolder: config.dataFolder });
const evidenceStore = await openEvidenceStore({ folder: join(config.dataFolder, 'evidence') });
const password = randomPassword();
const admin = {
  name: wanted.data['admin-name'],
  email: wanted.data['admin-email'],
  role: 'admin' as const,
  password,
};
await provisionOrganisation(
  { config, database, evidenceStore, now: () => new Date(), newId: randomUUID },
  { handle: wanted.data.handle, name: wanted.data.name, members: [admin] },
);
await database.close();
console.log(
  `Created ${wanted.data.handle}. Sign in as ${admin.email} with the password ${password} and change it.`,
);
