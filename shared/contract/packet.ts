import { z } from 'zod';
import { chain, finding, place } from './chain.ts';
import { evidenceItem } from './evidence.ts';
import { languageTags } from './language-names.ts';
import { logFinding } from './log-findings.ts';
import { message } from './message.ts';
import { id, instant, memberRole, sha256 } from './primitives.ts';
import { chainVersionRef, hazard } from './site.ts';
import { intake, priority } from './ticket.ts';
import { missingItem, triageRecord, waiver } from './triage.ts';

export const casePerson = z.object({ id, name: z.string(), role: memberRole });

/** The firmware of one device: the newest reading, else what the chain's description says. */
export const caseFirmware = z.object({
  deviceId: z.string(),
  level: z.string().nullable(),
  from: z.enum(['reading', 'description', 'notKnown']),
  readAt: instant.nullable(),
  readBy: id.nullable(),
  evidenceId: id.nullable(),
  /** The level that the organisation has set for the model; null where it has set none. */
  minimum: z.string().nullable(),
  belowMinimum: z.enum(['yes', 'no', 'notKnown']),
});
export type CaseFirmware = z.infer<typeof caseFirmware>;

/** An item of evidence, and where its file lies in the bag, relative to the case file; null for readings. */
export const caseEvidence = evidenceItem.extend({ path: z.string().nullable() });
export type CaseEvidence = z.infer<typeof caseEvidence>;

/** A text of the log that was erased: the event's number, and where in its payload the text stood (RFC 6901). */
export const erasedPlace = z.object({ event: z.int().min(1), pointer: z.string(), at: instant, by: id });
export type ErasedPlace = z.infer<typeof erasedPlace>;

/**
 * The case as second line gets it, for machines: `data/case.json` of a packet. What is said of the client is what
 * the work needs: no address, no telephone number and no way into the house.
 */
export const caseFile = z.object({
  caseFileVersion: z.literal(2),
  /** What its own sentences are in: the summary, the timeline as CSV, bag-info.txt. Version 1 was English. */
  language: z.enum(languageTags),
  packet: z.object({
    id,
    version: z.int().min(1),
    createdAt: instant,
    createdBy: id,
    question: z.string(),
    waivers: z.array(waiver),
  }),
  organisation: z.object({ id, name: z.string() }),
  ticket: z.object({
    id,
    number: z.int(),
    state: z.string(),
    priority,
    openedAt: instant,
    assigneeId: id.nullable(),
  }),
  site: z.object({ id, client: z.string(), hazards: z.array(hazard), timeZone: z.string() }),
  intake: intake.omit({ reporter: true }).extend({ reporterRelation: z.string() }),
  chain: z.object({
    id,
    /** The newest version; as-found is in `triage.asFound`. */
    now: z.object({ version: z.int(), chain }),
    versions: z.array(chainVersionRef),
    /** What differs now from as-found. */
    sinceAsFound: z.array(message),
  }),
  /** The prerequisite audit of the chain as found, or of the newest version where none was recorded. */
  prerequisites: z.object({ chainVersion: z.int(), findings: z.array(finding) }),
  /**
   * Where the fault still can be, by the sides that were found: ids along the chain. A device at the edge is in it
   * with its input or output half only. Null before the chain was recorded as found.
   */
  segment: z
    .object({
      deviceIds: z.array(z.string()),
      linkIds: z.array(z.string()),
      inputHalfIds: z.array(z.string()),
      outputHalfIds: z.array(z.string()),
    })
    .nullable(),
  /** What can be at fault by all that is known, the likeliest first, 0..1; null: outside the model. Empty in older ones. */
  suspects: z.array(z.object({ place: place.nullable(), probability: z.number().min(0).max(1) })).default([]),
  /** What the findings of earlier rounds count for, 0..1, where there were such; null in the first round. */
  earlierRoundsCount: z.number().min(0).max(1).nullable().default(null),
  firmware: z.array(caseFirmware),
  missing: z.array(missingItem),
  evidence: z.array(caseEvidence),
  people: z.array(casePerson),
  /** What this version says that the one before did not. */
  news: z.array(message),
  /** What the logs say of the watches and occurrences above. */
  logs: z.array(logFinding).default([]),
  erased: z.array(erasedPlace).default([]),
  triage: triageRecord,
});
export type CaseFile = z.infer<typeof caseFile>;

/** One file of a bag (RFC 8493). `path` is relative to the bag's folder, with forward slashes. */
export const bagFile = z.object({ path: z.string(), sha256, sizeBytes: z.int().min(0) });
export type BagFile = z.infer<typeof bagFile>;

export const packetSummary = z.object({
  id,
  ticketId: id,
  version: z.int().min(1),
  createdAt: instant,
  createdBy: id,
  createdByName: z.string(),
  news: z.array(message),
  /**
   * Texts of the log that this packet holds and that were erased after it was made: what was handed over stays as it
   * was. Null where the packet is another organisation's.
   */
  erasedSince: z.array(erasedPlace).nullable(),
  /** Of all files together, unpacked. */
  sizeBytes: z.int().min(0),
});
export type PacketSummary = z.infer<typeof packetSummary>;

/** What this server signs packets with: its public key (PEM, SPKI), and the SHA-256 of that key's DER form. */
export const signingKey = z.object({ publicKey: z.string(), fingerprint: sha256 });
export type SigningKey = z.infer<typeof signingKey>;

export const packet = packetSummary.extend({ files: z.array(bagFile), caseFile });
export type Packet = z.infer<typeof packet>;

/** `memberAddress` is what the other organisation's support member finds under `/me`. */
export const newGrant = z.object({ memberAddress: id });
export const packetGrant = z.object({
  id,
  packetId: id,
  memberAddress: id,
  grantedBy: id,
  grantedByName: z.string(),
  grantedAt: instant,
  firstOpenedAt: instant.nullable(),
  revokedAt: instant.nullable(),
});
export type PacketGrant = z.infer<typeof packetGrant>;

/** A packet that another organisation shows to the caller. */
export const grantedPacket = z.object({
  grantId: id,
  packetId: id,
  organisationName: z.string(),
  ticketNumber: z.int(),
  version: z.int(),
  question: z.string(),
  createdAt: instant,
  grantedAt: instant,
});
export type GrantedPacket = z.infer<typeof grantedPacket>;
