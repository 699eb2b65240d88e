import { chainDiff } from '../../../shared/chain/diff.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { CaseFile } from '../../../shared/contract/packet.ts';
import { siteInput } from '../../../shared/contract/site.ts';
import { intake as intakeForm } from '../../../shared/contract/ticket.ts';
import type { TriageRecord } from '../../../shared/contract/triage.ts';
import type { TriageSnapshot } from '../../../state-machines/index.ts';
import type { Prisma, TenantTransaction } from '../../database/index.ts';
import type { Context } from '../../http/index.ts';
import { findingsFor } from '../chains/index.ts';
import { type EvidenceRow, evidenceItemOf, evidenceOf } from '../evidence-record/index.ts';
import { logFindingsOf } from '../log-findings/index.ts';
import { firmwareLevels, readSettings } from '../organisation/index.ts';
import { caseFileOf } from './case-file.ts';
import { type ChainVersionDocument, chainVersionsOf, loggedEventsOf, packetsBefore } from './case-rows.ts';
import type { PacketContents } from './packet-files.ts';
import { timelineOf } from './timeline.ts';

export type NewPacket = {
  readonly id: string;
  readonly ticketId: string;
  readonly version: number;
  readonly at: string;
};
export type GatheredCase = Omit<PacketContents, 'thumbnails'> & { readonly evidence: readonly EvidenceRow[] };

/** Reads all that goes into a packet, in the transaction that escalates. */
export async function gatherCase(context: Context, packet: NewPacket): Promise<GatheredCase> {
  const { tx, actor } = context;
  const { orgId } = actor;
  const ticket = await tx.ticket.findUniqueOrThrow({
    where: { orgId_id: { orgId, id: packet.ticketId } },
    include: { site: true },
  });
  const record = (ticket.snapshot as unknown as TriageSnapshot).context;
  const members = await tx.member.findMany({
    where: { orgId },
    select: { id: true, name: true, role: true },
  });
  const nameOf = (id: string): string => members.find((member) => member.id === id)?.name ?? id;
  const events = await loggedEventsOf(tx, orgId, ticket.id);
  const evidence = await evidenceOf(context, ticket.id, record.evidence);
  const logs = await logFindingsOf(context, ticket.id, record.watches);
  const before = await packetsBefore(tx, orgId, ticket.id);
  const chainVersions = await chainVersionsOf(tx, orgId, ticket.chainId);
  const chain = chainInCase(record, { id: ticket.chainId, versions: chainVersions }, nameOf);
  const mentioned = new Set([actor.memberId, ...events.map(({ actorId }) => actorId)]);
  const file = caseFileOf({
    packet: { ...packet, by: actor.memberId },
    organisation: await organisationOf(tx, orgId),
    ticket: ticketInCase(ticket),
    site: await siteInCase(context, ticket.site),
    intake: { ...intakeForm.parse(ticket.intake), symptom: record.symptom },
    record,
    chain,
    prerequisites: await prerequisitesOf(context, record, chain),
    minimumFirmware: await firmwareLevels(context),
    evidence: evidence.map(evidenceItemOf),
    logs,
    people: members.filter(({ id }) => mentioned.has(id)) as CaseFile['people'],
    before: before.at(-1)?.caseFile ?? null,
  });
  const packets = before.map(({ id, version, at, by }) => ({ id, version, at, byName: nameOf(by) }));
  const timeline = timelineOf(record, { events, chain, packets, logs }, nameOf);
  return { file, events, timeline, chainVersions, evidence };
}

async function organisationOf(tx: TenantTransaction, orgId: string): Promise<CaseFile['organisation']> {
  const { name } = await tx.organisation.findUniqueOrThrow({ where: { orgId }, select: { name: true } });
  return { id: orgId, name };
}

type TicketRow = Prisma.TicketGetPayload<{ include: { site: true } }>;

const ticketInCase = (row: TicketRow): CaseFile['ticket'] => ({
  id: row.id,
  number: row.number,
  state: row.state,
  priority: row.priority as CaseFile['ticket']['priority'],
  openedAt: row.openedAt.toISOString(),
  assigneeId: row.assigneeId,
});

async function siteInCase(context: Context, row: TicketRow['site']): Promise<CaseFile['site']> {
  const { client, hazards, timeZone } = siteInput.parse(row.document);
  return { id: row.id, client, hazards, timeZone: timeZone ?? (await readSettings(context)).timeZone };
}

function chainInCase(
  record: TriageRecord,
  { id, versions }: { readonly id: string; readonly versions: readonly ChainVersionDocument[] },
  nameOf: (id: string) => string,
): CaseFile['chain'] {
  const newest = versions.at(-1);
  if (newest === undefined) throw new Error('a chain has at least one version');
  return {
    id,
    now: { version: newest.version, chain: newest.chain },
    versions: versions.map(({ chain, ...ref }) => ({ ...ref, changedByName: nameOf(ref.changedBy) })),
    sinceAsFound: sinceAsFound(record, newest.chain),
  };
}

const sinceAsFound = ({ asFound }: TriageRecord, now: Chain): string[] =>
  asFound === null ? [] : chainDiff(asFound.chain, now).map(({ sentence }) => sentence);

async function prerequisitesOf(
  context: Context,
  { asFound, symptom }: TriageRecord,
  { now }: CaseFile['chain'],
): Promise<CaseFile['prerequisites']> {
  const { chain, version } = asFound === null ? now : { chain: asFound.chain, version: asFound.chainVersion };
  const purpose = { duringTriage: true, symptom: symptom.kind };
  return { chainVersion: version, findings: await findingsFor(context, chain, purpose) };
}
