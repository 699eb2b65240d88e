import { z } from 'zod';
import { place, type VideoFormat, videoFormat } from './chain.ts';
import { colorimetries, dynamicRanges, lossReasons, pictureFeatures } from './chain-names.ts';
import { edidTopics } from './edid-names.ts';
import { message } from './message.ts';
import { misfit } from './misfits.ts';
import { placeId, versionNumber } from './primitives.ts';

const formatForm =
  /^(\d{1,5})x(\d{1,5})([pi])(\d{1,3}(?:\.\d{1,3})?)\/([a-z0-9]+)\/(8|10|12|16)((?:\/[a-z0-9-]+){0,8})$/;

/**
 * A format in a query: width, height, `p` or `i`, rate, encoding and bits, such as `3840x2160p60/rgb/8`; then, in any
 * order, what comes with it: `/hdr10`, `/bt2020`, `/vrr`, `/3d`.
 */
export const formatText = z
  .string()
  .regex(formatForm, misfit('fieldNotVideoFormat'))
  .transform((text, context): VideoFormat => {
    const [, width, height, scan, rate, encoding, bits, rest = ''] = formatForm.exec(text) ?? [];
    const parsed = videoFormat.strict().safeParse({
      widthPx: Number(width),
      heightPx: Number(height),
      interlaced: scan === 'i',
      refreshHz: Number(rate),
      encoding,
      bitsPerComponent: Number(bits),
      ...comingWith(rest.split('/').slice(1)),
    });
    if (parsed.success) return parsed.data;
    context.addIssue({ code: 'custom', message: misfit('fieldNotVideoFormat') });
    return z.NEVER;
  });

export const budgetQuery = z.object({
  version: z.coerce.number().pipe(versionNumber).optional(),
  /** A device to leave out: the reply says what that changes. */
  without: placeId.optional(),
  /** Formats to judge, repeated or separated by commas; without it, those that the chain's record wants. */
  format: z
    .union([z.string(), z.array(z.string())])
    .transform((given) => [given].flat().flatMap((one) => one.split(',')))
    .pipe(z.array(formatText).max(40))
    .optional(),
});

/** Words after a format's bits; one that means nothing is a field of its own, which the strict form refuses. */
function comingWith(words: readonly string[]): Record<string, unknown> {
  const features = pictureFeatures.filter((feature) => words.includes(feature));
  return Object.fromEntries([
    ...words.map((word): [string, unknown] => {
      if (isOneOf(dynamicRanges, word)) return ['dynamicRange', word];
      if (isOneOf(colorimetries, word)) return ['colorimetry', word];
      if (isOneOf(pictureFeatures, word)) return ['features', features];
      return word === '3d' ? ['threeD', true] : [`/${word}`, word];
    }),
  ]);
}
const isOneOf = (list: readonly string[], word: string): boolean => list.includes(word);

const frlRate = z.object({ lanes: z.number(), gbpsPerLane: z.number() });
const capacity = z.object({ tmdsMHz: z.number(), frl: frlRate.nullable() });
const linkVerdict = z.enum(['fits', 'doubtful', 'reduced', 'notOffered', 'short']);
/** What of a picture doesn't get past a device, and why. */
const loss = z.object({ deviceId: z.string(), why: z.enum(lossReasons), what: z.array(message) });
const elementKind = z.enum(['cable', 'edid', 'sourcePort', 'sinkPort']);

const formatOnLink = z.object({
  wanted: videoFormat,
  /** What travels on this link for it. */
  format: videoFormat,
  verdict: linkVerdict,
  figures: z
    .object({
      way: z.enum(['tmds', 'frl']),
      needGbps: z.number(),
      capacityGbps: z.number(),
      narrowest: elementKind,
      headroomGbps: z.number(),
      /** Over the lesser of need and capacity: -0.24 where 24 % more is needed than is carried; null where nothing is. */
      headroomFraction: z.number().nullable(),
    })
    .nullable(),
  ratedGbps: z.number().nullable(),
  refusals: z.array(message),
  losses: z.array(loss),
  compressed: z.object({ bitsPerPixel: z.number(), slices: z.number(), ratio: z.number() }).nullable(),
  sentence: message,
});
const linkBudget = z.object({
  id: z.string(),
  linkIds: z.array(z.string()),
  cableLinkId: z.string(),
  name: message,
  elements: z.array(
    z.object({
      kind: elementKind,
      place,
      rated: capacity,
      sure: capacity,
      doubts: z.array(message),
      setBelowHighest: z.boolean(),
    }),
  ),
  /** The EDID that the output at the link's source end sees, and what was done to it on its way. */
  seen: z.object({
    edidHex: z.string().nullable(),
    hands: z.array(z.object({ deviceId: z.string(), did: z.string() })),
  }),
  wanted: z.array(formatOnLink),
  fitting: z.array(videoFormat),
});
const wantedOverall = z.object({
  wanted: videoFormat,
  verdict: linkVerdict,
  linkId: z.string().nullable(),
  lostAtNineGbps: z.boolean(),
  /** Where what was asked for gets lost on the way. */
  losses: z.array(loss),
  sentence: message,
});
export const chainBudgetReply = z.object({
  without: z.string().nullable(),
  links: z.array(linkBudget),
  wanted: z.array(wantedOverall),
  displays: z.array(
    z.object({ displayId: z.string(), linkIds: z.array(z.string()), best: videoFormat.nullable() }),
  ),
  fitting: z.array(videoFormat),
  best: videoFormat.nullable(),
  atNineGbps: z.object({ best: videoFormat.nullable(), lost: z.array(videoFormat) }),
});

const powerFigure = z.object({
  ma: z.number(),
  basis: z.enum(['recorded', 'standard', 'ownSupply', 'assumed']),
});
const allowed = z.enum(['yes', 'no', 'unknown']);
const protection = z.object({
  demand: z.enum(['type0', 'type1']),
  hops: z.array(
    z.object({
      linkId: z.string(),
      sourceId: z.string(),
      sinkId: z.string(),
      version: z.string(),
      allowed,
      sentence: message,
    }),
  ),
  displays: z.array(
    z.object({
      sourceId: z.string(),
      displayId: z.string(),
      shown: allowed,
      linkId: z.string().nullable(),
      sentence: message,
    }),
  ),
  topology: z.array(
    z.object({
      sourceId: z.string(),
      linkId: z.string(),
      devices: z.number(),
      levels: z.number(),
      limit: z.object({ devices: z.number(), levels: z.number(), source: message }),
      within: z.boolean(),
      sentence: message,
    }),
  ),
  /**
   * Where a message says that a display lacks the newer version although its data sheet has it, the cable is the first
   * suspect, above all an active optical one. Common practice, no source.
   */
  ifADisplaySeemsTooOld: z.array(
    z.object({
      displayId: z.string(),
      cables: z.array(z.object({ linkId: z.string(), sentence: message })),
    }),
  ),
});

/** What the signal of a chain can and cannot do: link budget, content protection, 5 V power. */
export const budgetReply = z.object({
  version: z.int(),
  budget: chainBudgetReply,
  /** What leaving the named device out changes, format by format; null when none was named. */
  comparison: z
    .array(
      z.object({
        wanted: videoFormat,
        effect: z.enum(['better', 'worse', 'same']),
        withIt: wantedOverall,
        withoutIt: wantedOverall,
        sentence: message,
      }),
    )
    .nullable(),
  contentProtection: protection,
  /** Sound back over the cables of pictures, where both ends do it. */
  returnAudio: z.array(
    z.object({ linkId: z.string(), kind: z.enum(['arc', 'earc']), carried: allowed, sentence: message }),
  ),
  power: z.array(
    z.object({
      linkId: z.string(),
      supply: powerFigure,
      sink: powerFigure,
      cable: powerFigure,
      balanceMa: z.number(),
      verdict: z.enum(['enough', 'risk', 'short']),
      opticalOnSource: z.boolean(),
      sentence: message,
    }),
  ),
});
export type BudgetReply = z.infer<typeof budgetReply>;

export const edidDifference = z.object({
  topic: z.enum(edidTopics),
  /** Seen from the second EDID. */
  change: z.enum(['lost', 'gained', 'changed']),
  /** What each says of the topic, an item each; empty where there is nothing. */
  first: z.array(message),
  second: z.array(message),
  text: message,
});
export type EdidDifference = z.infer<typeof edidDifference>;
/** One EDID that was read somewhere in a chain. */
export const edidReading = z.object({
  deviceId: z.string(),
  portId: z.string().nullable(),
  /** The chain's record, or an item of evidence. */
  from: z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('record') }),
    z.object({ kind: z.literal('evidence'), evidenceId: z.string(), ticketId: z.string(), at: z.string() }),
  ]),
  sha256: z.string(),
  /** Manufacturer code, product code and name as the EDID has them. */
  display: z.string(),
});
export const edidComparison = z.object({
  /** Indexes into `readings`. */
  first: z.int(),
  second: z.int(),
  /** The same place at two times, or a display's own against what a device before it passes on. */
  perspective: z.enum(['overTime', 'passedOn']),
  same: z.boolean(),
  differences: z.array(edidDifference),
});
export const edidReadings = z.object({
  readings: z.array(edidReading),
  comparisons: z.array(edidComparison),
});
export type EdidReadings = z.infer<typeof edidReadings>;
