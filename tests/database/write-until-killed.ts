import { randomUUID } from 'node:crypto';
import { openDatabase } from '../../src/database/index.ts';

// A program for embedded-folder.test.ts: writes to the folder it is given and prints each id once it is committed.
const database = await openDatabase({ dataFolder: process.argv[2] ?? '' });
const orgId = randomUUID();
await database.provision((tx) =>
  tx.organisation.create({ data: { orgId, handle: `a${orgId}`.slice(0, 12), name: 'A', settings: {} } }),
);
for (;;) {
  const id = randomUUID();
  await database.inTenant({ orgId, memberId: null }, (tx) =>
    tx.firmwareLevel.create({ data: { orgId, id, model: id, minimum: '1.0' } }),
  );
  process.stdout.write(`${id}\n`);
}
