import type { EvidenceItem } from '../../../shared/contract/evidence.ts';
import type { LogFinding } from '../../../shared/contract/log-findings.ts';
import type { FaultFigure, FirmwareLevel, Organisation } from '../../../shared/contract/organisation.ts';
import type { GrantedPacket, Packet, PacketGrant, PacketSummary } from '../../../shared/contract/packet.ts';
import type { Me, Member } from '../../../shared/contract/people.ts';
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
import type { ApplicableChange } from '../../../state-machines/triage/changes/applicable.ts';

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
  me: documentAt<Me>('/me'),
  members: documentAt<Items<Member>>('/members'),
  organisation: documentAt<Organisation>('/organisation'),
  firmwareLevels: documentAt<Items<FirmwareLevel>>('/firmware-levels'),
  faultModel: documentAt<Items<FaultFigure>>('/fault-model'),
  supportQueue: documentAt<Items<QueueEntry>>('/support-queue'),

  sites: (query: { q?: string; limit?: number; cursor?: string }) =>
    documentAt<Page<SiteSummary>>(withQuery('/sites', query)),
  site: (id: string) => documentAt<SiteSummary>(`/sites/${id}`),

  chain: (id: string) => documentAt<ChainDocument>(`/chains/${id}`),
  chainAudit: (id: string, duringTriage = true) =>
    documentAt<ChainAudit>(withQuery(`/chains/${id}/audit`, { duringTriage })),
  chainBudget: (id: string, query: { version?: number; without?: string; format?: string } = {}) =>
    documentAt<BudgetReply>(withQuery(`/chains/${id}/budget`, query)),
  chainEdids: (id: string) => documentAt<EdidReadings>(`/chains/${id}/edids`),

  chainVersions: (id: string) => documentAt<Items<ChainVersionRef>>(`/chains/${id}/versions`),
  chainVersion: (id: string, version: number) =>
    documentAt<ChainDocument>(`/chains/${id}/versions/${version}`),
  changesSince: (id: string, from: number, to: number) =>
    documentAt<ChainComparison>(`/chains/${id}/versions/${to}/changes-since/${from}`),

  tickets: (query: {
    state?: string;
    assigneeId?: string;
    siteId?: string;
    chainId?: string;
    symptom?: string;
    priority?: string;
    visitFrom?: string;
    visitTo?: string;
    q?: string;
    limit?: number;
    cursor?: string;
  }) => documentAt<Page<TicketSummary>>(withQuery('/tickets', query)),
  ticket: (id: string) => documentAt<Ticket>(`/tickets/${id}`),
  /** `reachable`: ids of devices that the client gets at, standing on the floor. */
  phonePlan: (ticketId: string, reachable: readonly string[]) =>
    documentAt<PhonePlanReply>(
      withQuery(`/tickets/${ticketId}/phone-plan`, { reachable: reachable.toSorted().join(',') }),
    ),
  applicableChanges: (ticketId: string) =>
    documentAt<Items<ApplicableChange>>(`/tickets/${ticketId}/applicable-changes`),
  timeline: (ticketId: string) => documentAt<Items<TimelineEntry>>(`/tickets/${ticketId}/timeline`),
  log: (ticketId: string, after = 0) =>
    documentAt<Items<TicketEvent>>(withQuery(`/tickets/${ticketId}/log`, { after })),
  evidence: (ticketId: string) => documentAt<Page<EvidenceItem>>(`/tickets/${ticketId}/evidence?limit=200`),
  logFindings: (ticketId: string) => documentAt<Items<LogFinding>>(`/tickets/${ticketId}/log-findings`),
  plan: (ticketId: string) => documentAt<PlanReply>(`/tickets/${ticketId}/plan`),
  packets: (ticketId: string) => documentAt<Items<PacketSummary>>(`/tickets/${ticketId}/packets`),
  packet: (id: string) => documentAt<Packet>(`/packets/${id}`),
  packetGrants: (packetId: string) => documentAt<Items<PacketGrant>>(`/packets/${packetId}/grants`),
  grantedPackets: documentAt<Items<GrantedPacket>>('/granted-packets'),
};
