import type { VideoFormat } from '../../contract/chain.ts';
import { horizontalBlankingPx, lineRateKHz, type Timing } from '../timings/index.ts';
import { audioPacketsPerLine, leastBlankingCharacters } from './frl.ts';
import { depthFactor, pixelsPerCharacter, type Sampling } from './tmds.ts';

export type Sound = NonNullable<VideoFormat['sound']>;

/**
 * Audio packets a second of linear PCM: of two channels four samples share a packet, of more each sample has its own.
 * Source: HDMI 1.4b, 5.3.4, layouts 0 and 1.
 */
export const audioPacketsHz = ({ channels, rateKHz }: Sound): number =>
  (rateKHz * 1000) / (channels <= 2 ? 4 : 1);

/** Clock regeneration packets a second at the usual N of rates built on 48 kHz (HDMI 1.4b, 7.2). */
const clockPacketsHz = 1000;
/** Characters of a line's blanking that no packet can have: control periods, preambles, guard bands (HDMI 1.4b, 5.2; from memory). */
const framingCharacters = 30;
/** Packets of one data island at most (HDMI 1.4b, 5.2.3.1). */
const mostPackets = 18;

/** Characters of horizontal blanking; 0 where the sampling can't be sent. */
const blankingCharacters = (timing: Timing, sampling: Sampling): number =>
  (horizontalBlankingPx(timing) * (depthFactor(sampling) ?? 0)) / pixelsPerCharacter(sampling);

/** Whether the data islands of a picture's blanking have room for the sound, on TMDS and on a fixed rate link. */
export function soundFits(
  timing: Timing,
  sampling: Sampling,
  { sound, way }: { sound: Sound; way: 'tmds' | 'frl' },
): boolean {
  const packetsHz = audioPacketsHz(sound);
  const blanking = blankingCharacters(timing, sampling);
  // HDMI 2.1, 6.5.6.2 (from memory): the least island against the tri-bytes of blanking.
  if (way === 'frl') return leastBlankingCharacters(audioPacketsPerLine(timing, packetsHz)) <= blanking;
  const packets = Math.min(Math.floor((blanking - framingCharacters) / 32), mostPackets);
  return (packetsHz + clockPacketsHz) / (lineRateKHz(timing) * 1000) <= packets;
}
