import type { EdidDifference } from '../../contract/signal.ts';
import { type Message, message } from '../../message/message.ts';
import { messageKey } from '../../message/same.ts';
import { type FrlRate, frlBitRateGbps, tmdsBitRateGbps } from '../format/index.ts';
import { sameBytes } from './bytes.ts';
import { type Eotf, type SinkAudio, type SinkCapabilities, sinkCapabilities } from './capabilities.ts';
import { encodeEdid } from './encode.ts';
import { firstText } from './facts.ts';
import type { SinkFormat } from './formats.ts';
import type { Edid } from './tree.ts';
import { depthNames, eotfNames, formatName } from './wording.ts';

/**
 * What two EDIDs are to each other. `overTime`: what a source saw before, and what it sees now. `passedOn`: what the
 * display says, and what a device before it passes on to its sources.
 */
export type ComparePerspective = 'overTime' | 'passedOn';

type Topic = EdidDifference['topic'];
type Described = { edid: Edid; sink: SinkCapabilities };
/** What an EDID says of a topic, an item each. */
type Items = (described: Described) => Message[];

const notations = (said: readonly string[]): Message[] =>
  said.map((each) => message('edid/notation', { said: each }));
const when = (there: boolean, item: Message): Message[] => (there ? [item] : []);

const formatNames = (
  formats: readonly SinkFormat[],
  keep: (format: SinkFormat) => boolean = () => true,
): Message[] => notations([...new Set(formats.filter(keep).map(({ timing }) => formatName(timing)))]);

const fixedRate = (rate: FrlRate) => ({
  rate: frlBitRateGbps(rate),
  lanes: rate.lanes,
  lane: rate.gbpsPerLane,
});

const eotfItem = (eotf: Eotf): Message =>
  eotf === 'hdrGamma' ? message('edid/gammaHdr') : message('edid/notation', { said: eotfNames[eotf] });

const hdrItems = ({ eotfs, luminance }: SinkCapabilities): Message[] => [
  ...eotfs.filter((eotf) => eotf !== 'sdr').map(eotfItem),
  ...(luminance.max === null
    ? []
    : [message('edid/peakLuminance', { luminance: Math.round(luminance.max) })]),
];

const audioItem = ({ format, channels, ratesKHz }: SinkAudio): Message =>
  message('edid/audio', { format, channels, ratesKHz: ratesKHz.join('/') });

const refreshItem = ({ minHz, maxHz }: NonNullable<SinkCapabilities['vrr']>): Message =>
  maxHz === null
    ? message('edid/refreshFrom', { lowest: minHz })
    : message('edid/refreshBetween', { lowest: minHz, highest: maxHz });

const displayName = ({ base }: Edid, name: string | null): string =>
  `${base.manufacturer} ${name ?? base.productCode}`.trim();

/** Every topic but that of the bare bytes, in the order a source decides by. */
const items: Readonly<Record<Exclude<Topic, 'bytesOnly'>, Items>> = {
  display: ({ edid }) => [message('edid/name', { name: displayName(edid, firstText(edid, 'productName')) })],
  physicalAddress: ({ sink }) => notations(sink.physicalAddress ? [sink.physicalAddress] : []),
  tmdsRate: ({ sink: { maxTmdsCharacterRateMHz: rate } }) => [
    message('edid/tmdsRate', { rate, bitRate: tmdsBitRateGbps(rate) }),
  ],
  fixedRateLink: ({ sink }) => (sink.frl ? [message('edid/fixedRate', fixedRate(sink.frl))] : []),
  compression: ({ sink }) =>
    sink.compression ? [message('edid/compressionUpTo', fixedRate(sink.compression.maxRate))] : [],
  depths: ({ sink }) => notations(depthNames(sink.depths)),
  preferredTiming: ({ sink }) => formatNames(sink.formats.slice(0, 1)),
  formats: ({ sink }) => formatNames(sink.formats),
  chroma420: ({ sink }) => formatNames(sink.formats, ({ in420 }) => in420 !== 'no'),
  chroma420Alone: ({ sink }) => formatNames(sink.formats, ({ in420 }) => in420 === 'only'),
  hdr: ({ sink }) => hdrItems(sink),
  dynamicHdr: ({ sink }) => [
    ...sink.dynamicMetadataTypes.map((type) => message('edid/dynamicMetadata', { type })),
    ...sink.vendorVideoOuis.map((oui) => message('edid/vendorVideo', { oui })),
  ],
  colorimetry: ({ sink }) => notations(sink.colorimetry),
  audio: ({ sink }) => [...when(sink.basicAudio, message('edid/basicAudio')), ...sink.audio.map(audioItem)],
  speakers: ({ sink }) => notations(sink.speakers),
  lowLatency: ({ sink }) => when(sink.allm, message('edid/lowLatencyMode')),
  variableRefresh: ({ sink }) => (sink.vrr ? [refreshItem(sink.vrr)] : []),
  scdc: ({ sink }) => when(sink.scdc, message('edid/there')),
};

/** Topics that are one value each: their sentence names both, not what was lost and gained. */
const single: ReadonlySet<Topic> = new Set([
  'display',
  'physicalAddress',
  'tmdsRate',
  'fixedRateLink',
  'compression',
  'preferredTiming',
  'variableRefresh',
]);

/** What stands in one list and not in the other. */
function without(list: readonly Message[], other: readonly Message[]): Message[] {
  const there = new Set(other.map(messageKey));
  return list.filter((item) => !there.has(messageKey(item)));
}

type Pair = { first: Message[]; second: Message[] };

function sentence(topic: Topic, { first, second }: Pair, perspective: ComparePerspective): Message {
  const isPassedOn = perspective === 'passedOn';
  if (single.has(topic))
    return isPassedOn
      ? message('edid/atDisplayAndPassedOn', { topic, display: first, passedOn: second })
      : message('edid/beforeAndNow', { topic, before: first, now: second });
  const [lost, gained] = [without(first, second), without(second, first)];
  if (lost.length === 0 && gained.length === 0) return message('edid/otherOrder', { topic });
  return message(isPassedOn ? 'edid/heldBackAndAdded' : 'edid/lostAndGained', { topic, lost, gained });
}

function changeOf({ first, second }: Pair): EdidDifference['change'] {
  const [lost, gained] = [without(first, second).length > 0, without(second, first).length > 0];
  if (lost === gained) return 'changed';
  return lost ? 'lost' : 'gained';
}

function difference(topic: Topic, pair: Pair, perspective: ComparePerspective): EdidDifference[] {
  const [a, b] = [pair.first.map(messageKey), pair.second.map(messageKey)];
  if (a.length === b.length && a.every((key, at) => key === b[at])) return [];
  return [{ topic, change: changeOf(pair), ...pair, text: sentence(topic, pair, perspective) }];
}

/**
 * What differs between two EDIDs, in the order a source decides by; empty when they are the same byte for byte.
 *
 * @param first what was seen before, or what the display says
 * @param second what is seen now, or what is passed on
 */
export function compareEdids(first: Edid, second: Edid, perspective: ComparePerspective): EdidDifference[] {
  const described = (edid: Edid): Described => ({ edid, sink: sinkCapabilities(edid) });
  const [a, b] = [described(first), described(second)];
  const differences = Object.entries(items).flatMap(([topic, of]) =>
    difference(topic as Topic, { first: of(a), second: of(b) }, perspective),
  );
  if (differences.length > 0 || sameBytes(encodeEdid(first), encodeEdid(second))) return differences;
  const text = message(perspective === 'passedOn' ? 'edid/onlyBytesDiffer' : 'edid/onlyBytesChanged');
  return [{ topic: 'bytesOnly', change: 'changed', first: [], second: [], text }];
}
