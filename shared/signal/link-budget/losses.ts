import type { Device, PassedOn, VideoFormat } from '../../contract/chain.ts';
import type { hdrKinds, lossReasons, pictureFeatures } from '../../contract/chain-names.ts';
import { dynamicRangeNames } from '../../message/figures.ts';
import { distinctMessages, type Message, message } from '../../message/index.ts';
import type { EdidOffer } from './edid-offer.ts';
import type { EdidHand, SeenEdid } from './seen-edid.ts';
import type { Run } from './wiring.ts';

/** What of a picture doesn't get past a device though the picture does. */
export type Loss = {
  deviceId: string;
  why: (typeof lossReasons)[number];
  /** As clauses: HDR10, variable refresh rate, ... */
  what: Message[];
};

type HdrKind = (typeof hdrKinds)[number];

/** One thing that is asked for with a picture. */
type Ask = {
  what: Message;
  /** By a device's recorded facts; yes where they don't say. */
  passedBy: (facts: PassedOn) => boolean;
  offeredBy: (offer: EdidOffer) => boolean;
  isHdr: boolean;
};

/** A device that makes another picture of what it gets, on purpose: what it doesn't pass on is then no loss. */
export const converts = (device: Device): boolean =>
  device.processesPicture ||
  device.passes?.toneMaps === true ||
  (device.role !== 'source' && device.outputFormat !== null);

/** Formats without what a converting device does with as it is set, by the formats that they were. */
const plainOf = new WeakMap<VideoFormat, VideoFormat>();

/** What is left to ask for behind a device that converts: the picture alone. */
export function plainly(format: VideoFormat): VideoFormat {
  if (asksOf(format).length === 0) return format;
  const { dynamicRange, colorimetry, features, ...plain } = format;
  const known = plainOf.get(format) ?? plain;
  plainOf.set(format, known);
  return known;
}

/**
 * What of a picture gets lost on a run: at the device it starts from, if nothing feeds that one; at the device it goes
 * into; and for want of an EDID that admits it. What isn't recorded isn't taken for a loss.
 *
 * @param isOffered whether the EDID seen offers the picture itself; where it doesn't, that is what to say of the EDID
 */
export function lossesOn(
  run: Run,
  format: VideoFormat,
  { seen, isStart, isEnd, isOffered, isSoundLost, convertsAt }: LossContext,
): Loss[] {
  const asks = asksOf(format);
  const found: Loss[] = [];
  const lose = (deviceId: string, why: Loss['why'], what: Message[]): void => {
    if (what.length > 0) found.push({ deviceId, why, what });
  };
  const lostAt = (device: Device): Message[] => lostByFacts(device.passes ?? {}, asks, format);
  if (isStart) {
    lose(run.source.id, 'device', lostAt(run.source));
    if (wantsMoreBits(format)) lose(run.source.id, 'bits', asks.filter(({ isHdr }) => isHdr).map(whatOf));
  }
  if (isStart && isSoundLost) lose(run.source.id, 'blanking', [message('lossOfSound')]);
  if (isEnd || !converts(run.sink)) lose(run.sink.id, 'device', lostAt(run.sink));
  if (!isOffered || seen.offer === null) return joined(found);
  for (const ask of asks) {
    if (ask.offeredBy(seen.offer)) continue;
    const hand = culprit(run, seen, ask, convertsAt);
    if (hand !== null) lose(hand.deviceId, hand.why, [ask.what]);
  }
  return joined(found);
}

export type LossContext = {
  seen: SeenEdid;
  isStart: boolean;
  isEnd: boolean;
  isOffered: boolean;
  /** The blanking of the picture has no room for the sound. */
  isSoundLost: boolean;
  convertsAt: (deviceId: string) => { converts: boolean; dropsHdr: boolean };
};

const whatOf = ({ what }: Ask): Message => what;

function lostByFacts(facts: PassedOn, asks: readonly Ask[], { bitsPerComponent }: VideoFormat): Message[] {
  const tooDeep = facts.deepestBits !== undefined && bitsPerComponent > facts.deepestBits;
  return [
    ...asks.filter(({ passedBy }) => !passedBy(facts)).map(whatOf),
    ...(tooDeep ? [message('lossOfDepth', { bits: bitsPerComponent })] : []),
  ];
}

/** Who keeps it out of the EDID that a run's source sees, nearest to the source; null where that can't be told. */
function culprit(
  run: Run,
  { hands }: SeenEdid,
  ask: Ask,
  at: LossContext['convertsAt'],
): Pick<Loss, 'deviceId' | 'why'> | null {
  // A device that converts answers for what it takes itself; what it would pass on of the display's EDID tells nothing.
  const passesOnly = ({ did }: EdidHand): boolean => did === 'passesOn' || did === 'combines';
  if (hands.some((hand) => passesOnly(hand) && at(hand.deviceId).converts)) return null;
  for (const { deviceId, did } of hands.toReversed()) {
    if (did === 'replaces' || did === 'combines') return { deviceId, why: did };
    if (did === 'limits' && ask.isHdr && at(deviceId).dropsHdr) return { deviceId, why: 'limits' };
    // A reading at an output is of what follows it.
    if (did === 'read' || did === 'answers')
      return { deviceId: deviceId === run.source.id ? run.sink.id : deviceId, why: 'edid' };
  }
  return null;
}

/** One entry a device; that it can't goes before that its EDID says so. */
function joined(found: readonly Loss[]): Loss[] {
  const keyOf = ({ deviceId, why }: Loss): string => `${deviceId} ${why === 'edid' ? 'device' : why}`;
  return [...new Map(found.map((loss) => [keyOf(loss), loss])).keys()].flatMap((key) => {
    const same = found.filter((loss) => keyOf(loss) === key);
    const [first] = same;
    return first === undefined
      ? []
      : [{ ...first, what: distinctMessages(same.flatMap(({ what }) => what)) }];
  });
}

/** Losses on several runs, or of several pictures, an entry a device and reason. */
export const joinedLosses = (losses: readonly Loss[]): Loss[] => joined(losses);

/**
 * HDR10 and HLG take ten bits at least (ITU-R BT.2100-2, table 9). Dynamic metadata may be tunnelled inside RGB of 8 bits,
 * twelve bits of picture in each three of those (common practice, no source).
 */
function wantsMoreBits({ dynamicRange, encoding, bitsPerComponent }: VideoFormat): boolean {
  if (dynamicRange === undefined || dynamicRange === 'sdr' || bitsPerComponent > 8) return false;
  const isTunnelled = dynamicRange !== 'hdr10' && dynamicRange !== 'hlg' && encoding === 'rgb';
  // 4:2:2 travels in twelve bits whatever is asked for.
  return !isTunnelled && encoding !== 'ycbcr422';
}

function asksOf(format: VideoFormat): Ask[] {
  const { dynamicRange, colorimetry, features, threeD, encoding } = format;
  return [
    ...(dynamicRange === undefined || dynamicRange === 'sdr' ? [] : [hdrAsk(dynamicRange)]),
    ...(colorimetry === 'bt2020' ? [wideColour(encoding)] : []),
    ...(features ?? []).map(featureAsk),
    ...(threeD ? [twoPictures] : []),
  ];
}

const hdrAsk = (kind: HdrKind): Ask => ({
  what: message('lossOfHdr', { kind: dynamicRangeNames[kind] }),
  passedBy: ({ dynamicRanges }) => dynamicRanges?.includes(kind) ?? true,
  offeredBy: ({ hdr }) => hdr.includes(kind),
  isHdr: true,
});

const wideColour = (encoding: VideoFormat['encoding']): Ask => ({
  what: message('lossOfWideColour'),
  passedBy: (facts) => facts.wideColour ?? true,
  offeredBy: (offer) => offer.wideColour[encoding === 'rgb' ? 'rgb' : 'ycc'],
  isHdr: false,
});

const features = {
  vrr: message('lossOfVariableRate'),
  allm: message('lossOfLowLatency'),
  qms: message('lossOfQuickSwitching'),
} as const;

const featureAsk = (feature: (typeof pictureFeatures)[number]): Ask => ({
  what: features[feature],
  passedBy: (facts) => facts.features?.includes(feature) ?? true,
  offeredBy: (offer) => offer.features.includes(feature),
  isHdr: false,
});

const twoPictures: Ask = {
  what: message('lossOfThreeD'),
  passedBy: ({ threeD }) => threeD ?? true,
  offeredBy: ({ threeD }) => threeD,
  isHdr: false,
};
