import type { SignalMode } from '../../contract/chain.ts';
import { type FrlRate, frlBitRateGbps, frlRates, maxTmdsCharacterRateMHz } from '../format/index.ts';

/** What one element of a link passes, on either kind of signal. */
export type Capacity = {
  /** TMDS, MHz; 0 when it passes nothing. */
  tmdsMHz: number;
  /** The fastest fixed rate; null when it passes none. */
  frl: FrlRate | null;
};

/** What a socket in this mode passes. A fixed rate one still takes TMDS, at up to its full rate (HDMI 2.1, from memory). */
export function modeCapacity(mode: SignalMode): Capacity {
  if (mode.kind === 'tmds') return { tmdsMHz: mode.maxCharacterRateMHz, frl: null };
  return {
    tmdsMHz: maxTmdsCharacterRateMHz,
    frl: { lanes: mode.lanes, gbpsPerLane: mode.gbpsPerLane },
  };
}

/** Gbit/s of a fixed rate; 0 for none. */
export const frlGbps = (rate: FrlRate | null): number => (rate === null ? 0 : frlBitRateGbps(rate));

/** What two ends agree on: the fastest of the six rates within the lanes and the lane rate of both. */
export function commonRate(one: FrlRate | null, other: FrlRate | null): FrlRate | null {
  if (one === null || other === null) return null;
  const within = (rate: FrlRate, limit: FrlRate): boolean =>
    rate.lanes <= limit.lanes && rate.gbpsPerLane <= limit.gbpsPerLane;
  return frlRates.findLast((rate) => within(rate, one) && within(rate, other)) ?? null;
}

export const leastOf = (capacities: readonly Capacity[]): Capacity =>
  capacities.reduce((least, each) => ({
    tmdsMHz: Math.min(least.tmdsMHz, each.tmdsMHz),
    frl: commonRate(least.frl, each.frl),
  }));
