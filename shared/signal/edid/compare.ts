import { sameBytes } from './bytes.ts';
import { type SinkCapabilities, sinkCapabilities } from './capabilities.ts';
import { encodeEdid } from './encode.ts';
import { firstText } from './facts.ts';
import type { SinkFormat } from './formats.ts';
import type { Edid } from './tree.ts';
import { audioName, depthNames, eotfNames, formatName, frlName, tmdsRateName } from './wording.ts';

/**
 * What two EDIDs are to each other. `overTime`: what a source saw before, and what it sees now. `passedOn`: what the
 * display says, and what a device before it passes on to its sources.
 */
export type ComparePerspective = 'overTime' | 'passedOn';

export type DifferenceTopic =
  | 'display'
  | 'physicalAddress'
  | 'tmdsRate'
  | 'fixedRateLink'
  | 'compression'
  | 'depths'
  | 'formats'
  | 'preferredTiming'
  | 'chroma420'
  | 'chroma420Alone'
  | 'hdr'
  | 'dynamicHdr'
  | 'colorimetry'
  | 'audio'
  | 'speakers'
  | 'lowLatency'
  | 'variableRefresh'
  | 'scdc'
  | 'bytesOnly';

/** `lost` and `gained` are seen from the second EDID. `first` and `second` are null where there is nothing. */
export type EdidDifference = {
  topic: DifferenceTopic;
  change: 'lost' | 'gained' | 'changed';
  first: string | null;
  second: string | null;
  /** A sentence in the trade's words. */
  text: string;
};

type Aspect = { topic: DifferenceTopic; label: string; of: (sink: Described) => string[] };
type Described = { edid: Edid; sink: SinkCapabilities };

const list = (items: readonly string[]): string => items.join(', ');

const formatNames = (
  formats: readonly SinkFormat[],
  keep: (format: SinkFormat) => boolean = () => true,
): string[] => [...new Set(formats.filter(keep).map(({ timing }) => formatName(timing)))];

function hdrNames({ eotfs, luminance }: SinkCapabilities): string[] {
  const names: string[] = eotfs.filter((eotf) => eotf !== 'sdr').map((eotf) => eotfNames[eotf]);
  if (luminance.max !== null) names.push(`peak ${Math.round(luminance.max)} cd/m²`);
  return names;
}

const flag = (there: boolean, name: string): string[] => (there ? [name] : []);

const aspects: readonly Aspect[] = [
  {
    topic: 'display',
    label: 'Display named',
    of: ({ edid }) => [
      `${edid.base.manufacturer} ${firstText(edid, 'productName') ?? edid.base.productCode}`.trim(),
    ],
  },
  {
    topic: 'physicalAddress',
    label: 'CEC address',
    of: ({ sink }) => (sink.physicalAddress ? [sink.physicalAddress] : []),
  },
  {
    topic: 'tmdsRate',
    label: 'TMDS character rate',
    of: ({ sink }) => [tmdsRateName(sink.maxTmdsCharacterRateMHz)],
  },
  {
    topic: 'fixedRateLink',
    label: 'Fixed rate link',
    of: ({ sink }) => (sink.frl ? [frlName(sink.frl)] : []),
  },
  {
    topic: 'compression',
    label: 'Compression (DSC)',
    of: ({ sink }) => (sink.compression ? [`up to ${frlName(sink.compression.maxRate)}`] : []),
  },
  { topic: 'depths', label: 'Colour depths', of: ({ sink }) => depthNames(sink.depths) },
  {
    topic: 'preferredTiming',
    label: 'Preferred timing',
    of: ({ sink }) => sink.formats.slice(0, 1).map(({ timing }) => formatName(timing)),
  },
  { topic: 'formats', label: 'Formats', of: ({ sink }) => formatNames(sink.formats) },
  {
    topic: 'chroma420',
    label: 'Formats in YCbCr 4:2:0',
    of: ({ sink }) => formatNames(sink.formats, ({ in420 }) => in420 !== 'no'),
  },
  {
    topic: 'chroma420Alone',
    label: 'Formats in YCbCr 4:2:0 alone',
    of: ({ sink }) => formatNames(sink.formats, ({ in420 }) => in420 === 'only'),
  },
  { topic: 'hdr', label: 'HDR', of: ({ sink }) => hdrNames(sink) },
  {
    topic: 'dynamicHdr',
    label: 'Dynamic HDR',
    of: ({ sink }) => [
      ...sink.dynamicMetadataTypes.map((type) => `metadata type ${type}`),
      ...sink.vendorVideoOuis.map((oui) => `vendor system of OUI ${oui}`),
    ],
  },
  { topic: 'colorimetry', label: 'Colorimetry', of: ({ sink }) => sink.colorimetry },
  {
    topic: 'audio',
    label: 'Audio',
    of: ({ sink }) => [...flag(sink.basicAudio, 'basic audio'), ...sink.audio.map(audioName)],
  },
  { topic: 'speakers', label: 'Loudspeakers', of: ({ sink }) => sink.speakers },
  {
    topic: 'lowLatency',
    label: 'Low latency',
    of: ({ sink }) => flag(sink.allm, 'automatic low-latency mode'),
  },
  {
    topic: 'variableRefresh',
    label: 'Variable refresh',
    of: ({ sink }) => (sink.vrr ? [`${sink.vrr.minHz} to ${sink.vrr.maxHz ?? 'the highest'} Hz`] : []),
  },
  { topic: 'scdc', label: 'Status and control channel (SCDC)', of: ({ sink }) => flag(sink.scdc, 'there') },
];

const wording = {
  overTime: { first: 'before', second: 'now', lost: 'no longer', gained: 'now also' },
  passedOn: {
    first: 'at the display',
    second: 'passed on',
    lost: 'not passed on',
    gained: 'added on the way',
  },
} as const;

/** Topics that are one value each: their sentence names both, not what was lost and gained. */
const single: ReadonlySet<DifferenceTopic> = new Set([
  'display',
  'physicalAddress',
  'tmdsRate',
  'fixedRateLink',
  'compression',
  'preferredTiming',
  'variableRefresh',
]);

function sentence(
  aspect: Aspect,
  first: string[],
  second: string[],
  perspective: ComparePerspective,
): string {
  const words = wording[perspective];
  if (single.has(aspect.topic))
    return `${aspect.label}: ${list(first) || 'none'} ${words.first}, ${list(second) || 'none'} ${words.second}.`;
  const lost = first.filter((item) => !second.includes(item));
  const gained = second.filter((item) => !first.includes(item));
  const parts = [
    lost.length > 0 ? `${words.lost}: ${list(lost)}` : null,
    gained.length > 0 ? `${words.gained}: ${list(gained)}` : null,
  ].filter((part) => part !== null);
  return parts.length > 0
    ? `${aspect.label} ${parts.join('; ')}.`
    : `${aspect.label}: the same, in another order.`;
}

function changeOf(first: readonly string[], second: readonly string[]): EdidDifference['change'] {
  const lost = first.some((item) => !second.includes(item));
  const gained = second.some((item) => !first.includes(item));
  if (lost === gained) return 'changed';
  return lost ? 'lost' : 'gained';
}

function difference(
  aspect: Aspect,
  first: Described,
  second: Described,
  perspective: ComparePerspective,
): EdidDifference | null {
  const [a, b] = [aspect.of(first), aspect.of(second)];
  if (a.length === b.length && a.every((item, i) => item === b[i])) return null;
  return {
    topic: aspect.topic,
    change: changeOf(a, b),
    first: list(a) || null,
    second: list(b) || null,
    text: sentence(aspect, a, b, perspective),
  };
}

const onlyBytes: Record<ComparePerspective, string> = {
  overTime: 'The bytes have changed, but nothing that a source decides by.',
  passedOn: 'The bytes are not those of the display, but nothing that a source decides by differs.',
};

/**
 * What differs between two EDIDs, in the order a source decides by; empty when they are the same byte for byte.
 *
 * @param first what was seen before, or what the display says
 * @param second what is seen now, or what is passed on
 */
export function compareEdids(first: Edid, second: Edid, perspective: ComparePerspective): EdidDifference[] {
  const described = (edid: Edid): Described => ({ edid, sink: sinkCapabilities(edid) });
  const [a, b] = [described(first), described(second)];
  const differences = aspects.flatMap((aspect) => difference(aspect, a, b, perspective) ?? []);
  if (differences.length > 0 || sameBytes(encodeEdid(first), encodeEdid(second))) return differences;
  return [{ topic: 'bytesOnly', change: 'changed', first: null, second: null, text: onlyBytes[perspective] }];
}
