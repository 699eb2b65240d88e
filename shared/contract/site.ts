import { z } from 'zod';
import { chain, finding } from './chain.ts';
import { longest } from './limits.ts';
import { message } from './message.ts';
import { id, instant, line, pageQuery, text } from './primitives.ts';
import { hazardKinds } from './site-names.ts';

/** Where work can hurt someone. What is written here is shown before a visit; it never replaces local codes. */
export const hazard = z.object({ kind: z.enum(hazardKinds), text: text.default('') });

export const siteInput = z.object({
  client: line,
  address: z.string().trim().min(1).max(longest.address),
  contact: z
    .object({
      name: line.nullable().default(null),
      phone: z.string().trim().max(longest.phone).nullable().default(null),
      email: z.email().max(200).nullable().default(null),
      /** When the contact is best reached, in words. */
      hours: z.string().trim().max(longest.line).default(''),
    })
    .prefault({}),
  accessNotes: text.default(''),
  travelNotes: text.default(''),
  /** Minutes from where the technicians set out, one way; null: not known. */
  travelMin: z.int().min(0).max(1440).nullable().default(null),
  hazards: z.array(hazard).max(30).default([]),
  timeZone: z.string().max(60).nullable().default(null),
});
export type SiteInput = z.infer<typeof siteInput>;
export const site = siteInput.extend({ id, version: z.int(), createdAt: instant, updatedAt: instant });
export type Site = z.infer<typeof site>;

/** Any part of client, address, phone number or device serial. */
export const siteSearch = pageQuery.extend({ q: z.string().trim().max(100).optional() });
export const siteSummary = site.extend({
  chains: z.array(z.object({ id, name: z.string(), version: z.int() })),
});
export type SiteSummary = z.infer<typeof siteSummary>;

export const chainSummary = z.object({ id, siteId: id, name: z.string(), version: z.int() });
/** One version of a chain: who wrote it, when, and what differs from the one before. */
export const chainVersionRef = z.object({
  version: z.int(),
  changedBy: id,
  changedByName: z.string(),
  changedAt: instant,
  changes: z.array(message),
});
export type ChainVersionRef = z.infer<typeof chainVersionRef>;
export const chainDocument = z.object({
  id,
  siteId: id,
  version: z.int(),
  chain,
  changedAt: instant,
  changedBy: id,
  /** What differs from the version before, one message each. */
  changes: z.array(message),
});
export type ChainDocument = z.infer<typeof chainDocument>;

/** What the audit found in a version of a chain. */
export const chainAudit = z.object({ version: z.int(), findings: z.array(finding) });
export type ChainAudit = z.infer<typeof chainAudit>;
/** What differs between two versions, one message each. */
export const chainComparison = z.object({ from: z.int(), to: z.int(), changes: z.array(message) });
export type ChainComparison = z.infer<typeof chainComparison>;
