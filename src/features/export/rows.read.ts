import type { TenantTransaction } from '../../database/index.ts';
import { filesOf } from '../packets/index.ts';
import { logFiles, loggedEventsOf, readSnapshot, withTexts } from '../ticket-record/index.ts';

/** What there is to export, of all sites or of one: chains and tickets, and files by their SHA-256, each once. */
export async function contentsOf(tx: TenantTransaction, orgId: string, siteId?: string) {
  const where = { orgId, ...(siteId === undefined ? {} : { siteId }) };
  const ofTickets = { orgId, ...(siteId === undefined ? {} : { ticket: { siteId } }) };
  const stored =
    siteId === undefined
      ? await tx.storedFile.findMany({ where: { orgId }, select: { sha256: true } })
      : (
          await tx.evidence.findMany({ where: ofTickets, select: { sha256: true, thumbnailSha256: true } })
        ).flatMap(({ sha256, thumbnailSha256 }) => [{ sha256 }, { sha256: thumbnailSha256 }]);
  const packets = await tx.packet.findMany({ where: ofTickets, select: { files: true } });
  const files = [...stored, ...packets.flatMap(filesOf)].flatMap(({ sha256 }) => sha256 ?? []);
  return {
    chains: await tx.chain.findMany({ where, select: { id: true }, orderBy: { id: 'asc' } }),
    tickets: await tx.ticket.findMany({
      where,
      select: { id: true, number: true, sequence: true },
      orderBy: { number: 'asc' },
    }),
    files: [...new Set(files)].toSorted(),
  };
}

/** All sites, or one. */
export const sitesOf = (tx: TenantTransaction, orgId: string, siteId?: string) =>
  tx.site.findMany({
    where: { orgId, ...(siteId === undefined ? {} : { id: siteId }) },
    omit: { searchText: true },
  });

/** Who may report to a ticket by a link, without anything of the link. */
export const diariesOf = (tx: TenantTransaction, orgId: string, ticketId: string) =>
  tx.diary.findMany({
    where: { orgId, ticketId },
    omit: { codeHash: true },
    orderBy: [{ openedAt: 'asc' }, { id: 'asc' }],
  });

/** Who did what, the oldest first. */
export const auditLogOf = (tx: TenantTransaction, orgId: string) =>
  tx.auditEntry.findMany({ where: { orgId }, orderBy: [{ at: 'asc' }, { id: 'asc' }] });

/** The organisation, its members without anything of their passwords, and its firmware levels. */
export async function organisationDocument(tx: TenantTransaction, orgId: string) {
  const where = { orgId };
  return {
    organisation: await tx.organisation.findUniqueOrThrow({ where }),
    members: await tx.member.findMany({
      where,
      select: { id: true, name: true, email: true, role: true, active: true, version: true, createdAt: true },
      orderBy: { id: 'asc' },
    }),
    firmwareLevels: await tx.firmwareLevel.findMany({ where, orderBy: { model: 'asc' } }),
  };
}

/** A chain with all its versions. */
export const chainDocument = (tx: TenantTransaction, orgId: string, id: string) =>
  tx.chain.findUniqueOrThrow({
    where: { orgId_id: { orgId, id } },
    omit: { searchText: true },
    include: { versions: { orderBy: { version: 'asc' } } },
  });

/** A ticket, what triage knows of it, and its log with hashes and texts, from which the rest can be rebuilt. */
export async function ticketDocument(tx: TenantTransaction, orgId: string, id: string) {
  const row = await tx.ticket.findUniqueOrThrow({
    where: { orgId_id: { orgId, id } },
    include: {
      events: { orderBy: { sequence: 'asc' }, include: withTexts },
      changes: { orderBy: { openedAt: 'asc' } },
    },
  });
  const { snapshot } = await readSnapshot({ tx, actor: { orgId } }, row);
  return { ...row, snapshot, machineVersion: snapshot.machineVersion };
}

/** A file of a ticket's log, up to the event of that number, so that files read one after the other fit together. */
export async function logFile(
  tx: TenantTransaction,
  orgId: string,
  { ticketId, last, name }: { ticketId: string; last: number; name: keyof ReturnType<typeof logFiles> },
): Promise<string> {
  const events = await loggedEventsOf({ tx, actor: { orgId } }, ticketId);
  const files = logFiles(
    events.filter(({ sequence }) => sequence <= last),
    'export.json',
  );
  return files[name];
}

/** Evidence of a ticket; the file of an item is `files/<sha256>`. */
export const evidenceOf = (tx: TenantTransaction, orgId: string, ticketId: string) =>
  tx.evidence.findMany({ where: { orgId, ticketId }, orderBy: [{ uploadedAt: 'asc' }, { id: 'asc' }] });

/** Packets of a ticket with their file lists and whom they were shown to. */
export const packetsOf = (tx: TenantTransaction, orgId: string, ticketId: string) =>
  tx.packet.findMany({
    where: { orgId, ticketId },
    include: { grants: { where: { orgId }, orderBy: { grantedAt: 'asc' } } },
    orderBy: { version: 'asc' },
  });
