import type { VideoFormat } from '../../contract/chain.ts';
import type { Timing } from '../timings/index.ts';

/** How the colour of a pixel is sent. */
export type Sampling = Pick<VideoFormat, 'encoding' | 'bitsPerComponent'>;

/** Three channels of ten bits a character. Source: HDMI 1.4b, clause 5.1 (from memory). */
const bitsPerCharacter = 30;
/** Above this the characters are scrambled and the clock is sent at a quarter. HDMI 2.0, 6.1.2 (from memory). */
export const scramblingAboveMHz = 340;
/** The fastest a TMDS link runs. HDMI 2.0, 6.1.1 (from memory). */
export const maxTmdsCharacterRateMHz = 600;

export type TmdsNeed = {
  characterRateMHz: number;
  /** Of the three channels together, as carried on the cable. */
  bitRateGbps: number;
  scrambled: boolean;
  /** At the fastest that any TMDS link runs. */
  fits: boolean;
};

/**
 * Bits that one component takes in the link's characters, against the 8 of a plain one: deep colour takes its depth;
 * 4:2:2 always travels in 12 bits, which cost no more than 8 bits of 4:4:4; null where there is no such packing.
 * Source: HDMI 1.4b, 6.5.2 and 6.5.3; 16 bits of 4:2:2 don't exist.
 */
export function depthFactor({ encoding, bitsPerComponent }: Sampling): number | null {
  if (encoding !== 'ycbcr422') return bitsPerComponent / 8;
  return bitsPerComponent <= 12 ? 1 : null;
}

/** Two pixels of 4:2:0 travel in the place of one. Source: HDMI 2.0, 7.1 (from memory). */
export const pixelsPerCharacter = ({ encoding }: Sampling): number => (encoding === 'ycbcr420' ? 2 : 1);

/**
 * What a picture takes from a TMDS link; null when the sampling can't be sent at all (4:2:2 of 16 bits).
 *
 * Rates are nominal, without clock tolerance. Source: HDMI 1.4b 6.5, HDMI 2.0 6.1 and 7.1.
 */
export function tmdsNeed(timing: Timing, sampling: Sampling): TmdsNeed | null {
  const depth = depthFactor(sampling);
  if (depth === null) return null;
  const characterRateMHz = ((timing.pixelClockKHz / 1000) * depth) / pixelsPerCharacter(sampling);
  return {
    characterRateMHz,
    bitRateGbps: tmdsBitRateGbps(characterRateMHz),
    scrambled: characterRateMHz > scramblingAboveMHz,
    fits: characterRateMHz <= maxTmdsCharacterRateMHz,
  };
}

/** Bits a second on all three channels of a TMDS link at a character rate: 600 MHz is 18 Gbit/s. */
export const tmdsBitRateGbps = (characterRateMHz: number): number =>
  (characterRateMHz * bitsPerCharacter) / 1000;
