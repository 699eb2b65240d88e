import { chainDiff } from '../../../shared/chain/diff.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import { erasureOf } from '../../../shared/contract/erased-text.ts';
import type { CaseFile } from '../../../shared/contract/packet.ts';
import type { TriageRecord } from '../../../shared/contract/triage.ts';
import type { Message } from '../../../shared/message/index.ts';
import type { Context, Outcome } from '../../http/index.ts';
import { type ChainVersionDocument, findingsFor, versionDocumentsOf } from '../chains/index.ts';
import { type EvidenceRow, evidenceItemOf, evidenceOf } from '../evidence-record/index.ts';
import { logFindingsOf } from '../log-findings/index.ts';
import { firmwareLevels, readOrganisation, readSettings } from '../organisation/index.ts';
import { listMembers } from '../people/index.ts';
import { suspectsOn } from '../planning/index.ts';
import { readSite } from '../sites/index.ts';
import {
  findTicket,
  intakeOf,
  type LoggedEvent,
  loggedEventsOf,
  type TicketRow,
} from '../ticket-record/index.ts';
import { caseFileOf } from './case-file.ts';
import type { PacketContents } from './packet-files.ts';
import { packetsBefore } from './packet-row.ts';
import { timelineOf } from './timeline.ts';

export type NewPacket = {
  readonly id: string;
  readonly ticketId: string;
  readonly version: number;
  readonly at: string;
};
export type GatheredCase = Omit<PacketContents, 'summary' | 'damage'> & {
  readonly evidence: readonly EvidenceRow[];
};

/** Reads all that goes into a packet, in the transaction that escalates. */
export async function gatherCase(context: Context, packet: NewPacket): Promise<GatheredCase> {
  const { actor } = context;
  const ticket = await findTicket(context, packet.ticketId);
  if (ticket === null) throw new Error('the ticket of a packet is not there');
  const record = ticket.snapshot.context;
  const members = bodyOf(await listMembers(context)).items;
  const nameOf = (id: string): string => members.find((member) => member.id === id)?.name ?? id;
  const events = await loggedEventsOf(context, ticket.id);
  const evidence = await evidenceOf(context, ticket.id, record.evidence);
  const logs = await logFindingsOf(context, ticket.id, record.watches);
  const before = await packetsBefore(context, ticket.id);
  const chainVersions = await versionDocumentsOf(context, ticket.chainId);
  const chain = chainInCase(record, { id: ticket.chainId, versions: chainVersions }, nameOf);
  const mentioned = new Set([actor.memberId, ...events.map(({ actorId }) => actorId)]);
  const file = caseFileOf({
    language: context.language,
    packet: { ...packet, by: actor.memberId },
    organisation: await organisationOf(context),
    ticket: ticketInCase(ticket),
    site: await siteInCase(context, ticket.siteId),
    intake: intakeOf(ticket),
    record,
    chain,
    prerequisites: await prerequisitesOf(context, record, chain),
    minimumFirmware: await firmwareLevels(context),
    evidence: evidence.map(evidenceItemOf),
    logs,
    believed: await suspectsOn(context, ticket.id),
    erased: erasedOf(events),
    people: members.filter(({ id }) => mentioned.has(id)).map(({ id, name, role }) => ({ id, name, role })),
    before: before.at(-1)?.caseFile ?? null,
  });
  const packets = before.map(({ id, version, at, by }) => ({ id, version, at, byName: nameOf(by) }));
  const timeline = timelineOf(record, { events, chain, packets, logs }, nameOf);
  return { file, events, timeline, chainVersions, evidence };
}

const erasedOf = (events: readonly LoggedEvent[]): CaseFile['erased'] =>
  events.flatMap(({ sequence, texts }) =>
    texts.flatMap(({ pointer, text }) => {
      const erasure = erasureOf(text);
      return erasure === null ? [] : [{ event: sequence, pointer, ...erasure }];
    }),
  );

/** What is read here hangs on the ticket, so that it is there. */
function bodyOf<Body>(outcome: Outcome<Body>): Body {
  if (outcome.ok) return outcome.body;
  throw new Error(`what a packet is made of is not there: ${outcome.kind}`);
}

async function organisationOf(context: Context): Promise<CaseFile['organisation']> {
  const { id, name } = bodyOf(await readOrganisation(context));
  return { id, name };
}

const ticketInCase = (row: TicketRow): CaseFile['ticket'] => ({
  id: row.id,
  number: row.number,
  state: row.state,
  priority: row.priority as CaseFile['ticket']['priority'],
  openedAt: row.openedAt.toISOString(),
  assigneeId: row.assigneeId,
});

async function siteInCase(context: Context, siteId: string): Promise<CaseFile['site']> {
  const { id, client, hazards, timeZone } = bodyOf(await readSite(context, siteId));
  return { id, client, hazards, timeZone: timeZone ?? (await readSettings(context)).timeZone };
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

const sinceAsFound = ({ asFound }: TriageRecord, now: Chain): Message[] =>
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
