import type { Message } from '../../contract/message.ts';
import type { edidCodes } from '../codes/edid.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { Kinds, ValuesOf } from '../values.ts';

type BothWays = ValuesOf<(typeof edidCodes)['edid/lostAndGained']>;

const about = (topic: Kinds['edidTopic'], say: Say): string => say.start(say.term('edidTopic', topic));
const list = (items: readonly Message[], say: Say): string =>
  items.length === 0 ? 'none' : items.map(say.message).join(', ');
const fixedRate = ({ rate, lanes, lane }: ValuesOf<(typeof edidCodes)['edid/fixedRate']>, say: Say): string =>
  `${say.gbps(rate)} (${lanes} lanes of ${say.number(lane)})`;

/** What went and what came, each with its word before it. */
function bothWays(
  { topic, lost, gained }: BothWays,
  words: { lost: string; gained: string },
  say: Say,
): string {
  const parts = [
    lost.length === 0 ? [] : [`${words.lost}: ${list(lost, say)}`],
    gained.length === 0 ? [] : [`${words.gained}: ${list(gained, say)}`],
  ];
  return `${about(topic, say)} ${parts.flat().join('; ')}.`;
}

export const edidEn: Sentences<typeof edidCodes> = {
  'edid/notation': ({ said }) => said,
  'edid/name': ({ name }, say) => say.name(name),
  'edid/tmdsRate': ({ rate, bitRate }, say) => `${say.number(rate)} MHz (${say.gbps(bitRate)})`,
  'edid/fixedRate': fixedRate,
  'edid/compressionUpTo': (rate, say) => `up to ${fixedRate(rate, say)}`,
  'edid/gammaHdr': () => 'traditional gamma HDR',
  'edid/peakLuminance': ({ luminance }) => `peak ${Math.round(luminance)} cd/m²`,
  'edid/dynamicMetadata': ({ type }) => `metadata type ${type}`,
  'edid/vendorVideo': ({ oui }) => `vendor system of OUI ${oui}`,
  'edid/basicAudio': () => 'basic audio',
  'edid/audio': ({ format, channels, ratesKHz }, say) =>
    channels === null
      ? `${format} ${ratesKHz} kHz`
      : `${format} ${channels} ${say.plural(channels, 'channel', 'channels')} ${ratesKHz} kHz`,
  'edid/lowLatencyMode': () => 'automatic low-latency mode',
  'edid/refreshBetween': ({ lowest, highest }) => `${lowest} to ${highest} Hz`,
  'edid/refreshFrom': ({ lowest }) => `${lowest} to the highest Hz`,
  'edid/there': () => 'there',

  'edid/beforeAndNow': ({ topic, before, now }, say) =>
    `${about(topic, say)}: ${list(before, say)} before, ${list(now, say)} now.`,
  'edid/atDisplayAndPassedOn': ({ topic, display, passedOn }, say) =>
    `${about(topic, say)}: ${list(display, say)} at the display, ${list(passedOn, say)} passed on.`,
  'edid/lostAndGained': (values, say) => bothWays(values, { lost: 'no longer', gained: 'now also' }, say),
  'edid/heldBackAndAdded': (values, say) =>
    bothWays(values, { lost: 'not passed on', gained: 'added on the way' }, say),
  'edid/otherOrder': ({ topic }, say) => `${about(topic, say)}: the same, in another order.`,
  'edid/onlyBytesChanged': () => 'The bytes have changed, but nothing that a source decides by.',
  'edid/onlyBytesDiffer': () =>
    'The bytes are not those of the display, but nothing that a source decides by differs.',
};
