import { Readable } from 'node:stream';
import type { TenantTransaction } from '../../database/index.ts';
import type { Context } from '../../http/index.ts';
import {
  anchorFiles,
  anchorFolder,
  logFileNames,
  readAnchorFile,
  refuseNewerTickets,
} from '../ticket-record/index.ts';
import {
  auditLogOf,
  chainDocument,
  contentsOf,
  diariesOf,
  evidenceOf,
  logFile,
  organisationDocument,
  packetsOf,
  sitesOf,
  ticketDocument,
} from './rows.read.ts';
import type { ZipEntry } from './zip-with-manifest.ts';

type Read = (tx: TenantTransaction, orgId: string) => Promise<unknown>;
type Write = (tx: TenantTransaction, orgId: string) => Promise<string>;

/**
 * What an export consists of. Only the list is made now; each document is read in a short transaction of its own when
 * its turn comes, so an export of any size holds one document in memory. What is written meanwhile may be in it.
 *
 * @throws NewerDataError: an export that can't be whole is not begun
 */
export async function listDocuments(context: Context, madeAt: Date): Promise<ZipEntry[]> {
  const { actor, services } = context;
  const { orgId } = actor;
  const { document, about, documentsOf } = await exportOf(context, madeAt);
  const anchors = await anchorFiles(anchorFolder(services.config.dataFolder), orgId);
  return [
    document('export.json', async () => about),
    document('organisation.json', organisationDocument),
    document('sites.json', sitesOf),
    document('audit-log.json', auditLogOf),
    ...documentsOf,
    ...anchors.map(
      (anchor): ZipEntry => ({
        path: `anchors/${orgId}/${anchor.day}.txt`,
        isPacked: false,
        open: async () => Readable.from([await readAnchorFile(anchor)]),
      }),
    ),
  ];
}

/**
 * What an export of one client consists of: what the organisation has of the site, its chains and its tickets, and nothing
 * of anybody else's.
 *
 * @returns null where there is no such site
 * @throws NewerDataError
 */
export async function listDocumentsOfSite(
  context: Context,
  siteId: string,
  madeAt: Date,
): Promise<ZipEntry[] | null> {
  const { tx, actor } = context;
  if ((await sitesOf(tx, actor.orgId, siteId)).length === 0) return null;
  const { document, about, documentsOf } = await exportOf(context, madeAt, siteId);
  return [
    document('export.json', async () => ({ ...about, siteId })),
    document('sites.json', (own, orgId) => sitesOf(own, orgId, siteId)),
    ...documentsOf,
  ];
}

/** Chains, tickets and files: of all sites, or of one. */
async function exportOf(context: Context, madeAt: Date, siteId?: string) {
  const { tx, actor, services } = context;
  await refuseNewerTickets(context);
  const { orgId, memberId } = actor;
  const written = (path: string, write: Write): ZipEntry => ({
    path,
    isPacked: false,
    open: async () =>
      Readable.from([await services.database.inTenant({ orgId, memberId }, (own) => write(own, orgId))]),
  });
  const document = (path: string, read: Read): ZipEntry =>
    written(path, async (own) => `${JSON.stringify(await read(own, orgId), null, 1)}\n`);
  const { chains, tickets, files } = await contentsOf(tx, orgId, siteId);
  const about = {
    exportVersion: 1,
    madeAt: madeAt.toISOString(),
    madeBy: memberId,
    tickets: tickets.length,
    chains: chains.length,
    files: files.length,
  };
  const documentsOf = [
    ...chains.map(({ id }) => document(`chains/${id}.json`, (own) => chainDocument(own, orgId, id))),
    ...tickets.flatMap(({ id, number, sequence: last }) => {
      const folder = `tickets/${String(number).padStart(6, '0')}`;
      return [
        document(`${folder}/ticket.json`, (own) => ticketDocument(own, orgId, id)),
        ...logFileNames.map((name) =>
          written(`${folder}/log/${name}`, (own) => logFile(own, orgId, { ticketId: id, last, name })),
        ),
        document(`${folder}/evidence.json`, (own) => evidenceOf(own, orgId, id)),
        document(`${folder}/packets.json`, (own) => packetsOf(own, orgId, id)),
        document(`${folder}/diaries.json`, (own) => diariesOf(own, orgId, id)),
      ];
    }),
    ...files.map(
      (sha256): ZipEntry => ({
        path: `files/${sha256}`,
        isPacked: true,
        sha256,
        open: async () =>
          (await services.evidenceStore.has(orgId, sha256))
            ? services.evidenceStore.get(orgId, sha256)
            : null,
      }),
    ),
  ];
  return { document, about, documentsOf };
}
