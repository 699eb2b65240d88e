import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { parseArgs } from 'node:util';
import { readConfig } from '../config.ts';
import { type Database, openDatabase, type TenantTransaction } from '../database/index.ts';
import { type Condition, type EvidenceStore, openEvidenceStore } from '../evidence-store/index.ts';
import { checkFiles } from '../features/evidence-record/index.ts';
import { everyOrganisation, type OrganisationRef } from '../features/organisation/index.ts';
import { checkPackets } from '../features/packets/index.ts';
import { anchorFolder, checkAnchors } from '../features/ticket-record/index.ts';
import { checkLogs } from '../features/tickets/index.ts';
import { startFault } from '../start-fault.ts';

const { values } = parseArgs({ options: { anchors: { type: 'string' } } });
const config = readConfig(process.env);
let faults = 0;
const tell = (fault: string): void => {
  faults += 1;
  console.error(fault);
};

/**
 * `npm run verify`: walks every log, snapshot, file and packet of every organisation, and names on the standard error what
 * is not as this server wrote it. Anchors are read from the data folder, or from another one (`-- --anchors FOLDER`), such
 * as that of an export that was kept elsewhere. Ends with exit code 1 where there is any such thing. Changes nothing.
 */
async function run(): Promise<void> {
  const { databaseUrl, dataFolder } = config;
  const database = await openDatabase({ databaseUrl, dataFolder });
  try {
    const store = await openEvidenceStore({ folder: join(dataFolder, 'evidence') });
    for (const organisation of await everyOrganisation(database))
      await verify({ database, store }, organisation);
  } finally {
    await database.close();
  }
  console.log(faults === 0 ? 'Nothing is wrong.' : `${faults} things are wrong.`);
  if (faults > 0) process.exitCode = 1;
}

async function verify(
  { database, store }: { database: Database; store: EvidenceStore },
  { orgId, handle }: OrganisationRef,
): Promise<void> {
  const tenant = { orgId, memberId: null };
  const count = { tickets: 0, files: 0 };
  /** Packets hold the files of the evidence, version after version: each is read once. */
  const known = new Map<string, Promise<Condition>>();
  const conditionOf = (sha256: string): Promise<Condition> => {
    const condition = known.get(sha256) ?? store.check(orgId, sha256);
    known.set(sha256, condition);
    return condition;
  };
  const logs = checkLogs(
    (work) => database.inTenant(tenant, (tx) => work({ tx, actor: { orgId } })),
    config.signingKey,
  );
  for await (const batch of logs) {
    count.tickets += batch.tickets;
    for (const { ticket, is } of batch.faults) tell(`${handle}, ticket no. ${ticket}: ${is}`);
  }
  const inTenant = <T>(work: (tx: TenantTransaction) => Promise<T>) => database.inTenant(tenant, work);
  for await (const batch of checkFiles(inTenant, orgId, conditionOf)) {
    count.files += batch.files;
    for (const { sha256, is } of batch.faults) tell(`${handle}, file ${sha256}: ${is}`);
  }
  const contentOf = async (sha256: string) => buffer(await store.get(orgId, sha256));
  const reading = { conditionOf, contentOf, key: config.signingKey };
  const { anchors, faults: unanchored } = await checkAnchors(
    (work) => inTenant((tx) => work({ tx, actor: { orgId } })),
    orgId,
    { folder: values.anchors ?? anchorFolder(config.dataFolder), key: config.signingKey },
  );
  for (const fault of unanchored) tell(`${handle}, ${fault}`);
  const { packets, faults: inPackets } = await checkPackets(inTenant, orgId, reading);
  for (const { ticket, version, path, is } of inPackets)
    tell(`${handle}, packet ${version} of ticket no. ${ticket}, ${path}: ${is}`);
  console.log(
    `${handle}: ${count.tickets} tickets, ${count.files} files, ${packets} packets, ${anchors} anchors`,
  );
}

try {
  await run();
} catch (error) {
  console.error(startFault(error));
  process.exitCode = 1;
}
