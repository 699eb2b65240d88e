import { addresses, addressOf } from '../../../shared/contract/addresses.ts';
import type { AuditEntry } from '../../../shared/contract/audit-log.ts';
import type { DiaryWithCode } from '../../../shared/contract/diary.ts';
import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import type { LogFinding } from '../../../shared/contract/log-findings.ts';
import type { FaultFigure, FirmwareLevel, Organisation } from '../../../shared/contract/organisation.ts';
import type {
  GrantedPacket,
  Packet,
  PacketGrant,
  PacketSummary,
  SigningKey,
} from '../../../shared/contract/packet.ts';
import type { PastCase } from '../../../shared/contract/past-case.ts';
import type { Me, Member, SecondFactors, Session } from '../../../shared/contract/people.ts';
import type { PhonePlanReply, PlanReply } from '../../../shared/contract/plan.ts';
import type { Items, Page } from '../../../shared/contract/primitives.ts';
import type { BudgetReply, EdidReadings } from '../../../shared/contract/signal.ts';
import type {
  ChainAudit,
  ChainComparison,
  ChainDocument,
  ChainVersionRef,
  SiteSummary,
} from '../../../shared/contract/site.ts';
import type {
  QueueEntry,
  Ticket,
  TicketEvent,
  TicketSummary,
  TimelineEntry,
} from '../../../shared/contract/ticket.ts';
import type { Symptom } from '../../../shared/contract/triage.ts';
import type { Usage } from '../../../shared/contract/usage.ts';
import type { ApplicableChange } from '../../../state-machines/triage/changes/described.ts';

declare const bodyOf: unique symbol;
/** The address of a document of the API, which knows what it will find there. */
export type DocumentPath<Body> = string & { readonly [bodyOf]?: Body };

type Query = Record<string, string | number | boolean | undefined>;

/** A path with a query; what is undefined or empty is left out. */
export function withQuery(path: string, query: Query): string {
  const given = Object.entries(query).filter(([, value]) => value !== undefined && value !== '');
  if (given.length === 0) return path;
  return `${path}?${new URLSearchParams(given.map(([key, value]) => [key, String(value)]))}`;
}

const documentAt = <Body>(path: string): DocumentPath<Body> => path;

/** Every document that the client reads. A screen that needs another one adds it here, with its type. */
export const paths = {
  me: documentAt<Me>(addresses.me),
  ownSecondFactors: documentAt<SecondFactors>(addresses.ownSecondFactors),
  ownSessions: documentAt<Items<Session>>(addresses.ownSessions),
  members: documentAt<Items<Member>>(addresses.members),
  usage: documentAt<Items<Usage>>(addresses.usage),
  auditLog: (query: { memberId?: string; cursor?: string | undefined }) =>
    documentAt<Page<AuditEntry>>(withQuery(addresses.auditLog, query)),
  organisation: documentAt<Organisation>(addresses.organisation),
  firmwareLevels: documentAt<Items<FirmwareLevel>>(addresses.firmwareLevels),
  faultModel: documentAt<Items<FaultFigure>>(addresses.faultModel),
  supportQueue: documentAt<Items<QueueEntry>>(addresses.supportQueue),

  sites: (query: { q?: string; limit?: number; cursor?: string }) =>
    documentAt<Page<SiteSummary>>(withQuery(addresses.sites, query)),
  site: (id: string) => documentAt<SiteSummary>(addressOf(addresses.site, { id })),

  chain: (id: string) => documentAt<ChainDocument>(addressOf(addresses.chain, { id })),
  /** @param symptom of a ticket: what explains it is urgent */
  chainAudit: (id: string, symptom?: Symptom['kind']) =>
    documentAt<ChainAudit>(
      withQuery(addressOf(addresses.chainAudit, { id }), { duringTriage: true, symptom }),
    ),
  chainBudget: (id: string, query: { version?: number; without?: string; format?: string } = {}) =>
    documentAt<BudgetReply>(withQuery(addressOf(addresses.chainBudget, { id }), query)),
  chainEdids: (id: string) => documentAt<EdidReadings>(addressOf(addresses.chainEdids, { id })),

  chainVersions: (id: string) =>
    documentAt<Items<ChainVersionRef>>(addressOf(addresses.chainVersions, { id })),
  chainVersion: (id: string, version: number) =>
    documentAt<ChainDocument>(addressOf(addresses.chainVersion, { id, version })),
  changesSince: (id: string, from: number, to: number) =>
    documentAt<ChainComparison>(addressOf(addresses.changesSince, { id, version: to, from })),

  tickets: (query: {
    state?: string;
    assigneeId?: string;
    siteId?: string;
    chainId?: string;
    symptom?: string;
    priority?: string;
    visitFrom?: string;
    visitTo?: string;
    dueBy?: string;
    q?: string;
    limit?: number;
    cursor?: string;
  }) => documentAt<Page<TicketSummary>>(withQuery(addresses.tickets, query)),
  pastCases: (query: { like?: string; q?: string; symptom?: string; cursor?: string }) =>
    documentAt<Page<PastCase>>(withQuery(addresses.pastCases, query)),
  ticket: (id: string) => documentAt<Ticket>(addressOf(addresses.ticket, { id })),
  /** `reachable`: ids of devices whose switch the client gets at, standing on the floor. */
  phonePlan: (ticketId: string, reachable: readonly string[]) =>
    documentAt<PhonePlanReply>(
      withQuery(addressOf(addresses.phonePlan, { id: ticketId }), {
        reachable: reachable.toSorted().join(','),
      }),
    ),
  applicableChanges: (ticketId: string) =>
    documentAt<Items<ApplicableChange>>(addressOf(addresses.applicableChanges, { id: ticketId })),
  timeline: (ticketId: string) =>
    documentAt<Items<TimelineEntry>>(addressOf(addresses.timeline, { id: ticketId })),
  log: (ticketId: string, after = 0) =>
    documentAt<Items<TicketEvent>>(withQuery(addressOf(addresses.log, { id: ticketId }), { after })),
  evidence: (ticketId: string) =>
    documentAt<Page<EvidenceItem>>(
      withQuery(addressOf(addresses.ticketEvidence, { id: ticketId }), { limit: 200 }),
    ),
  logFindings: (ticketId: string) =>
    documentAt<Items<LogFinding>>(addressOf(addresses.logFindings, { id: ticketId })),
  plan: (ticketId: string) => documentAt<PlanReply>(addressOf(addresses.plan, { id: ticketId })),
  packets: (ticketId: string) =>
    documentAt<Items<PacketSummary>>(addressOf(addresses.ticketPackets, { id: ticketId })),
  packet: (id: string) => documentAt<Packet>(addressOf(addresses.packet, { id })),
  diaries: (ticketId: string) =>
    documentAt<Items<DiaryWithCode>>(addressOf(addresses.ticketDiaries, { id: ticketId })),
  packetGrants: (packetId: string) =>
    documentAt<Items<PacketGrant>>(addressOf(addresses.packetGrants, { id: packetId })),
  signingKey: addresses.signingKey as DocumentPath<SigningKey>,
  grantedPackets: documentAt<Items<GrantedPacket>>(addresses.grantedPackets),
};
