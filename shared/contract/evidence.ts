import { z } from 'zod';
import { settings } from './chain.ts';
import { attachedKinds, evidenceKinds, settingsPhases, shownViews } from './evidence-names.ts';
import { longest } from './limits.ts';
import { id, instant, keptText, line, pageQuery, placeId, reason, sha256, text } from './primitives.ts';

export { evidenceKinds };
export const evidenceKind = z.enum(evidenceKinds);
export type EvidenceKind = z.infer<typeof evidenceKind>;

/** What an item shows, where that matters to completeness: both ends of a cable, its printed label, the screen. */
export const shows = z.enum(shownViews);

/** What an item of evidence belongs to; every part is optional, the ticket is not. */
export const evidenceTie = z.object({
  deviceId: placeId.nullable().default(null),
  portId: placeId.nullable().default(null),
  linkId: placeId.nullable().default(null),
  watchId: id.nullable().default(null),
  changeId: id.nullable().default(null),
  shows: shows.nullable().default(null),
});
export type EvidenceTie = z.infer<typeof evidenceTie>;

/** The time that a log covers. */
export const span = z.object({ from: instant, to: instant });
export type Span = z.infer<typeof span>;

export const firmwareReading = z.object({ kind: z.literal('firmware'), level: line });
export const settingsReading = z.object({
  kind: z.literal('settings'),
  values: settings,
  phase: z.enum(settingsPhases).default('apart'),
});
export const noteReading = z.object({ kind: z.literal('note'), text: text.min(1) });
/** A reading without a file. */
export const reading = z.discriminatedUnion('kind', [firmwareReading, settingsReading, noteReading]);
export type Reading = z.infer<typeof reading>;

/** What triage keeps of an item of evidence: enough to judge completeness and attribution offline. */
export const evidenceRef = z.object({
  id,
  kind: evidenceKind,
  sha256: sha256.nullable(),
  tie: evidenceTie,
  span: span.nullable(),
  reading: reading.nullable(),
  at: instant,
  by: id,
  withdrawn: z.object({ reason: keptText, at: instant, by: id }).nullable(),
});
export type EvidenceRef = z.infer<typeof evidenceRef>;

/** One item of the evidence store as the API shows it. Sizes in bytes. */
export const evidenceItem = evidenceRef.extend({
  ticketId: id,
  description: keptText,
  fileName: z.string().nullable(),
  mediaType: z.string().nullable(),
  sizeBytes: z.int().nullable(),
  /** Hash of the file as it was sent, where the stored one was cleaned of its position. */
  originalSha256: sha256.nullable(),
  hasThumbnail: z.boolean(),
  /** Facts read out of the file on arrival, such as a decoded EDID. */
  facts: z.record(z.string(), z.unknown()).nullable(),
  uploadedAt: instant,
});
export type EvidenceItem = z.infer<typeof evidenceItem>;

/** What is known of the clock that stamped a log; every part may be left out. See shared/logs/clock.ts. */
export const logClock = z.object({
  /** Zone of stamps that name none: an IANA name, `UTC`, or an offset such as `+01:00`. */
  zone: z.string().min(1).max(60).optional(),
  /** What the device's clock (or its seconds since boot) said at a moment that is known: copied as it stands in a line. A clock drifts from one to the next. */
  knownMoments: z
    .array(z.object({ logTime: z.string().min(1).max(longest.logTime), trueTime: instant }))
    .max(8)
    .optional(),
  bootedAt: instant.optional(),
  /** Which comes first in numeric dates such as 03/04/2026; where it is left out, the log's own dates tell, or nobody. */
  dayOrder: z.enum(['dayFirst', 'monthFirst']).optional(),
});
export type LogClockInput = z.infer<typeof logClock>;

/** What goes with a file: the multipart field `about` (JSON), or the tus metadata key `about`. */
export const fileEvidenceAbout = z.object({
  kind: z.enum(['photo', ...attachedKinds]),
  tie: evidenceTie.prefault({}),
  description: text.default(''),
  /** The time that a log covers; left out, it is read from the log. */
  span: span.nullable().default(null),
  clock: logClock.default({}),
  takenAt: instant.nullable().default(null),
});
export type FileEvidenceAbout = z.infer<typeof fileEvidenceAbout>;

export const recordReading = z.object({
  tie: evidenceTie.prefault({}),
  description: text.default(''),
  reading,
  takenAt: instant.nullable().default(null),
});
export const withdrawEvidence = z.object({ reason });
export const evidenceQuery = pageQuery.extend({ kind: evidenceKind.optional() });
