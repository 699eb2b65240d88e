import type { Message } from '../../contract/message.ts';
import type { edidCodes } from '../codes/edid.ts';
import type { Say } from '../say.ts';
import type { Sentences } from '../sentences.ts';
import type { Kinds, ValuesOf } from '../values.ts';

type BothWays = ValuesOf<(typeof edidCodes)['edid/lostAndGained']>;

const about = (topic: Kinds['edidTopic'], say: Say): string => say.start(say.term('edidTopic', topic));
const list = (items: readonly Message[], say: Say): string =>
  items.length === 0 ? 'nichts' : items.map(say.message).join(', ');
const fixedRate = ({ rate, lanes, lane }: ValuesOf<(typeof edidCodes)['edid/fixedRate']>, say: Say): string =>
  `${say.gbps(rate)} (${lanes} Bahnen zu ${say.number(lane)})`;

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

export const edidDe: Sentences<typeof edidCodes> = {
  'edid/notation': ({ said }) => said,
  'edid/name': ({ name }, say) => say.name(name),
  'edid/tmdsRate': ({ rate, bitRate }, say) => `${say.number(rate)} MHz (${say.gbps(bitRate)})`,
  'edid/fixedRate': fixedRate,
  'edid/compressionUpTo': (rate, say) => `bis ${fixedRate(rate, say)}`,
  'edid/gammaHdr': () => 'HDR mit herkömmlicher Gammakurve',
  'edid/peakLuminance': ({ luminance }) => `Spitze ${Math.round(luminance)} cd/m²`,
  'edid/dynamicMetadata': ({ type }) => `Metadaten vom Typ ${type}`,
  'edid/vendorVideo': ({ oui }) => `Herstellersystem mit der OUI ${oui}`,
  'edid/basicAudio': () => 'einfacher Ton',
  'edid/audio': ({ format, channels, ratesKHz }, say) =>
    channels === null
      ? `${format} ${ratesKHz} kHz`
      : `${format} ${channels} ${say.plural(channels, 'Kanal', 'Kanäle')} ${ratesKHz} kHz`,
  'edid/lowLatencyMode': () => 'automatischer Modus für niedrige Latenz',
  'edid/refreshBetween': ({ lowest, highest }) => `${lowest} bis ${highest} Hz`,
  'edid/refreshFrom': ({ lowest }) => `${lowest} Hz bis zur höchsten Bildrate`,
  'edid/there': () => 'vorhanden',

  'edid/beforeAndNow': ({ topic, before, now }, say) =>
    `${about(topic, say)}: vorher ${list(before, say)}, jetzt ${list(now, say)}.`,
  'edid/atDisplayAndPassedOn': ({ topic, display, passedOn }, say) =>
    `${about(topic, say)}: am Display ${list(display, say)}, weitergegeben ${list(passedOn, say)}.`,
  'edid/lostAndGained': (values, say) => bothWays(values, { lost: 'nicht mehr', gained: 'jetzt auch' }, say),
  'edid/heldBackAndAdded': (values, say) =>
    bothWays(values, { lost: 'nicht weitergegeben', gained: 'unterwegs dazugekommen' }, say),
  'edid/otherOrder': ({ topic }, say) => `${about(topic, say)}: dasselbe in anderer Reihenfolge.`,
  'edid/onlyBytesChanged': () =>
    'Die Bytes haben sich geändert, aber nichts, wonach sich eine Quelle richtet.',
  'edid/onlyBytesDiffer': () =>
    'Die Bytes sind nicht die des Displays, aber nichts, wonach sich eine Quelle richtet, ist anders.',
};
